import { randomUUID } from 'node:crypto';
import { command, type Context } from '../access/service';
import { instant } from '../db/dates';
import { factsChanged } from '../fleet/require-aircraft';
import { nameIn, namesOf } from '../people/names';
import { Refusal } from '../problems';
import { dayAtBase } from '../records/signature';
import { formatTenths } from '../rules/hours';
import {
  judgeReading,
  timeInService,
  type LastOnRecord,
  type MeterReading,
  type ReadingMoment,
  type TtisMeter,
} from '../rules/meters';
import { correctMetersInput, type CorrectMetersInput } from './meters-schema';
import {
  enteredFigures,
  metersOfReleases,
  NOT_READ,
  readingOf,
  readingsAround,
  STANDING,
  type FlightMeters,
  type FlightReading,
} from './readings';
import { byField, notAbove } from './record-meters';
import { workAbove } from './work-above';
import { filled, said } from '../words/said';

/** What whoever corrected a reading is told. Hours in whole tenths. */
export interface ReadingCorrected {
  readonly releaseId: string;
  readonly moment: ReadingMoment;
  /** The return was corrected along with the departure. */
  readonly isBackToo: boolean;
  readonly notes: readonly string[];
  /** The aircraft's total time in service now; null when it is not known. */
  readonly ttisTenths: number | null;
}

/**
 * Supersedes a mistyped reading of a flight by the true figures. The mistyped one stays on record and counts nowhere; when
 * it was read stays too. For dispatchers and managers, with words why. The hours of the aircraft are set anew and may fall.
 *
 * Held to the same rules as any reading, against what stands before it and the clock. Refuses `conflict` when it was
 * corrected already and when another flight's reading stands after it, `invalid` by field what lib/rules/meters.ts refuses.
 * A departure is corrected beside its return when it fits between; `back` corrects both at once.
 */
export const correctMeters = command({
  verb: 'meters.correct',
  input: correctMetersInput,
  async run(context, input) {
    const { tx, operatorId, actor, now, requestId } = context;
    const { row, release } = await requireReading(context, input.readingId);
    const { aircraft } = release;
    const moment = row.moment as ReadingMoment;
    const ofFlight = (await metersOfReleases(tx, operatorId, [release.id])).get(release.id) ?? NOT_READ;
    const back = moment === 'out' ? ofFlight.back : null;
    const before = await standsBefore(context, row, back);
    const stands: Stands = { row, moment, departure: moment === 'in' ? ofFlight.out : null, before };
    refuseUnchanged(stands, back, input);
    await refuseReadSince(context, stands, ofFlight);

    const meter = aircraft.ttisMeter as TtisMeter;
    const beside = input.back ? null : back;
    const first = corrected(stands, input, beside, now, meter);
    const second =
      input.back && back
        ? correctedBack(back, input.back, { ...first.reading, ttisTenths: first.ttisTenths }, now, meter)
        : null;
    const refusals = [...first.refusals, ...(second?.refusals ?? [])];
    if (refusals.length > 0) {
      throw new Refusal('invalid', { fields: byField(refusals), ...(beside ? { say: BACK_STANDS } : {}) });
    }

    const isFirst = before.at === null;
    const common = {
      operatorId,
      aircraftId: aircraft.id,
      releaseId: release.id,
      readById: actor.personId,
      why: input.why,
      correctedAt: now,
    };
    await tx.meterReading.create({
      data: {
        ...common,
        id: requestId,
        ...figuresOf(first),
        at: row.at,
        moment,
        supersedesId: row.id,
        enteredHobbsTenths: isFirst ? row.enteredHobbsTenths : null,
        enteredTachTenths: isFirst ? row.enteredTachTenths : null,
        enteredTtisTenths: isFirst ? row.enteredTtisTenths : null,
      },
    });
    if (second && back) {
      await tx.meterReading.create({
        data: {
          ...common,
          id: randomUUID(),
          ...figuresOf(second),
          at: new Date(back.at),
          moment: 'in',
          supersedesId: back.id,
        },
      });
    }
    const newest = beside ? null : figuresOf(second ?? first);
    if (newest) {
      await tx.aircraft.update({
        where: { operatorId_id: { operatorId, id: aircraft.id } },
        data: newest,
      });
    }
    await factsChanged(tx, operatorId, aircraft.id);
    const ttisTenths = newest ? newest.ttisTenths : aircraft.ttisTenths;
    const notes = [
      ...first.notes,
      ...(second?.notes ?? []),
      ...(await workAbove(tx, operatorId, aircraft.id, ttisTenths)),
    ];
    return {
      value: { releaseId: release.id, moment, isBackToo: second !== null, notes, ttisTenths },
      audit: {
        subjectKind: 'release',
        subjectId: release.id,
        detail: {
          aircraft: aircraft.registration,
          moment,
          why: input.why,
          superseded: row.id,
          was: readingOf(row),
          ...figuresOf(first),
          back: second && back ? { superseded: back.id, was: metersOf(back), ...figuresOf(second) } : null,
          aircraftTtisTenths: ttisTenths,
          notes,
        },
      },
    };
  },
});

