import { type Verb } from '../access/policy';

/** Name of an event as it is sent, and what it says of whom. */
interface FeedEvent {
  readonly name: string;
  readonly says: string;
}

const event = (name: string, says: string): FeedEvent => ({ name, says });

/**
 * Which acts are told to other programs, and by what name. `flight.recall` is no button: the door writes it where a write
 * takes a release back, or only warns of it, and its detail says which (`WARNED`). An act that is not here is told to nobody.
 */
export const EVENT_OF_VERB = {
  'finding.report': event('write-up.opened', 'Somebody wrote something up.'),
  'observation.add': event(
    'write-up.seen-again',
    'Somebody saw a known write-up again. Where it was worse, or closed, this opened a new one.',
  ),
  'walkaround.finish': event(
    'walkaround.finished',
    'A walkaround was ended. `numbers` are the write-ups that it opened by itself.',
  ),
  'severity.judge': event('write-up.judged', 'A mechanic judged how severe a write-up is.'),
  'within-limits.find': event('write-up.within-limits', 'A mechanic measured it and found it within limits.'),
  'deferral.begin': event('deferral.begun', 'A repair was put off.'),
  'deferral.extend': event('deferral.extended', 'A repair was put off for longer.'),
  'placard.place': event('placard.placed', 'A placard that was owed is up.'),
  'servicing.record': event('servicing.recorded', 'Oil, fuel or air was added.'),
  'work.start': event('work.started', 'Work on something was begun.'),
  'work.sign': event('work.signed', 'Work was signed and approved for return to service.'),
  'inspection.sign': event('inspection.signed', 'An inspection, or one part of it, was signed.'),
  'permit.record': event('permit.recorded', 'A special flight permit was put on record.'),
  'requirement.record': event('requirement.recorded', 'Something that recurs was put on record as done.'),
  'flight.plan': event('flight.planned', 'A flight was planned.'),
  'flight.cancel-plan': event('flight.plan-cancelled', 'A planned flight was cancelled.'),
  'plan.import': event('flights.imported', 'Flights were planned from a file.'),
  'flight.release': event('release.made', 'A flight was released.'),
  'flight.accept': event('release.accepted', 'The pilot in command accepted a release.'),
  'flight.log': event('flight.logged', 'A released flight left, landed, or was closed without meters.'),
  'flight.withdraw': event('release.withdrawn', 'A release was withdrawn.'),
  'flight.recall': event('release.void', 'Facts changed: a release is void.'),
  'meters.read-out': event('flight.opened', 'The meters were read before a flight.'),
  'meters.read-in': event('flight.closed', 'The meters were read after a flight.'),
} as const satisfies Partial<Record<Verb | 'flight.recall', FeedEvent>>;

const WARNED = event(
  'release.warned',
  'Facts changed: the people of a release, or of its flight in the air, were warned.',
);

/** Every event there is, in the order of this file. */
export const EVENTS: readonly FeedEvent[] = Object.values(EVENT_OF_VERB).flatMap((one) =>
  one === EVENT_OF_VERB['flight.recall'] ? [one, WARNED] : [one],
);

export const EVENT_NAMES: readonly string[] = EVENTS.map(({ name }) => name);

/** The event an act is told as, by its verb and what its audit row says of it; null when it is told to nobody. */
export function eventOf(verb: string, detail: Readonly<Record<string, unknown>>): string | null {
  if (!Object.hasOwn(EVENT_OF_VERB, verb)) return null;
  if (verb === 'flight.recall' && detail['what'] === 'warned') return WARNED.name;
  return EVENT_OF_VERB[verb as keyof typeof EVENT_OF_VERB].name;
}
