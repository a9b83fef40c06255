import { z } from 'zod';

/**
 * What the interface gives, as it is documented. Each answer is cut to its shape before it is sent: a field that is not
 * here does not go out, so that screens may change what they read without changing what others were promised.
 */
const instant = z.iso.datetime();
const date = z.iso.date();
const id = z.uuid();
const tenths = z.int().describe('Whole tenths of an hour: 12 is 1.2 h.');
const zone = z.string().describe('Zone of the base, by its IANA name.');
const outcome = z.enum(['go', 'go-with-limits', 'no-go']);

const line = z.object({
  effect: z.enum(['bars', 'limits', 'notes', 'supports']),
  cite: z.string().describe('The paragraph it stands on.'),
  because: z.string(),
  missing: z.string().optional().describe('Set where it bars because this is not known.'),
});

const lane = z.object({
  rules: z.enum(['VFR', 'IFR']),
  light: z.enum(['day', 'night']),
  outcome,
  next: z
    .object({ at: instant, outcome, headline: z.string().nullable() })
    .nullable()
    .describe('The next change before the end of tomorrow at the base; null: none.'),
});

const boardRow = z.object({
  aircraftId: id,
  registration: z.string(),
  typeName: z.string(),
  baseIdent: z.string(),
  zone,
  forHire: z.boolean(),
  ttisTenths: tenths.nullable(),
  cells: z
    .array(z.object({ id: z.string(), name: z.string(), outcome, headline: z.string().nullable() }))
    .describe('The answer for each kind of operation, for a local flight of an hour that leaves now.'),
  openWriteUps: z.int(),
  undecided: z.int(),
  deferred: z.int(),
  nextDue: z
    .object({
      name: z.string(),
      on: date.nullable(),
      remainingDays: z.int().nullable(),
      remainingTenths: tenths.nullable(),
    })
    .nullable(),
});

const asOf = instant.describe(
  'When it was judged. An answer is good for this moment and not for a later one.',
);

export const fleetShape = z.object({
  asOf,
  seq: z.int().describe('How far the records had come.'),
  operatorName: z.string(),
  rows: z.array(boardRow.extend({ ahead: z.object({ until: instant, lanes: z.array(lane) }).nullable() })),
});

const writeUp = z.object({
  id,
  number: z.string(),
  title: z.string(),
  station: z.string(),
  place: z.string(),
  words: z.string(),
  jasc: z.string(),
  kind: z.string(),
  state: z.string(),
  severity: z.string().nullable().describe('Null: nobody has decided, and it grounds.'),
  openedAt: instant,
  closedAt: instant.nullable(),
  closedHow: z.string().nullable(),
  reportedBy: z.string(),
});

export const aircraftShape = z.object({
  asOf,
  row: boardRow,
  serial: z.string(),
  hobbsTenths: tenths.nullable(),
  tachTenths: tenths.nullable(),
  answers: z.array(
    z.object({ id: z.string(), name: z.string(), answer: z.object({ outcome, lines: z.array(line) }) }),
  ),
  writeUps: z.array(writeUp),
});

export const dayShape = z.object({
  asOf,
  aircraftId: id,
  registration: z.string(),
  zone,
  on: date,
  from: instant,
  until: instant,
  lanes: z.array(
    z.object({
      id: z.string(),
      name: z.string(),
      spans: z.array(
        z.object({
          from: instant,
          until: instant,
          outcome,
          headline: z.string().nullable(),
        }),
      ),
    }),
  ),
  borders: z.array(
    z.object({
      at: instant,
      events: z.array(z.string()),
      changes: z.array(
        z.object({
          lanes: z.array(z.string()),
          before: outcome,
          after: outcome,
          comes: z.array(line),
          goes: z.array(line),
        }),
      ),
    }),
  ),
  rulesVersion: z.string(),
});

const cursor = z
  .string()
  .nullable()
  .describe('Give it back as `after` for the next ones; null after the last.');

export const writeUpsShape = z.object({
  writeUps: z.array(writeUp.extend({ aircraftId: id, registration: z.string() })),
  next: cursor,
});

