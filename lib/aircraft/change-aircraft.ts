import { command } from '../access/service';
import type { Tx } from '../db/client';
import { factsChanged } from '../fleet/require-aircraft';
import { standingRecords } from '../inspections/requirement';
import { melInForce } from '../mel/require-mel';
import { fieldRefusal, Refusal } from '../problems';
import { vouch } from '../records/vouch';
import { distrustDirectives, distrustLines } from './distrust';
import {
  aircraftColumns,
  aircraftContent,
  hourColumns,
  type AircraftContent,
  type HourColumns,
} from './columns';
import { requireAnyAircraft, requireNewRegistration, requireTypeAndBase } from './require';
import { AIRCRAFT_STATEMENT, changeAircraftInput } from './schema';
import { formatTenths } from '../rules/hours';
import { filled, said } from '../words/said';

/**
 * Puts the facts of an aircraft right, signed anew with the document named. Hours can be filled in while they are not known; known ones go
 * on by the meters of each flight and are corrected there. With another type, what was confirmed of its equipment list and its directives
 * has to be confirmed again. Its registration can be put right until something is on record under it. Raises the facts' version and has
 * releases asked about again. Refuses `not_found`, also for a retired aircraft.
 */
export const changeAircraft = command({
  verb: 'aircraft.change',
  input: changeAircraftInput,
  signing: true,
  async run({ tx, operatorId, actor, now }, { aircraftId, ...input }) {
    const row = await requireAnyAircraft(tx, operatorId, aircraftId);
    if (row.retiredOn)
      throw new Refusal('not_found', { say: said('This aircraft is retired. Bring it back first.') });
    if (input.registration !== row.registration) {
      await requireNewRegistration(tx, operatorId, input.registration);
      await requireNothingOnRecord(tx, operatorId, aircraftId);
    }
    const { type, base } = await requireTypeAndBase(tx, operatorId, input);
    const columns = aircraftColumns(input);
    const hours = hoursFilledIn(row, hourColumns(input));
    if (row.ttisTenths === null) await requireHoursOfRecords(tx, operatorId, aircraftId, hours.ttisTenths);
    const otherType = input.typeId !== row.typeId;
    if (otherType) await requireNoList(tx, operatorId, aircraftId);
    await tx.aircraft.update({
      where: { operatorId_id: { operatorId, id: aircraftId } },
      data: { ...columns, ...hours },
    });
    const before = { ...aircraftContent(row), ...hoursOf(row) };
    const after = { ...aircraftContent(columns), ...hours };
    const changed = (Object.keys(after) as (keyof AircraftContent | keyof HourColumns)[]).filter(
      (name) => before[name] !== after[name],
    );
    // Lines, and the directives that apply, were held against the documents of another type; directives go by the serial number too.
    const distrusted = otherType ? await distrustLines(tx, operatorId, aircraftId) : 0;
    const unreviewed = otherType || columns.serial !== row.serial;
    if (unreviewed) await distrustDirectives(tx, operatorId, aircraftId);
    const vouched = await vouch(tx, {
      operatorId,
      actor,
      now,
      zone: base.zone,
      subjectKind: 'aircraft',
      subjectId: aircraftId,
      aircraftId,
      source: input.source,
      statement: AIRCRAFT_STATEMENT,
      content: { ...aircraftContent(columns), type: type.name, base: base.ident, hours },
    });
    if (changed.length > 0) await factsChanged(tx, operatorId, aircraftId);
    return {
      value: { aircraftId, changed },
      audit: {
        subjectKind: 'aircraft',
        subjectId: aircraftId,
        detail: {
          registration: columns.registration,
          changed: Object.fromEntries(changed.map((name) => [name, { from: before[name], to: after[name] }])),
          ...(distrusted > 0 && { linesToConfirmAgain: distrusted }),
          ...(unreviewed && { directivesToReviewAgain: true }),
          source: input.source,
          vouching: vouched.id,
          hash: vouched.hash,
        },
      },
    };
  },
});

const hoursOf = ({ hobbsTenths, tachTenths, ttisTenths }: HourColumns): HourColumns => ({
  hobbsTenths,
  tachTenths,
  ttisTenths,
});

const FIELDS = { hobbsTenths: 'hobbs', tachTenths: 'tach', ttisTenths: 'ttis' } as const;

/** Known hours stand; a form that was open while a flight came back may show older ones, which is no wish to change them. */
function hoursFilledIn(row: HourColumns, typed: HourColumns): HourColumns {
  const of = (name: keyof HourColumns): number | null => {
    const known = row[name];
    if (known === null) return typed[name];
    const wish = typed[name];
    if (wish !== null && wish > known) {
      throw fieldRefusal(
        FIELDS[name],
        said('These hours go on by the meters of each flight. Read or correct them there.'),
      );
    }
    return known;
  };
  return { hobbsTenths: of('hobbsTenths'), tachTenths: of('tachTenths'), ttisTenths: of('ttisTenths') };
}

/** A record of work done at more hours than the aircraft is said to have makes everything due by hours due too late. */
async function requireHoursOfRecords(
  tx: Tx,
  operatorId: string,
  aircraftId: string,
  ttisTenths: number | null,
): Promise<void> {
  if (ttisTenths === null) return;
  const records = await tx.compliance.findMany({
    where: { operatorId, requirement: { aircraftId, endedOn: null } },
    select: {
      id: true,
      doneOn: true,
      ttisTenths: true,
      supersedesId: true,
      requirement: { select: { name: true } },
    },
  });
  const newest = standingRecords(records).find((record) => record.ttisTenths > ttisTenths);
  if (!newest) return;
  throw fieldRefusal(
    'ttis',
    filled(said('The record of “{name}” says {hours} h. One of the two is wrong.'), {
      name: newest.requirement.name,
      hours: formatTenths(newest.ttisTenths),
    }),
  );
}

/** A minimum equipment list is of the type it was approved for (91.213(a)). */
async function requireNoList(tx: Tx, operatorId: string, aircraftId: string): Promise<void> {
  const mel = await melInForce(tx, operatorId, aircraftId);
  if (!mel) return;
  throw fieldRefusal(
    'typeId',
    filled(said('The minimum equipment list {reference} is in force for the type of now. End it first.'), {
      reference: mel.reference,
    }),
  );
}

/** Papers, entries and releases name it by its registration. */
async function requireNothingOnRecord(tx: Tx, operatorId: string, aircraftId: string): Promise<void> {
  const where = { operatorId, aircraftId };
  // One after the other: they share the connection of the transaction.
  const records =
    (await tx.discrepancy.count({ where })) +
    (await tx.release.count({ where })) +
    (await tx.maintenanceAction.count({ where })) +
    (await tx.walkaround.count({ where })) +
    (await tx.requirement.count({ where })) +
    (await tx.specialFlightPermit.count({ where }));
  if (records === 0) return;
  throw fieldRefusal(
    'registration',
    said(
      'Records name the aircraft by this registration already, so it stays. Retire it and add the other one.',
    ),
  );
}
