import { type Metadata } from 'next';
import { requireActor } from '@/app/_session/actor-ref';
import { PageTitle, Section } from '@/app/_ui/page';
import { Shell } from '@/app/_ui/shell';
import { words } from '@/app/_words/words';
import { readOwnAccount } from '@/lib/access/account/read-own-account';
import { Refused } from '../desk/refused';
import styles from './account.module.css';
import { PasswordForm } from './password-form';
import { SecondFactor } from './second-factor';
import { SessionList } from './session-list';
import { SettingsForm } from './settings-form';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Your account') };
}

/** One's own account: where one is signed in, the password, the second factor, language and units, own data. */
export default async function AccountPage() {
  const t = await words();
  const { ref, who } = await requireActor('/account');
  const result = await readOwnAccount(ref, {});
  if (!result.ok) return <Refused who={who} title={t('Your account')} problem={result.problem} />;
  const account = result.value;
  return (
    <Shell who={who}>
      <PageTitle lead={t('You sign in as {email}. Times on this page are UTC.', { email: account.email })}>
        {account.name}
      </PageTitle>

      <Section title={t('Second factor')} id="second-factor">
        <SecondFactor account={account} />
      </Section>

      <Section title={t('Where you are signed in')} id="sessions">
        <SessionList account={account} />
      </Section>

      <Section title={t('Password')} id="password">
        <PasswordForm email={account.email} />
      </Section>

      <Section title={t('Language and units')} id="settings">
        <SettingsForm language={account.language} units={account.units} />
      </Section>

      <Section title={t('Your data')} id="data">
        <p className={styles.words}>
          {t(
            'Everything that is kept here about you, as one file. What you signed stays with the aircraft’s records, also when you leave.',
          )}
        </p>
        <p>
          <a href="/api/personal-data" download className={styles.link}>
            {t('Download your data (JSON)')}
          </a>
        </p>
      </Section>
    </Shell>
  );
}