export const writeUpShape = z.object({
  asOf,
  aircraftId: id,
  registration: z.string(),
  zone,
  summary: writeUp,
  jascLabel: z.string(),
  foundAt: instant,
  reasons: z.array(line),
  determinations: z.array(
    z.object({
      id,
      kind: z.string(),
      by: z.string(),
      certificateKind: z.string(),
      certificateNumber: z.string(),
      statement: z.string(),
      at: instant,
      hash: z.string(),
      superseded: z.boolean(),
    }),
  ),
  deferral: z
    .object({
      id,
      basis: z.string(),
      method: z.string(),
      methodWords: z.string(),
      recordedOn: date.nullable(),
      begunAt: instant,
    })
    .nullable(),
  work: z.array(
    z.object({
      id,
      state: z.string(),
      startedAt: instant,
      startedBy: z.string(),
      entryHash: z.string(),
      signOff: z
        .object({
          by: z.string(),
          certificateKind: z.string(),
          certificateNumber: z.string(),
          statement: z.string(),
          at: instant,
          hash: z.string(),
        })
        .nullable(),
    }),
  ),
});

export const dueShape = z.object({
  asOf,
  lines: z.array(
    z.object({
      aircraft: z.object({ aircraftId: id, registration: z.string(), today: date }),
      kind: z.enum(['requirement', 'paper', 'deferral']),
      id: z.string().describe('Empty for an annual inspection of which there is no record.'),
      name: z.string(),
      binding: z.boolean().describe("False for a maker's recommendation."),
      cite: z.string(),
      group: z.enum(['overdue', 'unknown', 'soon', 'later']),
      on: date.nullable().describe('Last good day.'),
      tenths: tenths.nullable().describe('Last good time in service, in whole tenths of an hour.'),
      remainingDays: z.int().nullable(),
      remainingTenths: tenths.nullable(),
      missing: z.string().nullable().describe('What is not known although it decides.'),
      first: z
        .object({ by: z.enum(['calendar', 'hours']), on: date, earliest: date, latest: date.nullable() })
        .nullable()
        .describe('Whichever comes first; of hours, the day that is expected, with its band.'),
    }),
  ),
});

const release = z.object({
  id,
  registration: z.string(),
  zone,
  departAt: instant,
  arriveAt: instant,
  outcome: z.string().describe('go or go-with-limits.'),
  releasedAt: instant,
  dispatcher: z.string(),
  pilot: z.string().nullable(),
  state: z.object({
    name: z.enum(['released', 'accepted', 'airborne', 'landed', 'closed', 'void', 'withdrawn']),
    warned: z.boolean().describe('The facts changed after the release.'),
    since: instant,
  }),
  factsVersion: z.int(),
  rulesVersion: z.string(),
  hash: z.string(),
});

export const releasesShape = z.object({
  releases: z.array(release.extend({ aircraftId: id })),
  next: cursor,
});

export const releaseShape = release.extend({
  aircraftId: id,
  answer: z.object({ outcome, lines: z.array(line) }),
  limitsPassedOn: z.boolean(),
  events: z.array(
    z.object({ what: z.string(), at: instant, words: z.string(), by: z.string(), lines: z.array(line) }),
  ),
});

export const plansShape = z.object({
  asOf,
  aircraft: z.array(
    z.object({
      aircraftId: id,
      registration: z.string(),
      baseIdent: z.string(),
      zone,
      flights: z.array(
        z.object({
          id,
          departAt: instant,
          arriveAt: instant,
          pilot: z.string().nullable(),
          plannedTenths: tenths.nullable(),
          words: z.string(),
          plannedBy: z.string(),
        }),
      ),
    }),
  ),
});

export const plannedShape = z.object({ plannedFlightId: id });

export const recordsShape = z.object({
  asOf,
  aircraftId: id,
  registration: z.string(),
  year: z.int(),
  years: z.array(z.int()).describe('Years that have records, newest first.'),
  rows: z.array(
    z.object({
      id,
      kind: z.string(),
      part: z.string(),
      title: z.string(),
      words: z.string().nullable(),
      on: date,
      at: instant,
      ttisTenths: tenths.nullable(),
      by: z.string(),
      certificate: z.object({ kind: z.string(), number: z.string() }).nullable(),
      hash: z.string().nullable(),
      changes: z
        .array(z.string())
        .nullable()
        .describe('In what way it is no longer as it was signed; empty where it is.'),
      supersededWords: z.string().nullable(),
    }),
  ),
});

/** A refusal as RFC 9457 has it, with our own code and fields beside. */
export const problemShape = z.object({
  type: z.string(),
  title: z.string(),
  status: z.int(),
  detail: z.string(),
  code: z.string().describe('Stays the same whatever the words.'),
  fields: z.record(z.string(), z.array(z.string())).optional().describe('What is wrong, field by field.'),
  lines: z.array(z.object({ cite: z.string(), because: z.string() })).optional(),
  eventId: z.string().optional().describe('To quote to whoever runs the server.'),
});
