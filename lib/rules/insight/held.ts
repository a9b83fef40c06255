/**
 * What held an aircraft on the ground, as spans of minutes. It follows what bars every kind of flight in the answers:
 * 91.7(a) undecided or judged grounding; 91.405(a) not repaired and not found within limits; 91.213(a) inoperative and
 * not deferred, or deferred with a step owed; 91.405(c), 91.213(a)(5) a deferral that does not count any more; 91.407(a)(1)
 * work not signed; 91.409(a), 39.7, 91.403 a calendar that ran out. What bars some kinds of flight only holds nothing here.
 */
import { known, unknown } from '../facts';
import { dueOf } from '../due';
import { endOfDay, startOfDay } from '../months';
import type {
  AircraftHistory,
  ComplianceHistory,
  DeferralHistory,
  Judged,
  RequirementHistory,
  WriteUpHistory,
} from './history';
import { clip, minuteOf, spanOf, union, without, type Span } from './spans';

/** When a write-up grounded its aircraft, without overlaps; a span until Infinity has not ended. */
export function heldByWriteUp(writeUp: WriteUpHistory): Span[] {
  const open = spanOf({ from: writeUp.openedAt, until: writeUp.closedAt });
  const inForce = writeUp.deferrals.flatMap(deferralInForce);
  const judged = writeUp.judged.flatMap((one, index) => {
    const next = writeUp.judged[index + 1];
    const span = spanOf({ from: one.at, until: next?.at ?? null });
    return heldAsJudged(one, span, inForce);
  });
  return union([...judged.flatMap((span) => clip(span, open)), ...writeUp.work.map(spanOf)]);
}

function heldAsJudged(judged: Judged, span: Span, inForce: readonly Span[]): Span[] {
  if (judged.severity === null || judged.severity === 'grounding') return [span];
  switch (judged.kind) {
    case 'inoperative':
      return without(span, inForce);
    case 'damage':
    case 'wear':
    case 'leak':
    case 'contamination':
    case 'fastener':
    case 'document':
      return judged.withinLimits ? [] : [span];
    case 'servicing':
      return [span];
    case 'cosmetic':
      return [];
  }
}

/** From its last step until it ended or stopped counting. */
function deferralInForce({ effectiveAt, endedAt, lapsesAt, unspoken }: DeferralHistory): Span[] {
  if (effectiveAt === null) return [];
  const until = Math.min(
    endedAt === null ? Infinity : minuteOf(endedAt),
    lapsesAt === null ? Infinity : minuteOf(lapsesAt),
  );
  return without({ from: minuteOf(effectiveAt), until }, unspoken.map(spanOf));
}

/**
 * When a requirement was overdue by its calendar: from midnight after its last day until the compliance that counts. While
 * nobody has recorded it as done it holds since it is asked for, as the answer does. Time in service is not looked at.
 */
export function heldByRequirement(requirement: RequirementHistory, aircraft: AircraftHistory): Span[] {
  const { done, endedOn, addedAt } = requirement;
  const ends = endedOn === null ? Infinity : minuteOf(startOfDay(endedOn, aircraft.zone));
  // Of a row older than the question when it was added, nobody knows what was done before its first compliance.
  const asked = addedAt ?? (done.length === 0 ? aircraft.knownFrom : null);
  const steps = [...(asked === null ? [] : [{ since: minuteOf(asked), after: null }]), ...done.map(stepOf)];
  const spans = steps.map(({ since, after }, index) => ({
    from: Math.max(since, lastGoodMinute(requirement, after, aircraft.zone)),
    until: steps[index + 1]?.since ?? Infinity,
  }));
  return union(spans.flatMap((span) => clip(span, { from: -Infinity, until: ends })));
}

const stepOf = (after: ComplianceHistory) => ({ since: minuteOf(after.countsFrom), after });

/** The minute from which it is overdue after a compliance, or without any: -Infinity at once, Infinity never. */
function lastGoodMinute(
  requirement: RequirementHistory,
  after: ComplianceHistory | null,
  zone: string,
): number {
  if (after !== null && !after.authorised) return -Infinity;
  const due = dueOf(factsAfter(requirement, after), unknown('not looked at'), []);
  if (due.missing !== null) return -Infinity;
  return due.on === null ? Infinity : minuteOf(endOfDay(due.on, zone));
}

/** The requirement as it stood after one compliance. */
const factsAfter = (requirement: RequirementHistory, done: ComplianceHistory | null) => ({
  ...requirement,
  binding: true,
  lastDone:
    done === null
      ? unknown(`when "${requirement.name}" was last done`)
      : known({ on: done.on, ttisTenths: 0, wasDueTenths: null, approvedByAuthorised: known(true) }),
  fixedExpiry: done?.newExpiry ?? requirement.fixedExpiry,
  testedToFt: null,
});
