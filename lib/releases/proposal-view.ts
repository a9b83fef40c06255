import { Temporal } from 'temporal-polyfill';
import type { Instant } from '../rules/facts';
import { formatTenths } from '../rules/hours';
import type { ProposedFlight } from '../rules/operations';
import type { Proposal, ProposalItem } from '../rules/proposals';
import type { Line } from '../rules/verdict';

/** What to put into the flight form, field by field, to take a proposal. */
export interface FormChange {
  readonly aircraftId?: string;
  readonly departLocal?: string;
  readonly arriveLocal?: string;
  /** "1.2". */
  readonly plannedHours?: string;
}

/** Something that would make the flight go, as the desk shows it. */
export interface ProposalView {
  readonly kind: Proposal['kind'];
  /** A sentence for the dispatcher: what to do, and what it would settle. */
  readonly because: string;
  /** The answer with it done. */
  readonly outcome: 'go' | 'go-with-limits';
  readonly limits: readonly Line[];
  /** What changes in the form; null where somebody has to do something at the aircraft first. */
  readonly apply: FormChange | null;
  /** Write-ups and requirements it is about. */
  readonly items: readonly ProposalItem[];
  /** Of another aircraft: which. */
  readonly registration: string | null;
}

/** A proposal for the form; times as wall-clock times at the places the flight names. */
export function proposalView(proposal: Proposal, flight: ProposedFlight): ProposalView {
  return {
    kind: proposal.kind,
    because: proposal.because,
    outcome: proposal.outcome,
    limits: proposal.answer.lines.filter(({ effect }) => effect === 'limits'),
    apply: changeFor(proposal, flight),
    items: 'items' in proposal ? proposal.items : [],
    registration: proposal.kind === 'other-aircraft' ? proposal.registration : null,
  };
}

function changeFor(proposal: Proposal, { from, to }: ProposedFlight): FormChange | null {
  switch (proposal.kind) {
    case 'other-aircraft':
      return { aircraftId: proposal.aircraftId };
    case 'earlier-return':
      return {
        arriveLocal: wallClock(proposal.arriveAt, to.zone),
        plannedHours: formatTenths(proposal.plannedTenths),
      };
    case 'leave-earlier':
      return {
        departLocal: wallClock(proposal.departAt, from.zone),
        arriveLocal: wallClock(proposal.arriveAt, to.zone),
      };
    default:
      return null;
  }
}

/** `2026-11-25T14:05` in the zone. The form has whole minutes. */
const wallClock = (at: Instant, zone: string): string =>
  Temporal.Instant.from(at)
    .toZonedDateTimeISO(zone)
    .toPlainDateTime()
    .toString({ smallestUnit: 'minute', roundingMode: 'trunc' });
