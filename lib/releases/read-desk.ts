import { z } from 'zod';
import { query } from '../access/service';
import { calendarDate, instant } from '../db/dates';
import type { Tx } from '../db/client';
import { namesOf } from '../people/names';
import { CERTIFICATE_STANDS, SIGNER, signerFacts } from '../people/signer';
import { PERMIT_ROW } from '../permits/permit-facts';
import { Refusal } from '../problems';
import { dayAtBase } from '../records/signature';
import { dayInWords } from '../rules/in-words';
import type { AircraftFacts } from '../rules/aircraft';
import type { ProposedFlight } from '../rules/operations';
import type { LastOnRecord } from '../rules/meters';
import type { Answer } from '../rules/verdict';
import { whereSpendsPermit } from './active-releases';
import { peopleInHistory, standingOf, type ReleaseStanding } from './history';
import type { SpentAhead } from './hours-ahead';
import { lastOnRecord, metersOfReleases, NOT_READ, type FlightMeters } from './readings';
import { peopleInHead, releaseHead, WITH_ZONE, type ReleaseHead, type ReleaseRow } from './release-head';
import { said } from '../words/said';

/** What the flight form offers to choose from. */
export interface DeskChoices {
  readonly now: string;
  readonly aircraft: readonly {
    readonly id: string;
    readonly registration: string;
    readonly typeName: string;
    readonly baseId: string;
    /** Special flight permits recorded for it, not used and not over. */
    readonly permits: readonly { readonly id: string; readonly label: string }[];
  }[];
  readonly bases: readonly {
    readonly id: string;
    readonly ident: string;
    readonly name: string;
    readonly zone: string;
  }[];
  readonly pilots: readonly { readonly id: string; readonly name: string; readonly grade: string | null }[];
  /** Whom to call about an aircraft, and what they hold: "airframe, powerplant". Whose signature counts is asked when they sign. */
  readonly mechanics: readonly { readonly name: string; readonly holds: string }[];
}

/** Aircraft, bases and pilots to compose a flight from, and mechanics to call about one. */
export const readDeskChoices = query({
  verb: 'flight.answer',
  input: z.object({}),
  async run({ tx, operatorId, now }): Promise<DeskChoices> {
    const aircraft = await tx.aircraft.findMany({
      where: { operatorId, retiredOn: null },
      include: {
        type: { select: { name: true } },
        base: { select: { zone: true } },
        permits: {
          where: { releases: { none: whereSpendsPermit } },
          include: PERMIT_ROW,
          orderBy: { signedAt: 'asc' },
        },
      },
      orderBy: { registration: 'asc' },
    });
    const bases = await tx.base.findMany({ where: { operatorId }, orderBy: { ident: 'asc' } });
    const pilots = await tx.person.findMany({
      where: { operatorId, leftOn: null, certificates: { some: { kind: 'pilot', ...CERTIFICATE_STANDS } } },
      include: SIGNER,
      orderBy: { name: 'asc' },
    });
    const mechanics = await tx.person.findMany({
      where: {
        operatorId,
        leftOn: null,
        certificates: { some: { kind: { in: ['mechanic', 'repair-station'] }, ...CERTIFICATE_STANDS } },
      },
      include: SIGNER,
      orderBy: { name: 'asc' },
    });
    return {
      now: instant(now),
      mechanics: mechanics.map((person) => {
        const { name, mechanic, repairStation } = signerFacts(person);
        return { name, holds: (mechanic ?? repairStation)?.ratings.join(', ') ?? '' };
      }),
      aircraft: aircraft.map(({ id, registration, type, baseId, base, permits }) => ({
        id,
        registration,
        typeName: type.name,
        baseId,
        permits: permits
          .filter((permit) => calendarDate(permit.goodThrough) >= dayAtBase(now, base.zone))
          .map((permit) => ({
            id: permit.id,
            label: `${permit.reference}: ${permit.from.ident} to ${permit.to.ident}, through ${dayInWords(calendarDate(permit.goodThrough))}`,
          })),
      })),
      bases: bases.map(({ id, ident, name, zone }) => ({ id, ident, name, zone })),
      pilots: pilots.map((person) => ({
        id: person.id,
        name: person.name,
        grade: signerFacts(person).pilot?.grade ?? null,
      })),
    };
  },
});

