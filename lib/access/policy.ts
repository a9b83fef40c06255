/**
 * Who may press which button. This is the operator's order of work, not law: whether a signature counts (rating,
 * authorization, recency) is judged in lib/rules and refused there with its paragraph.
 */
export const ROLES = ['pilot', 'mechanic', 'dispatcher', 'manager'] as const;
export type Role = (typeof ROLES)[number];

const everyone: readonly Role[] = ROLES;

export const POLICY = {
  // Reads
  'fleet.read': everyone,
  'aircraft.read': everyone,
  'write-up.read': everyone,
  'photo.read': everyone,
  'own-findings.read': everyone,
  'own-notices.read': everyone,
  'walkaround-list.read': everyone,
  'bench.read': ['mechanic', 'manager'],
  'flight.answer': everyone,
  'visit.read': ['mechanic', 'manager'],
  'inspection.read': ['mechanic', 'manager'],
  'due.read': ['mechanic', 'dispatcher', 'manager'],
  // 91.417(c): records are there for whoever may ask; every pilot may read what was signed about the aircraft.
  'records.read': everyone,
  'trends.read': everyone,
  'paper.read': everyone,
  'permit.read': everyone,
  'planned-flights.read': ['mechanic', 'dispatcher', 'manager'],
  'release.read': everyone,
  'day.read': everyone,
  'airport.find': everyone,
  'base.read': everyone,
  'plan.check-import': ['dispatcher', 'manager'],
  'insight.read': ['mechanic', 'dispatcher', 'manager'],
  'feeds.read': ['manager'],
  'export.read': ['manager'],
  // The ramp
  'walkaround.start': ['pilot', 'mechanic', 'manager'],
  'walkaround.finish': ['pilot', 'mechanic', 'manager'],
  'finding.report': everyone,
  'observation.add': everyone,
  'photo.add': everyone,
  'servicing.record': ['pilot', 'mechanic'],
  'notice.mark-read': everyone,
  // The bench
  'severity.judge': ['mechanic'],
  'within-limits.find': ['mechanic'],
  'deferral.begin': ['mechanic', 'manager'],
  'placard.place': ['pilot', 'mechanic', 'manager'],
  'work.start': ['mechanic', 'pilot'],
  'work.enter': ['mechanic', 'pilot'],
  'work.sign': ['mechanic', 'pilot'],
  'work.abandon': ['mechanic', 'pilot'],
  'work.correct': ['mechanic', 'pilot'],
  'check-flight.log': ['pilot', 'mechanic'],
  'deferral.extend': ['mechanic', 'manager'],
  'deferral.dispose': ['mechanic'],
  'permit.record': ['mechanic', 'manager'],
  'permit.inspect': ['mechanic'],
  'visit.open': ['mechanic', 'manager'],
  'visit.change': ['mechanic', 'manager'],
  'visit.close': ['mechanic', 'manager'],
  'inspection.begin': ['mechanic'],
  'inspection.enter': ['mechanic'],
  'inspection.list': ['mechanic'],
  'inspection.sign': ['mechanic'],
  'inspection.give-up': ['mechanic'],
  // What recurs
  'requirement.add': ['mechanic', 'manager'],
  'requirement.end': ['mechanic', 'manager'],
  'requirement.start-work': ['mechanic', 'pilot'],
  'requirement.record': ['mechanic', 'manager'],
  'vor-check.record': ['pilot', 'mechanic'],
  'elt-use.record': ['pilot', 'mechanic'],
  'paper.renew': ['mechanic', 'manager'],
  // The desk
  'flight.release': ['dispatcher', 'manager'],
  'flight.plan': ['dispatcher', 'manager'],
  'flight.cancel-plan': ['dispatcher', 'manager'],
  'plan.import': ['dispatcher', 'manager'],
  // Of a pilot or mechanic only who is the flight's pilot in command: the service asks.
  'flight.accept': everyone,
  'flight.log': everyone,
  'flight.withdraw': everyone,
  'walkaround-list.write': ['manager'],
  'base.add': ['manager'],
  'base.change': ['manager'],
  // Other programs
  'key.issue': ['manager'],
  'key.end': ['manager'],
  'webhook.add': ['manager'],
  'webhook.end': ['manager'],
  'webhook.send-again': ['manager'],
  // Of a pilot only who is the flight's pilot in command: the service asks.
  'meters.read-out': ['pilot', 'dispatcher', 'manager'],
  'meters.read-in': ['pilot', 'dispatcher', 'manager'],
  'meters.correct': ['dispatcher', 'manager'],
} as const satisfies Record<string, readonly Role[]>;

export type Verb = keyof typeof POLICY;

/** Whether any of these roles may use the verb. */
export const mayUse = (roles: readonly Role[], verb: Verb): boolean =>
  roles.some((role) => (POLICY[verb] as readonly Role[]).includes(role));
