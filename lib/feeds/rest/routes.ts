import { z } from 'zod';
import { readWriteUp } from '../../determinations/read-write-up';
import { readDue } from '../../due/read-due';
import { readAircraftFile } from '../../fleet/read-aircraft-file';
import { readBoard } from '../../fleet/read-board';
import { readDay } from '../../fleet/read-day';
import { planFlight } from '../../flights/plan-flight';
import { readPlannedFlights } from '../../flights/read-planned-flights';
import { planFlightInput } from '../../flights/schema';
import { type Result } from '../../problems';
import { readRecords } from '../../records/read-records';
import { readRelease } from '../../releases/read-desk';
import { answerExport } from '../export/answer-export';
import { listReleases, listWriteUps } from './lists';
import { type FileRoute, type JsonRoute, type Route } from './route';
import * as shapes from './shapes';

/** Nothing of it is changed here: what is read-only is as good. */
type Frozen<T> = T extends readonly (infer U)[]
  ? readonly Frozen<U>[]
  : T extends object
    ? { readonly [K in keyof T]: Frozen<T[K]> }
    : T;

/** Ties what `run` is given to what `input` parses to, and what it gives to what is documented. */
function get<I extends z.ZodObject, O extends z.ZodObject>(
  route: Omit<JsonRoute, 'run' | 'input' | 'output' | 'method' | 'status'> & {
    readonly input: I;
    readonly output: O;
    run(ref: Ref, input: z.output<I>, options: Options): Promise<Result<Frozen<z.input<O>>>>;
  },
): Route {
  return { ...route, method: 'GET', status: 200 };
}
type Ref = Parameters<JsonRoute['run']>[0];
type Options = Parameters<JsonRoute['run']>[2];

const nothing = z.strictObject({});
const page = {
  limit: z.coerce.number().int().min(1).max(200).default(50).describe('How many at most.'),
  after: z.string().optional().describe('`next` of the page before.'),
};
const aircraftId = z.uuid();

const download: FileRoute = {
  method: 'GET',
  path: '/export/{file}',
  name: 'export',
  summary:
    'One table as CSV or JSON, or everything as one JSON: write-ups.csv, releases.json, everything.json',
  scope: 'everything:read',
  input: z.strictObject({ file: z.string() }),
  types: ['text/csv', 'application/json'],
  file: (ref, { file }: { file: string }, options, refused) => answerExport(ref, file, options, refused),
};

/** Every address of the interface. The document is made from this table, and nothing else is answered. */
export const ROUTES: readonly Route[] = [
  get({
    path: '/fleet',
    name: 'readFleet',
    summary: 'The board: every aircraft with its answers now and what comes until the end of tomorrow',
    scope: 'fleet:read',
    input: nothing,
    output: shapes.fleetShape,
    run: (ref, _, options) => readBoard(ref, { ahead: true }, options),
  }),
  get({
    path: '/aircraft/{aircraftId}',
    name: 'readAircraft',
    summary: 'One aircraft with every answer, its reasons, and what is written up',
    scope: 'fleet:read',
    input: z.strictObject({ aircraftId }),
    output: shapes.aircraftShape,
    run: readAircraftFile,
  }),
  get({
    path: '/aircraft/{aircraftId}/day',
    name: 'readDay',
    summary: 'The answers of one aircraft over one local day of its base',
    scope: 'fleet:read',
    input: z.strictObject({ aircraftId, on: z.iso.date().optional().describe('Today unless said.') }),
    output: shapes.dayShape,
    run: readDay,
  }),
  get({
    path: '/aircraft/{aircraftId}/records',
    name: 'readRecords',
    summary: 'What was signed about one aircraft in one year, verified as it is read',
    scope: 'records:read',
    input: z.strictObject({
      aircraftId,
      year: z.coerce.number().int().min(1900).max(2999).optional().describe('This year unless said.'),
    }),
    output: shapes.recordsShape,
    run: readRecords,
  }),
  get({
    path: '/write-ups',
    name: 'listWriteUps',
    summary: 'Write-ups, the newest first',
    scope: 'write-ups:read',
    input: z.strictObject({
      ...page,
      state: z.enum(['open', 'deferred', 'closed', 'not-closed']).optional(),
      aircraftId: aircraftId.optional(),
    }),
    output: shapes.writeUpsShape,
    run: listWriteUps,
  }),
  get({
    path: '/write-ups/{writeUpId}',
    name: 'readWriteUp',
    summary: 'One write-up with what was determined, deferred and done about it',
    scope: 'write-ups:read',
    input: z.strictObject({ writeUpId: z.uuid() }),
    output: shapes.writeUpShape,
    run: (ref, { writeUpId }, options) => readWriteUp(ref, { discrepancyId: writeUpId }, options),
  }),
  get({
    path: '/due',
    name: 'readDue',
    summary: 'What falls due on the whole fleet',
    scope: 'due:read',
    input: nothing,
    output: shapes.dueShape,
    run: readDue,
  }),
  get({
    path: '/releases',
    name: 'listReleases',
    summary: 'Releases, the newest first, with what became of them',
    scope: 'flights:read',
    input: z.strictObject({ ...page, aircraftId: aircraftId.optional() }),
    output: shapes.releasesShape,
    run: listReleases,
  }),
  get({
    path: '/releases/{releaseId}',
    name: 'readRelease',
    summary: 'One release with the answer it stood on',
    scope: 'flights:read',
    input: z.strictObject({ releaseId: z.uuid() }),
    output: shapes.releaseShape,
    run: readRelease,
  }),
  get({
    path: '/plans',
    name: 'listPlans',
    summary: 'Flights planned for the next seven days, aircraft by aircraft',
    scope: 'flights:read',
    input: nothing,
    output: shapes.plansShape,
    run: readPlannedFlights,
  }),
  {
    method: 'POST',
    path: '/plans',
    name: 'planFlight',
    summary: 'Plan a flight. It releases nothing. Times are on the wall clock of the place',
    scope: 'flights:plan',
    input: nothing,
    body: planFlightInput.omit({ requestId: true }),
    output: shapes.plannedShape,
    status: 201,
    run: planFlight,
  },
  download,
];
