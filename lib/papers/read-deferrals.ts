import { z } from 'zod';
import { query } from '../access/service';
import { calendarDate } from '../db/dates';
import { carriedOver, determinedOn } from '../fleet/carried-determination';
import { aircraftFacts, basePlace, readAircraft, type AircraftRow } from '../fleet/facts';
import { Refusal } from '../problems';
import { dayAtBase } from '../records/signature';
import type { AircraftFacts, DiscrepancyFacts } from '../rules/aircraft';
import { dayInWords } from '../rules/in-words';
import { LAW, type CiteId } from '../rules/law';
import { operationName } from '../rules/operations';
import {
  deferralEligibility,
  deferralEnds,
  type EligibilityReport,
} from '../rules/part-91/91-213-deferral-eligibility';
import type { CarriedDeferral, CarriedWatch, DeferralListPaper } from './deferral-list';
import { fileName } from './paper';
import { paperAircraft } from './read-entry';

type WriteUpRow = AircraftRow['discrepancies'][number];
type DeferralRow = WriteUpRow['deferrals'][number];

/** What is deferred and watched on an aircraft at this moment, asked of the rules anew, to carry aboard. */
export const readDeferralList = query({
  verb: 'paper.read',
  input: z.object({ aircraftId: z.uuid() }),
  async run({ tx, operatorId, now }, { aircraftId }): Promise<DeferralListPaper> {
    const row = await readAircraft(tx, operatorId, aircraftId);
    if (!row) throw new Refusal('not_found', { say: 'There is no such aircraft here.' });
    const facts = aircraftFacts(row);
    const report = (d: DiscrepancyFacts): EligibilityReport =>
      deferralEligibility(facts, d, basePlace(row.base), dayAtBase(now, row.base.zone), now.toISOString());
    const factsOf = (id: string) => facts.discrepancies.find((one) => one.id === id);
    const deferrals: CarriedDeferral[] = [];
    const watches: CarriedWatch[] = [];
    const other: { number: string; title: string; standing: string }[] = [];
    for (const writeUp of row.discrepancies) {
      const d = factsOf(writeUp.id);
      const live = writeUp.deferrals.find((deferral) => !deferral.end);
      if (d && live) deferrals.push(carried(row, facts, writeUp, live, d, report(d)));
      else if (d?.withinLimits && writeUp.severity === 'watch') watches.push(watched(writeUp));
      else other.push({ number: writeUp.number, title: writeUp.title, standing: standing(writeUp.severity) });
    }
    return {
      fileName: fileName(row.registration, 'deferred-items', ''),
      aircraft: await paperAircraft(tx, operatorId, row),
      madeAt: now.toISOString(),
      ttisTenths: row.ttisTenths,
      deferrals,
      watches,
      other,
    };
  },
});

const paragraph = (cite: CiteId): string => LAW[cite].label;

function standing(severity: string | null): string {
  switch (severity) {
    case 'note':
      return 'Noted; bars no flight.';
    case null:
      return 'Nobody has judged it: it grounds.';
    case 'grounding':
      return 'Grounds until it is repaired and signed.';
    default:
      return 'Bars flight until it is repaired, or lawfully deferred.';
  }
}

function carried(
  aircraft: AircraftRow,
  facts: AircraftFacts,
  writeUp: WriteUpRow,
  live: DeferralRow,
  d: DiscrepancyFacts,
  report: EligibilityReport,
): CarriedDeferral {
  const barred = report.table.filter((row) => !row.allowed).map((row) => operationName(row.kind));
  const limits = report.table
    .filter((row) => row.allowed)
    .flatMap((row) => row.lines)
    .filter((line) => line.effect === 'limits')
    .map((line) => `${line.because} (${paragraph(line.cite)})`);
  const { determination } = live;
  const said = carriedOver(determination);
  const day = determinedOn(determination, calendarDate(determination.signedOn));
  return {
    number: writeUp.number,
    title: writeUp.title,
    placards: live.placards.map(({ wording, location, placedAt, removedAt }) => ({
      wording,
      location,
      placed: placedAt !== null && removedAt === null,
    })),
    basis: basisSaid(aircraft, live),
    how: `${live.method === 'removed' ? 'Removed' : 'Deactivated'}: ${live.methodWords}`,
    barred: barred.length === report.table.length ? 'every kind of flight' : barred.join('; ') || null,
    limits: [...new Set([...limits, ...maintenanceProcedure(aircraft, live)])],
    recordedOn: calendarDate(live.recordedOn),
    ends: [
      ...deferralEnds(facts, d).map((end) => `${end.text} (${paragraph(end.cite)})`),
      ...(live.extension
        ? [
            `Extended once, through ${dayInWords(calendarDate(live.extension.untilOn))}: ${live.extension.authority}`,
          ]
        : []),
    ],
    signedBy: determination.personName,
    certificateKind: determination.certificateKind,
    certificateNumber: determination.certificateNumber,
    signedOn: day.known ? day.value : null,
    carriedOver:
      said &&
      `From ${said.document}, vouched for by ${said.vouchedBy} on ${dayInWords(calendarDate(determination.signedOn))}`,
  };
}

const itemOf = (aircraft: AircraftRow, { melItemId }: DeferralRow) =>
  aircraft.mel
    .flatMap((mel) => mel.items.map((item) => ({ mel, item })))
    .find(({ item }) => item.id === melItemId);

function basisSaid(aircraft: AircraftRow, live: DeferralRow): string {
  if (live.basis !== 'mel') return '14 CFR 91.213(d), without a minimum equipment list';
  const listed = itemOf(aircraft, live);
  return listed
    ? `14 CFR 91.213(a), minimum equipment list ${listed.mel.reference}, item ${listed.item.title}, category ${listed.item.category}`
    : '14 CFR 91.213(a), minimum equipment list; its item is not on record';
}

/** The maintenance procedure of the item; its proviso and operating procedure come as lines of the rules. */
function maintenanceProcedure(aircraft: AircraftRow, live: DeferralRow): readonly string[] {
  const procedure = itemOf(aircraft, live)?.item.maintenanceProcedure;
  return procedure ? [`Maintenance procedure (M): ${procedure}`] : [];
}

function watched(writeUp: WriteUpRow): CarriedWatch {
  const found = writeUp.determinations.find(({ kind }) => kind === 'within-limits');
  return {
    number: writeUp.number,
    title: writeUp.title,
    measured: found?.measured ?? 'not stated',
    limit: found?.limitText ?? 'not stated',
    source: found?.limitSource ?? 'not stated',
    signedBy: found?.personName ?? 'not stated',
    certificateKind: found?.certificateKind ?? 'none',
    certificateNumber: found?.certificateNumber ?? 'not stated',
    signedOn: found ? calendarDate(found.signedOn) : calendarDate(writeUp.openedAt),
  };
}
