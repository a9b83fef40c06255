import { redirect } from 'next/navigation';
import { requireActor } from './_session/actor-ref';
import { startFor } from './_ui/places';

/** Sends everybody to where their work is. */
export default async function StartPage() {
  const { who } = await requireActor('/');
  redirect(startFor(who.roles));
}
