import { command, type Context } from '../access/service';
import { instant } from '../db/dates';
import { factsChanged } from '../fleet/require-aircraft';
import { Refusal } from '../problems';
import { formatTenths } from '../rules/hours';
import {
  hoursBetween,
  judgeReading,
  timeInService,
  type HoursFlown,
  type LastOnRecord,
  type ReadingMoment,
  type ReadingNote,
  type TtisMeter,
} from '../rules/meters';
import { readMetersInInput, readMetersOutInput, type ReadMetersInput } from './meters-schema';
import {
  enteredFigures,
  metersOfReleases,
  NOT_READ,
  readingOf,
  readingsAround,
  type FlightReading,
} from './readings';
import { said } from '../words/said';

/** What whoever read the meters is told. Hours in whole tenths. */
export interface ReadingTaken {
  readonly releaseId: string;
  readonly moment: ReadingMoment;
  readonly hobbsTenths: number;
  readonly tachTenths: number;
  /** ISO instant. */
  readonly readAt: string;
  /** The same figures stood there already; nothing was written. */
  readonly wasThere: boolean;
  readonly notes: readonly ReadingNote[];
  /** After a return: how far each meter ran on the flight. Null at departure. */
  readonly flown: HoursFlown | null;
  /** The aircraft's total time in service now; null when it is not known. */
  readonly ttisTenths: number | null;
}

/**
 * Records both meters at departure of a released flight. For its pilot in command, dispatchers and managers.
 *
 * Refuses by field what lib/rules/meters.ts refuses, `not_allowed` for a pilot who is not the one in command, `conflict`
 * when other figures were recorded for this departure before. Recorded whatever the answer about the aircraft is: hours
 * that ran have run, and an inspection that they overrun makes the next answer no go by itself.
 */
export const readMetersOut = command({
  verb: 'meters.read-out',
  input: readMetersOutInput,
  run: (context, input) => recordReading(context, input),
});

/** Records both meters at return, likewise. Without a reading at departure the last one on record stands for it. */
export const readMetersIn = command({
  verb: 'meters.read-in',
  input: readMetersInInput,
  run: (context, input) => recordReading(context, input),
});

async function recordReading(context: Context, input: ReadMetersInput) {
  const { tx, operatorId, actor, now, requestId } = context;
  const { moment, hobbsTenths, tachTenths } = input;
  const { aircraft, ...release } = await requireRelease(context, input.releaseId);
  const ofFlight = (await metersOfReleases(tx, operatorId, [release.id])).get(release.id) ?? NOT_READ;
  const audit = (detail: Record<string, unknown>) => ({
    subjectKind: 'release',
    subjectId: release.id,
    detail: { aircraft: aircraft.registration, moment, hobbsTenths, tachTenths, ...detail },
  });

  const there = moment === 'out' ? ofFlight.out : ofFlight.back;
  if (there) {
    if (there.hobbsTenths !== hobbsTenths || there.tachTenths !== tachTenths) throw readBefore(moment, there);
    return {
      value: taken(input, {
        readAt: there.at,
        wasThere: true,
        notes: [],
        flown: moment === 'in' ? ofFlight.flown : null,
        ttisTenths: aircraft.ttisTenths,
      }),
      audit: audit({ readAt: there.at, wasThere: true }),
    };
  }

  const said = input.readAt === 'now' ? instant(now) : input.readAt;
  // A phone whose clock runs ahead must not put its reading after what is read here in the next minutes.
  const at = new Date(Math.min(Date.parse(said), now.getTime()));
  const around = await readingsAround(tx, operatorId, aircraft.id, at);
  const next = around.next && readingOf(around.next);
  // Before the first reading stand the figures entered with the aircraft, which that reading overwrites and keeps.
  const entered = around.before ? null : around.next ? enteredFigures(around.next) : figuresOf(aircraft);
  const before = around.before ? readingOf(around.before) : entered;
  const { refusals, notes } = judgeReading({ hobbsTenths, tachTenths, at: said }, before, {
    moment,
    now: instant(now),
    departure: moment === 'in' ? ofFlight.out : null,
    back: moment === 'out' ? ofFlight.back : null,
    next,
  });
  if (refusals.length > 0) throw new Refusal('invalid', { fields: byField(refusals) });

  const reading = { hobbsTenths, tachTenths, at: instant(at) };
  const ttisBefore = next ? (around.before ?? entered)?.ttisTenths : aircraft.ttisTenths;
  const inService = timeInService(
    ttisBefore ?? null,
    before,
    reading,
    aircraft.ttisMeter as TtisMeter,
    moment,
  );
  const ttisTenths = notAbove(inService.ttisTenths, next?.ttisTenths ?? null);
  await tx.meterReading.create({
    data: {
      id: requestId,
      operatorId,
      aircraftId: aircraft.id,
      at,
      hobbsTenths,
      tachTenths,
      ttisTenths,
      readById: actor.personId,
      releaseId: release.id,
      moment,
      enteredHobbsTenths: entered?.hobbsTenths,
      enteredTachTenths: entered?.tachTenths,
      enteredTtisTenths: entered?.ttisTenths,
    },
  });
  // A phone that was long without signal must not set the meters back.
  if (!next) {
    await tx.aircraft.update({
      where: { operatorId_id: { operatorId, id: aircraft.id } },
      data: { hobbsTenths, tachTenths, ttisTenths },
    });
  }
  await factsChanged(tx, operatorId, aircraft.id);
  const told = inService.note && !next ? [...notes, inService.note] : notes;
  return {
    value: taken(input, {
      readAt: reading.at,
      wasThere: false,
      notes: told,
      flown: moment === 'in' ? hoursBetween(ofFlight.out ?? before ?? NOTHING, reading) : null,
      ttisTenths: next ? aircraft.ttisTenths : ttisTenths,
    }),
    audit: audit({
      ttisTenths,
      readAt: reading.at,
      isNewest: !next,
      notes: told.map(({ because }) => because),
    }),
  };
}

