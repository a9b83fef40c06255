/** What a notice can tell. The database knows the same list (constraint notice_what_known). */
export const NOTICE_KINDS = [
  'judged',
  'within-limits',
  'deferred',
  'made-safe',
  'repaired',
  'serviced',
  'released',
  'release-void',
  'release-warned',
  'release-withdrawn',
] as const;
export type NoticeKind = (typeof NOTICE_KINDS)[number];

/** Of those, what tells of a released flight; the others tell of a write-up. */
export const FLIGHT_NOTICE_KINDS = [
  'released',
  'release-void',
  'release-warned',
  'release-withdrawn',
] as const satisfies readonly NoticeKind[];
export type FlightNoticeKind = (typeof FLIGHT_NOTICE_KINDS)[number];
export type WriteUpNoticeKind = Exclude<NoticeKind, FlightNoticeKind>;

const DONE: Readonly<Record<NoticeKind, string>> = {
  judged: 'Judged',
  'within-limits': 'Found within limits',
  deferred: 'Deferred',
  'made-safe': 'Taken out of use, and signed',
  repaired: 'Repaired and signed',
  serviced: 'Serviced',
  released: 'Released',
  'release-void': 'Release void',
  'release-warned': 'Facts changed',
  'release-withdrawn': 'Release withdrawn',
};

/** What happened, in two or three words. */
export const doneInWords = (what: NoticeKind): string => DONE[what];

const MEANING: Readonly<Record<Exclude<NoticeKind, 'judged'>, string>> = {
  'within-limits':
    'It was measured and lies within a limit whose source is on record. It stays open and is looked at again.',
  deferred:
    'It is not repaired yet. Once its placard is up and everything else the deferral asks for is done, the aircraft can ' +
    'be flown without it on the flights that do not need it.',
  'made-safe': 'It is out of use, as its deferral asks, and that work is signed. It is not repaired yet.',
  repaired: 'The work is signed and the write-up is closed. The same trouble again is a new write-up.',
  serviced: 'The write-up is closed. The same trouble again is a new write-up.',
  released:
    'The flight is released with the answer of that moment. Read the answer and its limits, and accept it before the flight ' +
    '(14 CFR 91.103).',
  'release-void':
    'Do not depart on this release. What is known of the aircraft changed after it was given, and the answer is no go now. A ' +
    'repair does not bring it back: the desk releases the flight anew.',
  'release-warned':
    'What is known of the aircraft changed after the release. In flight the pilot in command decides, and discontinues the ' +
    'flight when the aircraft is not airworthy (14 CFR 91.7(b)). On the ground: read what changed before you depart.',
  'release-withdrawn': 'Do not depart on this release. It was taken back.',
};

const JUDGED: Readonly<Record<string, string>> = {
  grounding: 'It grounds the aircraft until it is put right and signed.',
  limiting:
    'It does not work. Until it is repaired, or deferred as 14 CFR 91.213 allows, the aircraft stays on the ground.',
  note: 'It is a matter of looks and limits nothing.',
};

/**
 * What that means for somebody who flies the aircraft. `severity` is what it was judged to be, null for all that is no
 * judgement. Never says that the aircraft may fly: only an answer for a flight does.
 */
export const meaningInWords = (what: NoticeKind, severity: string | null): string =>
  what === 'judged' ? (JUDGED[severity ?? ''] ?? 'A mechanic has looked at it.') : MEANING[what];