export interface ReleaseView extends ReleaseStanding, ReleaseHead {
  readonly answer: Answer;
  /** What was read at departure and return. */
  readonly meters: FlightMeters;
  /** The planned flight it was released from. */
  readonly plannedFlightId: string | null;
  /** Hours of other flights that were counted ahead; null when none were, or before they were counted. */
  readonly spentAhead: SpentAhead | null;
}

const SHOWN = 30;

/** The newest releases, each with the answer it stood on. */
export const readReleases = query({
  verb: 'release.read',
  input: z.object({ aircraftId: z.uuid().optional(), releaseId: z.uuid().optional() }),
  async run({ tx, operatorId, actor, now }, { aircraftId, releaseId }): Promise<ReleaseView[]> {
    const rows = await tx.release.findMany({
      where: { operatorId, aircraftId, id: releaseId },
      include: WITH_ZONE,
      orderBy: { releasedAt: 'desc' },
      take: SHOWN,
    });
    const names = await namesOf(tx, peopleOf(rows));
    const meters = await metersOf(tx, operatorId, rows);
    return rows.map((row) => ({ ...releaseView(row, names, meters), ...standingOf(row, actor, now, names) }));
  },
});

/** One release whole: with the flight and the aircraft's facts exactly as they were kept. */
export interface ReleaseFile extends ReleaseView {
  readonly flight: ProposedFlight;
  readonly facts: AircraftFacts;
  readonly limitsPassedOn: boolean;
  readonly aircraftId: string;
  readonly pilotId: string | null;
  /** The aircraft's meters as they stand on record now. */
  readonly lastOnRecord: LastOnRecord;
  /** Total time in service now; null when it is not known. */
  readonly ttisTenths: number | null;
}

/** One release with everything it stood on. Refuses `not_found`. */
export const readRelease = query({
  verb: 'release.read',
  input: z.object({ releaseId: z.uuid() }),
  async run({ tx, operatorId, actor, now }, { releaseId }): Promise<ReleaseFile> {
    const row = await tx.release.findUnique({
      where: { operatorId_id: { operatorId, id: releaseId } },
      include: WITH_ZONE,
    });
    if (!row) throw new Refusal('not_found', { say: said('There is no such release here.') });
    const names = await namesOf(tx, peopleOf([row]));
    return {
      ...releaseView(row, names, await metersOf(tx, operatorId, [row])),
      ...standingOf(row, actor, now, names),
      flight: row.flight as unknown as ProposedFlight,
      facts: row.facts as unknown as AircraftFacts,
      limitsPassedOn: row.limitsPassedOn,
      aircraftId: row.aircraftId,
      pilotId: row.pilotId,
      lastOnRecord: await lastOnRecord(tx, row.aircraft),
      ttisTenths: row.aircraft.ttisTenths,
    };
  },
});

const peopleOf = (rows: readonly ReleaseRow[]): string[] => [...peopleInHead(rows), ...peopleInHistory(rows)];

const metersOf = (tx: Tx, operatorId: string, rows: readonly ReleaseRow[]) =>
  metersOfReleases(
    tx,
    operatorId,
    rows.map((row) => row.id),
  );

function releaseView(
  row: ReleaseRow,
  names: ReadonlyMap<string, string>,
  meters: ReadonlyMap<string, FlightMeters>,
): Omit<ReleaseView, keyof ReleaseStanding> {
  return {
    ...releaseHead(row, names),
    answer: row.answer as unknown as Answer,
    meters: meters.get(row.id) ?? NOT_READ,
    plannedFlightId: row.plannedFlightId,
    spentAhead: row.spentAhead as unknown as SpentAhead | null,
  };
}