async function requireReading({ tx, operatorId }: Context, id: string) {
  const row = await tx.meterReading.findUnique({
    where: { operatorId_id: { operatorId, id } },
    include: {
      supersededBy: true,
      release: { include: { aircraft: { include: { base: { select: { zone: true } } } } } },
    },
  });
  if (!row?.release)
    throw new Refusal('not_found', { say: said('There is no such reading of a flight here.') });
  const { supersededBy, release } = row;
  if (supersededBy) {
    const by = nameIn(await namesOf(tx, [supersededBy.readById]), supersededBy.readById);
    throw new Refusal('conflict', {
      say: filled(
        said('This reading was corrected before, by {by}: {in}. Load the page again to correct that one.'),
        { by, in: inWords(supersededBy) },
      ),
    });
  }
  return { row, release };
}

type Row = Awaited<ReturnType<typeof requireReading>>['row'];

/** What a reading was counted from: the one before it, else the figures entered with the aircraft. */
type Before = LastOnRecord & { readonly ttisTenths: number | null };

/** A reading to be corrected, and what it is held against. */
interface Stands {
  readonly row: Row;
  readonly moment: ReadingMoment;
  readonly departure: FlightReading | null;
  readonly before: Before;
}

async function standsBefore(
  { tx, operatorId }: Context,
  row: Row,
  back: FlightReading | null,
): Promise<Before> {
  // A return typed with the same minute as its departure is after it all the same.
  const except = back ? [row.id, back.id] : [row.id];
  const { before } = await readingsAround(tx, operatorId, row.aircraftId, row.at, except);
  return before ? readingOf(before) : enteredFigures(row);
}

function refuseUnchanged(
  { row }: Stands,
  back: FlightReading | null,
  { hobbsTenths, tachTenths, back: typedBack }: CorrectMetersInput,
): void {
  if (typedBack && typedBack.readingId !== back?.id) {
    throw new Refusal('conflict', {
      say: said('The return of this flight is not the one you saw. Load the page again.'),
    });
  }
  const fields: Record<string, string[]> = {};
  if (row.hobbsTenths === hobbsTenths && row.tachTenths === tachTenths) fields.hobbsTenths = [UNCHANGED];
  if (typedBack && back?.hobbsTenths === typedBack.hobbsTenths && back.tachTenths === typedBack.tachTenths) {
    fields['back.hobbsTenths'] = [UNCHANGED];
  }
  if (Object.keys(fields).length > 0) throw new Refusal('invalid', { fields });
}

const UNCHANGED = said('These are the figures that stand.');
const BACK_STANDS = said(
  'The departure has to fit before the return that stands. Is the return mistyped too? Correct the return first, or both together.',
);

