import { Say, useWords } from '#words';
import { Ago, Moment } from '@/app/_ui/moment';
import { Notice } from '@/app/_ui/notice';
import { SignOutButton } from '@/app/_ui/sign-out';
import { type FactorView, type OwnAccount } from '@/lib/access/account/read-own-account';
import { said } from '@/lib/words/said';
import styles from './account.module.css';
import { AddFactor } from './add-factor';
import { EndFactor } from './end-factor';
import { NewCodes } from './new-codes';

const KIND: Readonly<Record<FactorView['kind'], string>> = {
  totp: said('Authenticator app'),
  passkey: said('Passkey'),
};

/** What is asked beside the password, and what to do when a phone is lost. */
export function SecondFactor({ account }: { account: OwnAccount }) {
  const t = useWords();
  const { factors, recoveryCodesLeft, asOf } = account;
  return (
    <>
      <p className={styles.words}>
        {t(
          'Beside your password: a code of an app on your phone, or a passkey of your phone, computer or security key. Whoever learns your password then still cannot sign in your name.',
        )}
      </p>
      <Standing account={account} />
      {factors.length > 0 && (
        <ul className={styles.list}>
          {factors.map((factor) => (
            <li key={factor.id} className={styles.item}>
              <h3>{factor.name}</h3>
              <p className={styles.soft}>
                {t(KIND[factor.kind])}.{' '}
                <Say text="Added {added}." values={{ added: <Moment at={factor.addedAt} zone="UTC" /> }} />{' '}
                {factor.lastUsedAt ? (
                  <Say
                    text="Last used {used}."
                    values={{ used: <Ago at={factor.lastUsedAt} now={asOf} /> }}
                  />
                ) : (
                  t('Not used yet.')
                )}
              </p>
              <EndFactor id={factor.id} name={factor.name} last={factors.length === 1} />
            </li>
          ))}
        </ul>
      )}
      <AddFactor />
      {factors.length > 0 && <NewCodes left={recoveryCodesLeft} />}
    </>
  );
}

/** Whether this session may sign, where the school asks for a second factor. */
function Standing({ account }: { account: OwnAccount }) {
  const t = useWords();
  const { factors, secondFactorAsked, signedInWith } = account;
  if (factors.length > 0 && signedInWith === 'none') {
    return (
      <Notice tone="blue" title={t('You are signed in without it.')}>
        <p>
          {secondFactorAsked
            ? t('To sign anything, sign out and sign in again with your second factor.')
            : t('It is asked from your next sign-in on.')}
        </p>
        {secondFactorAsked && <SignOutButton />}
      </Notice>
    );
  }
  if (factors.length === 0 && secondFactorAsked) {
    return (
      <Notice tone="blue" title={t('Your school asks everybody who signs for a second factor.')}>
        <p>{t('Set one up here, then sign in again with it. Until then you can do everything but sign.')}</p>
      </Notice>
    );
  }
  return null;
}
