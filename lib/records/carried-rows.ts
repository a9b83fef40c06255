import type { Prisma, Tx } from '../db/client';
import { calendarDate, calendarDateOrNull } from '../db/dates';
import { column, follows, saidIn, type SignedColumn } from './signed-row';
import type { Scope } from './signed-tables';

type VouchingRow = Prisma.VouchingGetPayload<object>;
type Row = Readonly<Record<string, unknown>>;

/** Columns of one subject against what the record about it says; only keys that both have. */
const against = (kind: string, now: Row, vouching: VouchingRow): SignedColumn[] =>
  Object.entries(now).flatMap(([name, value]) => {
    const said = saidIn(vouching.content, `subject.${name}`);
    return said === undefined ? [] : [follows(`${kind}.${name}`, value, said)];
  });

/**
 * What was carried over, beside the record of who vouched for it: words and place of a write-up, a deferral as the paper has it, the
 * record of an inspection, the head of a minimum equipment list. What goes on by later signed acts (judgements, renewals) is not
 * compared. By id of the vouching.
 */
export async function carriedColumns(
  tx: Tx,
  { operatorId }: Scope,
  rows: readonly VouchingRow[],
): Promise<ReadonlyMap<string, readonly SignedColumn[]>> {
  const found = new Map<string, readonly SignedColumn[]>();
  const of = (kind: string) => rows.filter(({ subjectKind }) => subjectKind === kind);
  const where = (kind: string) => ({ operatorId, id: { in: of(kind).map(({ subjectId }) => subjectId) } });
  const put = (kind: string, id: string, now: Row & { readonly vouchingId: string | null }) => {
    const { vouchingId, ...columns } = now;
    for (const vouching of of(kind).filter(({ subjectId }) => subjectId === id)) {
      found.set(vouching.id, [
        follows(`${kind}.vouching_id`, vouchingId, vouching.id),
        ...against(kind, columns, vouching),
      ]);
    }
  };
  const writeUps = await tx.discrepancy.findMany({ where: where('discrepancy'), include: { finding: true } });
  for (const { id, number, vouchingId, finding } of writeUps) {
    put('discrepancy', id, { vouchingId, number, words: finding.words, place: finding.place });
  }
  for (const row of await tx.deferral.findMany({ where: where('deferral') })) {
    put('deferral', row.id, {
      vouchingId: row.vouchingId,
      discrepancyId: row.discrepancyId,
      basis: row.basis,
      melItemId: row.melItemId,
      method: row.method,
      methodWords: row.methodWords,
      isMaintenance: row.deactivationIsMaintenance,
      recordedOn: calendarDate(row.recordedOn),
      eltRemovedOn: calendarDateOrNull(row.eltFirstRemovedOn),
      eltRecordComplete: row.eltRecordComplete,
    });
  }
  for (const row of await tx.compliance.findMany({ where: where('compliance') })) {
    put('compliance', row.id, {
      vouchingId: row.vouchingId,
      doneOn: calendarDate(row.doneOn),
      ttisTenths: row.ttisTenths,
      approvedBy: row.approvedBy,
      approvedByAuthorised: row.approvedByAuthorised,
    });
  }
  await lists(tx, operatorId, of('mel'), found);
  await reviews(tx, operatorId, of('directives'), found);
  return found;
}

/** A list is signed when it is taken in; its letter again with every change, so the newest record of it counts for the letter. */
async function lists(
  tx: Tx,
  operatorId: string,
  rows: readonly VouchingRow[],
  found: Map<string, readonly SignedColumn[]>,
): Promise<void> {
  const lists = await tx.mel.findMany({
    where: { operatorId, id: { in: rows.map(({ subjectId }) => subjectId) } },
    include: { items: true },
  });
  for (const mel of lists) {
    const about = rows
      .filter(({ subjectId }) => subjectId === mel.id)
      .toSorted((a, b) => a.signedAt.getTime() - b.signedAt.getTime());
    const takenIn = about.find(({ id }) => id === mel.vouchingId);
    if (takenIn) {
      const items = saidIn(takenIn.content, 'subject.items');
      found.set(takenIn.id, [
        column('mel.reference', mel.reference, takenIn.content, 'subject.reference'),
        column('mel.revision', mel.revision, takenIn.content, 'subject.revision'),
        column('mel.enforce_categories', mel.enforceCategories, takenIn.content, 'subject.enforceCategories'),
        column(
          'mel.extension_categories',
          mel.extensionCategories,
          takenIn.content,
          'subject.extensionCategories',
        ),
        column(
          'mel.extension_reference',
          mel.extensionReference,
          takenIn.content,
          'subject.extensionReference',
        ),
        follows('mel.items', itemsOf(mel.items), Array.isArray(items) ? itemsSaid(items) : undefined),
      ]);
    }
    const letter = about.findLast(({ content }) => saidIn(content, 'subject.letterAboard') !== undefined);
    if (!letter) continue;
    found.set(letter.id, [
      ...(found.get(letter.id) ?? []),
      column('mel.letter_aboard', mel.letterAboard, letter.content, 'subject.letterAboard'),
      column('mel.letter_reference', mel.letterReference, letter.content, 'subject.letterReference'),
      column(
        'mel.letter_issued_on',
        calendarDateOrNull(mel.letterIssuedOn),
        letter.content,
        'subject.letterIssuedOn',
      ),
    ]);
  }
}

