import { z } from 'zod';
import { query } from '../access/service';
import type { Tx } from '../db/client';
import { calendarDateOrNull, instant } from '../db/dates';
import { SUMMARY, summaryOf, type WriteUpSummary } from '../findings/summary';
import { aircraftFacts, basePlace, readFleet, type AircraftRow } from '../fleet/facts';
import { nameIn, namesOf } from '../people/names';
import { standsNow, WITH_HISTORY } from '../releases/history';
import { notBack } from '../releases/not-back';
import { STANDING } from '../releases/readings';
import { stillAsked } from '../releases/unread-hours';
import { dayAtBase } from '../records/signature';
import { answerForUse, headline } from '../rules/answer';
import type { StoredLimit } from '../rules/findings/measured-against-limits';
import { operationName, type OperationKind } from '../rules/operations';
import { chosenUnits } from '../units/chosen';
import { referenceUse } from '../rules/use-of-flight';
import type { Line } from '../rules/verdict';
import { lastSamples } from './last-samples';
import { newestLists, NOT_FITTED_YET } from './newest-list';
import type { PackAircraft, PackFlight, PackLine, PackMeters, PackWriteUp, RampPack } from './pack';
import { PACK_FINDINGS, PACK_PARAGRAPHS } from './pack-law';

const CLOSED_SHOWN_DAYS = 30;
const A_DAY = 86_400_000;

/** What a phone takes along to the ramp: the whole fleet in one consistent view and a fixed number of queries. */
export const readPack = query({
  verb: 'aircraft.read',
  input: z.object({}),
  async run({ tx, operatorId, actor, now }): Promise<RampPack> {
    const operator = await tx.operator.findUniqueOrThrow({
      where: { id: operatorId },
      include: { bases: { orderBy: { ident: 'asc' } } },
    });
    const fleet = await readFleet(tx);
    const lists = await newestLists(tx, operatorId);
    const known: Known = {
      writeUps: await writeUpsByAircraft(tx, operatorId, now),
      limits: await limitsByAircraft(tx, operatorId),
      readings: await newestReadings(tx, operatorId),
      samples: await lastSamples(tx, operatorId),
      flights: await flightsByAircraft(tx, operatorId, now),
    };
    return {
      version: 1,
      asOf: instant(now),
      person: {
        id: actor.personId,
        name: actor.name,
        roles: actor.roles,
        operatorName: operator.name,
        units: await chosenUnits(tx, actor),
      },
      bases: operator.bases.map(({ id, ident, name, zone }) => ({ id, ident, name, zone })),
      aircraft: fleet.map((row) => packAircraft(row, known, now)),
      lists: Object.fromEntries(
        fleet.map(({ typeId }) => [typeId, lists.get(typeId) ?? NOT_FITTED_YET] as const),
      ),
      findings: PACK_FINDINGS,
      paragraphs: PACK_PARAGRAPHS,
    };
  },
});

/** What was read of the whole fleet, by aircraft. */
interface Known {
  readonly writeUps: ReadonlyMap<string, readonly PackWriteUp[]>;
  readonly limits: ReadonlyMap<string, readonly StoredLimit[]>;
  readonly readings: ReadonlyMap<string, PackMeters>;
  readonly samples: ReadonlyMap<string, NonNullable<PackAircraft['lastSamples']>>;
  readonly flights: ReadonlyMap<string, readonly PackFlight[]>;
}

function packAircraft(row: AircraftRow, known: Known, now: Date): PackAircraft {
  const writeUps = known.writeUps.get(row.id) ?? [];
  return {
    id: row.id,
    registration: row.registration,
    typeId: row.typeId,
    typeName: row.type.name,
    baseId: row.baseId,
    baseIdent: row.base.ident,
    zone: row.base.zone,
    forHire: row.forHire,
    answer: usualAnswer(row, now),
    writeUps: writeUps.filter(({ state }) => state !== 'closed'),
    closed: writeUps.filter(({ state }) => state === 'closed'),
    equipment: row.equipment.map(({ id, name, function: what, installed }) => ({
      id,
      name,
      function: what,
      installed,
    })),
    limits: known.limits.get(row.id) ?? [],
    meters: known.readings.get(row.id) ?? {
      hobbsTenths: row.hobbsTenths,
      tachTenths: row.tachTenths,
      at: null,
    },
    lastSamples: known.samples.get(row.id) ?? null,
    flights: known.flights.get(row.id) ?? [],
  };
}

/** By day under VFR, for hire or private as the aircraft is usually used; the same answer as the board gives. */
function usualAnswer(row: AircraftRow, now: Date): PackAircraft['answer'] {
  const kind: OperationKind = { light: 'day', rules: 'VFR', hire: row.forHire };
  const base = basePlace(row.base);
  const use = referenceUse(kind, base, dayAtBase(now, base.zone), instant(now));
  const answer = answerForUse(aircraftFacts(row), use);
  return {
    name: operationName(kind),
    outcome: answer.outcome,
    headline: answer.outcome === 'go' ? null : headline(answer),
    lines: deciding(answer.lines),
  };
}

