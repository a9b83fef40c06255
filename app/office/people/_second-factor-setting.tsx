import { signedInRef } from '@/app/_session/actor-ref';
import { Section } from '@/app/_ui/page';
import { words } from '@/app/_words/words';
import { readOwnAccount } from '@/lib/access/account/read-own-account';
import { SecondFactorForm } from './_second-factor-form';

/** The school's setting: whether everybody who signs must have a second factor. For managers. */
export async function SecondFactorSetting() {
  const t = await words();
  const account = await readOwnAccount(await signedInRef(), {});
  if (!account.ok) return null;
  const { secondFactorAsked, factors } = account.value;
  return (
    <Section title={t('Second factor of those who sign')} id="second-factor">
      <SecondFactorForm asked={secondFactorAsked} haveOne={factors.length > 0} />
    </Section>
  );
}