type Items = readonly Prisma.MelItemGetPayload<object>[];
const byTitle = (a: readonly unknown[], b: readonly unknown[]) => (String(a[0]) < String(b[0]) ? -1 : 1);

/** What decides of each item, in one order. */
const itemsOf = (items: Items) =>
  items
    .map((item) => [
      item.title,
      item.equipmentId,
      item.category,
      item.categoryADays,
      item.installed,
      item.requiredForDispatch,
      item.allowedNight,
      item.allowedIfr,
      item.allowedHire,
      item.proviso,
      item.operatingProcedure ?? '',
      item.maintenanceProcedure ?? '',
    ])
    .toSorted(byTitle);

const itemsSaid = (items: readonly unknown[]) =>
  items
    .map((item) =>
      [
        'title',
        'equipmentId',
        'category',
        'days_for_a',
        'installed',
        'required_for_dispatch',
        'allowed_night',
        'allowed_ifr',
        'allowed_hire',
        'proviso',
        'operating_procedure',
        'maintenance_procedure',
      ].map((name) => saidIn(item, name) ?? null),
    )
    .toSorted(byTitle);

/** The day of the review, which the newest record of one carries. */
async function reviews(
  tx: Tx,
  operatorId: string,
  rows: readonly VouchingRow[],
  found: Map<string, readonly SignedColumn[]>,
): Promise<void> {
  const ids = [...new Set(rows.map(({ subjectId }) => subjectId))];
  const newest = await tx.vouching.findMany({
    where: { operatorId, subjectKind: 'directives', subjectId: { in: ids } },
    orderBy: { signedAt: 'asc' },
    select: { id: true, subjectId: true },
  });
  const newestOf = new Map(newest.map(({ id, subjectId }) => [subjectId, id]));
  for (const aircraft of await tx.aircraft.findMany({ where: { operatorId, id: { in: ids } } })) {
    const row = rows.find(({ id }) => id === newestOf.get(aircraft.id));
    // Taken back since (another type, back in service): then nothing stands, and that bars.
    if (!row || aircraft.directivesReviewedOn === null) continue;
    const reviewedOn = calendarDateOrNull(aircraft.directivesReviewedOn);
    found.set(row.id, [
      column('aircraft.directives_reviewed_on', reviewedOn, row.content, 'subject.reviewedOn'),
    ]);
  }
}

/** A deferral carried over, against the determination that was signed with it: its basis and clock are those of the paper. */
export const carriedBasis = (
  row: Prisma.DeferralGetPayload<object>,
  itemTitle: string | null,
  content: unknown,
): readonly SignedColumn[] => [
  column('deferral.basis', row.basis, content, 'basis'),
  column('deferral.mel_item_id', itemTitle, content, 'melItem'),
  column('deferral.recorded_on', calendarDate(row.recordedOn), content, 'recordedOn'),
  column(
    'deferral.deactivation_is_maintenance',
    row.deactivationIsMaintenance,
    content,
    'deactivationIsMaintenance',
  ),
  column('deferral.mel_procedures_done', row.melProceduresDone, content, 'melProceduresDone'),
  column(
    'deferral.elt_first_removed_on',
    calendarDateOrNull(row.eltFirstRemovedOn),
    content,
    'eltFirstRemovedOn',
  ),
  column('deferral.elt_record_complete', row.eltRecordComplete, content, 'eltRecordComplete'),
];
