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
  { registration, departAt, zone }: CallAbout,
  items: readonly ProposalItem[],
): string {
  const wanted = `${registration} is wanted ${momentInWords(departAt, zone)}.`;
  if (items.length === 0) return `${wanted} It may not go as it stands. Can you look at it before then?`;
  const named = items.map(({ label }) => label).join('; ');
  return (
    `${wanted} ${items.length === 1 ? 'One thing holds' : `${items.length} things hold`} it: ${named}. ` +
    'Can it be put right and signed, or deferred, before then? If not, until when?'
  );
}
