import type { Prisma, Tx } from '../db/client';
import { calendarDateOrNull, instant } from '../db/dates';
import { aircraftContent } from '../aircraft/columns';
import { lineContent } from '../equipment/line';
import { typeContent } from '../types/columns';
import { carriedColumns } from './carried-rows';
import { column, dayOfSigning, follows, saidIn, type SignedColumn, type SignedRow } from './signed-row';
import type { Scope } from './signed-tables';

type VouchingRow = Prisma.VouchingGetPayload<object>;

/**
 * What somebody vouched for: the record itself against its content, and, for the newest record of an equipment line, an aircraft or a type,
 * the row it speaks of as it stands now. An older record was followed by a signed one, so the row may have gone on.
 */
export async function vouchings(tx: Tx, scope: Scope): Promise<SignedRow[]> {
  const { operatorId, aircraftId, signed } = scope;
  const rows = await tx.vouching.findMany({
    where: {
      operatorId,
      ...(aircraftId === undefined ? {} : { aircraftId }),
      ...(signed && { signedAt: signed }),
    },
  });
  const standing = await standingRows(tx, scope, rows);
  const carried = await carriedColumns(tx, scope, rows);
  return rows.map((row) => ({
    table: 'record vouched for',
    id: row.id,
    aircraftId: row.aircraftId ?? '',
    content: row.content,
    hash: row.hash,
    personId: row.personId,
    signedAt: row.signedAt,
    columns: [
      column('subject_kind', row.subjectKind, row.content, 'subjectKind'),
      column('subject_id', row.subjectId, row.content, 'subjectId'),
      column('aircraft_id', row.aircraftId, row.content, 'aircraftId'),
      column('source', row.source, row.content, 'source'),
      column('statement', row.statement, row.content, 'statement'),
      column('person_id', row.personId, row.content, 'person.id'),
      column('person_name', row.personName, row.content, 'person.name'),
      column('signed_at', instant(row.signedAt), row.content, 'at'),
      dayOfSigning(row.signedOn, row.signedAt),
      ...subjectColumns(row, standing.get(row.id)),
      ...(carried.get(row.id) ?? []),
    ],
  }));
}

/** The subject as it stands now, by the id of the newest record about it. */
type Standing = ReadonlyMap<string, Readonly<Record<string, unknown>>>;

/** Only what the record speaks of is compared: what it does not name was not signed by it. */
function subjectColumns(
  row: VouchingRow,
  now: Readonly<Record<string, unknown>> | undefined,
): SignedColumn[] {
  if (!now) return [];
  const said = saidIn(row.content, 'subject');
  if (typeof said !== 'object' || said === null) return [];
  return Object.entries(said).flatMap(([name, value]) =>
    name in now ? [follows(`${row.subjectKind}.${name}`, now[name], value)] : [],
  );
}

const KINDS = ['aircraft', 'aircraft-type'] as const;

async function standingRows(tx: Tx, { operatorId }: Scope, rows: readonly VouchingRow[]): Promise<Standing> {
  const ids = (kind: string) => [
    ...new Set(rows.filter(({ subjectKind }) => subjectKind === kind).map(({ subjectId }) => subjectId)),
  ];
  // The newest of all, not only of the time asked for.
  const newest = await tx.vouching.findMany({
    where: { operatorId, OR: KINDS.map((kind) => ({ subjectKind: kind, subjectId: { in: ids(kind) } })) },
    select: { id: true, subjectKind: true, subjectId: true },
    orderBy: [{ signedAt: 'asc' }],
  });
  const newestOf = new Map(
    newest.map(({ id, subjectKind, subjectId }) => [`${subjectKind} ${subjectId}`, id]),
  );
  const standing = new Map<string, Readonly<Record<string, unknown>>>();
  const put = (kind: string, id: string, now: Readonly<Record<string, unknown>>) => {
    const record = newestOf.get(`${kind} ${id}`);
    if (record !== undefined) standing.set(record, now);
  };
  const where = (kind: string) => ({ where: { operatorId, id: { in: ids(kind) } } });
  const changed = await installedSince(tx, operatorId);
  for (const row of await tx.equipment.findMany({ ...where('equipment'), include: { vouching: true } })) {
    const since = changed.get(row.id)?.find(({ at }) => row.vouching && at > row.vouching.signedAt);
    const { installed, ...line } = lineContent(row);
    // A disposition signed since took some off the list: what was there before it is what this record speaks of.
    const before = since && changed.get(row.id)?.at(-1)?.after === installed ? since.before : installed;
    // A line names its newest record itself.
    if (row.vouchingId === null) continue;
    standing.set(row.vouchingId, {
      ...line,
      installed: before,
      removedOn: calendarDateOrNull(row.removedOn),
      removedWhy: row.removedWhy,
    });
  }
  for (const row of await tx.aircraft.findMany(where('aircraft')))
    put('aircraft', row.id, aircraftContent(row));
  for (const row of await tx.aircraftType.findMany(where('aircraft-type'))) {
    put('aircraft-type', row.id, typeContent(row));
  }
  return standing;
}

interface Disposition {
  readonly at: Date;
  readonly before: number;
  readonly after: number;
}

/** Signed dispositions of deferrals that took equipment off a list (lib/inspections/dispose-deferral.ts), oldest first. */
async function installedSince(
  tx: Tx,
  operatorId: string,
): Promise<ReadonlyMap<string, readonly Disposition[]>> {
  const rows = await tx.auditRow.findMany({
    where: { operatorId, verb: 'deferral.dispose' },
    select: { at: true, detail: true },
    orderBy: { seq: 'asc' },
  });
  const byItem = new Map<string, Disposition[]>();
  for (const { at, detail } of rows) {
    const id = saidIn(detail, 'equipment.id');
    const before = saidIn(detail, 'equipment.installedBefore');
    const after = saidIn(detail, 'equipment.installedAfter');
    if (typeof id !== 'string' || typeof before !== 'number' || typeof after !== 'number') continue;
    byItem.set(id, [...(byItem.get(id) ?? []), { at, before, after }]);
  }
  return byItem;
}