/** Refuses when the aircraft was read again since, other than at the return of the same flight. */
async function refuseReadSince(
  { tx, operatorId }: Context,
  { row }: Stands,
  ofFlight: FlightMeters,
): Promise<void> {
  const ofSameFlight = [ofFlight.out?.id, ofFlight.back?.id].filter((id) => id !== undefined);
  const higher = [
    { hobbsTenths: { gt: row.hobbsTenths } },
    { hobbsTenths: row.hobbsTenths, tachTenths: { gt: row.tachTenths } },
  ];
  const after = await tx.meterReading.findFirst({
    where: {
      operatorId,
      aircraftId: row.aircraftId,
      ...STANDING,
      id: { notIn: ofSameFlight },
      // Of two readings at the same instant the higher one is the later, as everywhere.
      OR: [{ at: { gt: row.at } }, { at: row.at, OR: higher }],
    },
    orderBy: [{ at: 'asc' }, { hobbsTenths: 'asc' }, { tachTenths: 'asc' }],
  });
  if (!after) return;
  const by = nameIn(await namesOf(tx, [after.readById]), after.readById);
  const zone = row.release?.aircraft.base.zone ?? 'UTC';
  const end = after.moment === 'out' ? 'departure' : after.moment === 'in' ? 'return' : 'reading';
  throw new Refusal('conflict', {
    say:
      `The aircraft was read again after this: the ${end} of ${dayAtBase(after.at, zone)}, by ${by}: ${inWords(after)}. ` +
      'A reading can be corrected only while no later flight stands on it.',
  });
}

interface Corrected {
  readonly reading: MeterReading;
  readonly ttisTenths: number | null;
  readonly refusals: readonly { readonly field: string; readonly because: string }[];
  readonly notes: readonly string[];
}

/** The true figures of a reading, judged. `beside`: the return that stands after a departure. */
function corrected(
  { row, moment, departure, before }: Stands,
  { hobbsTenths, tachTenths }: CorrectMetersInput,
  beside: FlightReading | null,
  now: Date,
  meter: TtisMeter,
): Corrected {
  const reading = { hobbsTenths, tachTenths, at: instant(row.at) };
  const context = { moment, now: instant(now), departure, back: beside, next: beside };
  const { refusals, notes } = judgeReading(reading, before, context);
  const inService = timeInService(before.ttisTenths, before, reading, meter, moment);
  return {
    reading,
    ttisTenths: notAbove(inService.ttisTenths, beside?.ttisTenths ?? null),
    refusals,
    notes: [
      // That the return stands after it is known on this page.
      ...notes.filter(({ kind }) => kind !== 'late'),
      ...(inService.note && !beside ? [inService.note] : []),
    ].map(({ because }) => because),
  };
}

/** The return corrected along with its departure, held against the corrected departure. */
function correctedBack(
  back: FlightReading,
  { hobbsTenths, tachTenths }: NonNullable<CorrectMetersInput['back']>,
  departure: MeterReading & { readonly ttisTenths: number | null },
  now: Date,
  meter: TtisMeter,
): Corrected {
  const reading = { hobbsTenths, tachTenths, at: back.at };
  const context = { moment: 'in', now: instant(now), departure, back: null, next: null } as const;
  const { refusals, notes } = judgeReading(reading, departure, context);
  const { ttisTenths, note } = timeInService(departure.ttisTenths, departure, reading, meter, 'in');
  return {
    reading,
    ttisTenths,
    refusals: refusals.map(({ field, because }) => ({ field: `back.${field}`, because })),
    notes: [...notes, ...(note ? [note] : [])].map(({ because }) => because),
  };
}

const figuresOf = ({ reading: { hobbsTenths, tachTenths }, ttisTenths }: Corrected) => ({
  hobbsTenths,
  tachTenths,
  ttisTenths,
});

const metersOf = ({ hobbsTenths, tachTenths, ttisTenths, at }: FlightReading) => ({
  hobbsTenths,
  tachTenths,
  ttisTenths,
  at,
});

const inWords = ({ hobbsTenths, tachTenths }: Pick<MeterReading, 'hobbsTenths' | 'tachTenths'>): string =>
  `Hobbs ${formatTenths(hobbsTenths)}, Tach ${formatTenths(tachTenths)}`;
