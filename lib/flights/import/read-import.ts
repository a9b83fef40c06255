import { airportByIdent } from '../../airports/find-airport';
import type { Tx } from '../../db/client';
import { instant } from '../../db/dates';
import { SIGNER, signerFacts } from '../../people/signer';
import { whereHolds } from '../../releases/active-releases';
import { checkRows, type CheckedFile, type ImportContext, type StandingPlan } from './check-rows';
import { readCsv } from './csv';
import { readICalendar } from './icalendar';
import type { WrittenFile } from './parsed';
import type { FileToImport } from './schema';

/** Reads a file and holds it against the school: the same for the look beforehand and for the import itself. */
export async function readImport(
  tx: Tx,
  operatorId: string,
  now: Date,
  { kind, text }: Pick<FileToImport, 'kind' | 'text'>,
): Promise<CheckedFile> {
  const at = instant(now);
  const written = kind === 'csv' ? readCsv(text) : readICalendar(text, at);
  if (written.errors.length > 0) return { errors: written.errors, notes: written.notes, rows: [] };
  return checkRows(written, await contextFor(tx, operatorId, at, written));
}

async function contextFor(
  tx: Tx,
  operatorId: string,
  now: string,
  file: WrittenFile,
): Promise<ImportContext> {
  const aircraft = await tx.aircraft.findMany({
    where: { operatorId, retiredOn: null },
    select: { id: true, registration: true, base: { select: { ident: true, zone: true } } },
  });
  const emails = [
    ...new Set(file.flights.flatMap((one) => one.emails.map((email) => email.trim().toLowerCase()))),
  ];
  const people = await tx.person.findMany({
    where: { operatorId, email: { in: emails } },
    include: SIGNER,
  });
  const bases = await tx.base.findMany({ where: { operatorId }, select: { ident: true, zone: true } });
  return {
    now,
    aircraft: new Map(
      aircraft.map(({ id, registration, base }) => [
        registration.toUpperCase(),
        { id, registration, baseIdent: base.ident, zone: base.zone },
      ]),
    ),
    people: new Map(
      people.map((person) => {
        const { name, pilot, leftOn } = signerFacts(person);
        return [person.email, { id: person.id, name, isPilot: pilot !== null, hasLeft: leftOn !== null }];
      }),
    ),
    places: placesIn(file, bases),
    ...(await plansFromFiles(tx, operatorId, now)),
  };
}

/** Own bases first: a private field may bear an airport's letters. */
function placesIn(file: WrittenFile, bases: readonly { ident: string; zone: string }[]): Map<string, string> {
  const places = new Map<string, string>();
  for (const { from, to } of file.flights) {
    for (const ident of [from, to].map((text) => text.toUpperCase())) {
      const zone = bases.find((base) => base.ident === ident)?.zone ?? airportByIdent(ident)?.zone;
      if (ident !== '' && zone !== undefined) places.set(ident, zone);
    }
  }
  return places;
}

async function plansFromFiles(
  tx: Tx,
  operatorId: string,
  now: string,
): Promise<Pick<ImportContext, 'standing' | 'cancelledHere'>> {
  const rows = await tx.plannedFlight.findMany({
    where: {
      operatorId,
      outsideUid: { not: null },
      // Cancelled ones only tell that somebody here called a flight off; long ago it matters no more.
      OR: [{ cancelledAt: null }, { arriveAt: { gt: new Date(now) } }],
    },
    include: {
      releases: { where: whereHolds, select: { id: true } },
    },
  });
  const standing = new Map<string, StandingPlan>();
  const cancelledHere = new Set<string>();
  for (const row of rows) {
    const uid = row.outsideUid ?? '';
    if (row.cancelledAt !== null) {
      cancelledHere.add(uid);
      continue;
    }
    const { id, aircraftId, pilotId, plannedTenths, words, fromIdent, toIdent, rules, purpose } = row;
    standing.set(uid, {
      id,
      uid,
      aircraftId,
      pilotId,
      departAt: instant(row.departAt),
      arriveAt: instant(row.arriveAt),
      plannedTenths,
      words,
      fromIdent,
      toIdent,
      rules,
      purpose,
      released: row.releases.length > 0,
    });
  }
  return { standing, cancelledHere };
}
