import { redirect } from 'next/navigation';
import { requireActor } from './_session/actor-ref';
import { mayUse } from '@/lib/access/policy';
import { readIsSettingUp } from '@/lib/set-up/read-set-up';
import { startFor } from './_ui/places';

/** Sends everybody to where their work is. */
export default async function StartPage() {
  const { ref, who } = await requireActor('/');
  // Asked of whoever it could concern; where the answer does not come, the usual start will do.
  const settingUp = mayUse(who.roles, 'set-up.read') ? await readIsSettingUp(ref, {}) : null;
  redirect(startFor(who.roles, settingUp?.ok === true && settingUp.value));
}
