import { signedInRef } from '@/app/_session/actor-ref';
import { words } from '@/app/_words/words';
import { LinkButton } from '@/app/_ui/button';
import { readIsSettingUp } from '@/lib/set-up/read-set-up';

/** The way back to the steps, on pages outside the office that belong to them; gone when setting up is called done. */
export async function BackToSetUp() {
  const t = await words();
  const isSettingUp = await readIsSettingUp(await signedInRef(), {});
  if (!isSettingUp.ok || !isSettingUp.value) return null;
  return (
    <p>
      <LinkButton href="/office">{t('Back to setting up')}</LinkButton>
    </p>
  );
}
