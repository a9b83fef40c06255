/** What a notice can tell. The database knows the same list (constraint notice_what_known). */
export const NOTICE_KINDS = [
  'judged',
  'within-limits',
  'deferred',
  'made-safe',
  'repaired',
  'serviced',
] as const;
export type NoticeKind = (typeof NOTICE_KINDS)[number];

const DONE: Readonly<Record<NoticeKind, string>> = {
  judged: 'Judged',
  'within-limits': 'Found within limits',
  deferred: 'Deferred',
  'made-safe': 'Taken out of use, and signed',
  repaired: 'Repaired and signed',
  serviced: 'Serviced',
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
