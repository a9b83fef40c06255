import { type Translate } from '@/lib/words/translate';
import { momentInWords } from '@/app/_ui/moment';
import { type ProposalItem } from '@/lib/rules/proposals';

/** The flight a mechanic is called about. */
export interface CallAbout {
  readonly aircraftId: string;
  readonly registration: string;
  readonly departAt: string;
  readonly zone: string;
  /** Where it departs. */
  readonly fromIdent: string;
}

/** What to say to the mechanic: which aircraft, when it is wanted, what holds it, and what is asked. */
export function callInWords(
  t: Translate,
  { registration, departAt, zone }: CallAbout,
  items: readonly ProposalItem[],
): string {
  const wanted = t('{registration} is wanted {moment}.', {
    registration,
    moment: momentInWords(departAt, zone),
  });
  if (items.length === 0)
    return t('{wanted} It may not go as it stands. Can you look at it before then?', { wanted });
  const named = items.map(({ label }) => label).join('; ');
  return (
    t('{wanted} {which} it: {named}. ', {
      wanted,
      which: items.length === 1 ? t('One thing holds') : t('{items} things hold', { items: items.length }),
      named,
    }) + t('Can it be put right and signed, or deferred, before then? If not, until when?')
  );
}