/** The lines that bar or limit. */
const deciding = (lines: readonly Line[]): PackLine[] =>
  lines
    .filter(({ effect }) => effect === 'bars' || effect === 'limits')
    .map(({ effect, cite, because, house }) => ({ effect, cite, because, ...(house ? { house } : {}) }));

async function writeUpsByAircraft(tx: Tx, operatorId: string, now: Date): Promise<Known['writeUps']> {
  const rows = await tx.discrepancy.findMany({
    where: {
      operatorId,
      aircraft: { retiredOn: null },
      OR: [
        { state: { not: 'closed' } },
        { closedAt: { gte: new Date(now.getTime() - CLOSED_SHOWN_DAYS * A_DAY) } },
      ],
    },
    // A finding about this write-up that opened none of its own is an observation.
    include: { ...SUMMARY, _count: { select: { observations: { where: { discrepancy: { is: null } } } } } },
    orderBy: { openedAt: 'desc' },
  });
  const names = await namesOf(
    tx,
    rows.map((row) => row.finding.personId),
  );
  return grouped(rows, (row) => packWriteUp(summaryOf(row, names), row.findingKey, row._count.observations));
}

const packWriteUp = (
  summary: WriteUpSummary,
  findingKey: string | null,
  observations: number,
): PackWriteUp => ({
  id: summary.id,
  number: summary.number,
  title: summary.title,
  station: summary.station,
  place: summary.place,
  words: summary.words,
  jasc: summary.jasc,
  kind: summary.kind,
  findingKey,
  state: summary.state as PackWriteUp['state'],
  severity: summary.severity as PackWriteUp['severity'],
  openedAt: summary.openedAt,
  closedAt: summary.closedAt,
  closedHow: summary.closedHow,
  reportedBy: summary.reportedBy,
  carried: summary.carried,
  photos: summary.photoIds.length,
  observations,
  placards: summary.placards,
});

async function limitsByAircraft(tx: Tx, operatorId: string): Promise<Known['limits']> {
  const rows = await tx.storedLimit.findMany({
    where: { operatorId, endedAt: null },
    orderBy: { measurement: 'asc' },
  });
  return grouped(rows, ({ findingKey, measurement, unit, min, max, source, sourceDate }) => ({
    findingKey,
    measurement,
    unit,
    min,
    max,
    source,
    sourceDate: calendarDateOrNull(sourceDate),
  }));
}

async function newestReadings(tx: Tx, operatorId: string): Promise<Known['readings']> {
  const newest = await tx.meterReading.groupBy({
    by: ['aircraftId'],
    where: { operatorId, ...STANDING },
    _max: { at: true },
  });
  const rows = await tx.meterReading.findMany({
    where: {
      operatorId,
      ...STANDING,
      OR: newest.flatMap(({ aircraftId, _max }) => (_max.at ? [{ aircraftId, at: _max.at }] : [])),
    },
    // Of two readings at the same instant the higher one stands.
    orderBy: [{ hobbsTenths: 'asc' }, { tachTenths: 'asc' }],
  });
  return new Map(
    rows.map(({ aircraftId, hobbsTenths, tachTenths, at }) => [
      aircraftId,
      { hobbsTenths, tachTenths, at: instant(at) },
    ]),
  );
}

async function flightsByAircraft(tx: Tx, operatorId: string, now: Date): Promise<Known['flights']> {
  const asked = await tx.release.findMany({
    where: {
      operatorId,
      ...notBack(now),
    },
    include: WITH_HISTORY,
    orderBy: { departAt: 'asc' },
  });
  const rows = await stillAsked(tx, operatorId, asked);
  const names = await namesOf(
    tx,
    rows.flatMap((row) => row.pilotId ?? []),
  );
  return grouped(rows, (row): PackFlight => {
    const out = row.readings.find(({ moment }) => moment === 'out');
    const { state, outcome, limits } = standsNow(row);
    return {
      releaseId: row.id,
      departAt: instant(row.departAt),
      arriveAt: instant(row.arriveAt),
      pilotId: row.pilotId,
      pilotName: row.pilotId ? nameIn(names, row.pilotId) : null,
      state,
      outcome,
      limits: deciding(limits),
      out: out ? { hobbsTenths: out.hobbsTenths, tachTenths: out.tachTenths, at: instant(out.at) } : null,
    };
  });
}

/** Rows of several aircraft, each in the order read, by aircraft. */
function grouped<R extends { readonly aircraftId: string }, T>(
  rows: readonly R[],
  view: (row: R) => T,
): ReadonlyMap<string, readonly T[]> {
  const found = new Map<string, T[]>();
  for (const row of rows) {
    const before = found.get(row.aircraftId);
    if (before) before.push(view(row));
    else found.set(row.aircraftId, [view(row)]);
  }
  return found;
}