async function requireRelease({ tx, operatorId, actor }: Context, releaseId: string) {
  const release = await tx.release.findUnique({
    where: { operatorId_id: { operatorId, id: releaseId } },
    include: { aircraft: true },
  });
  if (!release) throw new Refusal('not_found', { say: said('There is no such release here.') });
  const isOfDesk = actor.roles.some((role) => role === 'dispatcher' || role === 'manager');
  if (!isOfDesk && release.pilotId !== actor.personId) {
    throw new Refusal('not_allowed', {
      say: said('The meters of a flight are written down by its pilot in command or at the desk.'),
    });
  }
  return release;
}

const NOTHING: LastOnRecord = { hobbsTenths: null, tachTenths: null, at: null };

/** The figures on the aircraft while nobody has read it yet; nobody knows when they were read. */
const figuresOf = ({ hobbsTenths, tachTenths, ttisTenths }: AircraftFigures) => ({
  hobbsTenths,
  tachTenths,
  ttisTenths,
  at: null,
});
type AircraftFigures = Omit<LastOnRecord, 'at'> & { readonly ttisTenths: number | null };

/** Between two readings on record the time in service lies between theirs. */
export const notAbove = (tenths: number | null, most: number | null): number | null =>
  tenths !== null && most !== null ? Math.min(tenths, most) : tenths;

const readBefore = (moment: ReadingMoment, { hobbsTenths, tachTenths, by }: FlightReading): Refusal =>
  new Refusal('conflict', {
    say:
      `The ${moment === 'out' ? 'departure' : 'return'} of this flight was written down before, by ${by}: ` +
      `Hobbs ${formatTenths(hobbsTenths)}, Tach ${formatTenths(tachTenths)}. If that is mistyped, the desk can correct it.`,
  });

/** Refusals of the rules as the door tells them, all at once. */
export function byField(refusals: readonly { readonly field: string; readonly because: string }[]) {
  const fields: Record<string, string[]> = {};
  for (const { field, because } of refusals) (fields[field] ??= []).push(because);
  return fields;
}

const taken = (
  { releaseId, moment, hobbsTenths, tachTenths }: ReadMetersInput,
  rest: Pick<ReadingTaken, 'readAt' | 'wasThere' | 'notes' | 'flown' | 'ttisTenths'>,
): ReadingTaken => ({ releaseId, moment, hobbsTenths, tachTenths, ...rest });
