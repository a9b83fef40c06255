import type { Prisma, Tx } from '../db/client';
import { calendarDate, calendarDateOrNull, instant } from '../db/dates';
import { entryContent, WORK_ROW, type WorkRow } from '../work/entry';
import { carriedBasis } from './carried-rows';
import {
  column,
  dayOf,
  dayOfSigning,
  everyKey,
  follows,
  saidIn,
  type SignedColumn,
  type SignedRow,
} from './signed-row';
import { vouchings } from './vouched-rows';

/** Which records: all of an operator, those of one aircraft, those signed in a time. */
export interface Scope {
  readonly operatorId: string;
  readonly aircraftId?: string;
  readonly signed?: { readonly gte: Date; readonly lt: Date };
}

/** Reads every signed row with a content of its own, with the columns that the content speaks of. */
export async function readSigned(tx: Tx, scope: Scope): Promise<readonly SignedRow[]> {
  return [
    ...(await signOffs(tx, scope)),
    ...(await checkFlights(tx, scope)),
    ...(await determinations(tx, scope)),
    ...(await lists(tx, scope)),
    ...(await extensions(tx, scope)),
    ...(await permits(tx, scope)),
    ...(await permitInspections(tx, scope)),
    ...(await compliances(tx, scope)),
    ...(await acceptances(tx, scope)),
    ...(await vouchings(tx, scope)),
  ];
}

/** The aircraft, where one is asked for. */
const of = ({ aircraftId }: Scope) => (aircraftId === undefined ? {} : { aircraftId });

/** The operator, and the time where one is asked for. */
const within = ({ operatorId, signed }: Scope) => ({ operatorId, ...(signed && { signedAt: signed }) });

/** What is told of a signed row beside its columns: which it is, of which aircraft, by whom and when. */
const told = (
  table: string,
  aircraftId: string,
  content: unknown,
  { id, hash, personId, signedAt }: Pick<SignedRow, 'id' | 'hash' | 'personId' | 'signedAt'>,
): Omit<SignedRow, 'columns'> => ({ table, id, aircraftId, content, hash, personId, signedAt });

/** Columns that every signature by a certificate has. */
function signer(
  row: { personName: string; certificateKind: string; certificateNumber: string },
  content: unknown,
) {
  return [
    column('person_name', row.personName, content, 'signer.name', 'by', 'person.name'),
    column('certificate_kind', row.certificateKind, content, 'signer.certificate.kind', 'certificate.kind'),
    column(
      'certificate_number',
      row.certificateNumber,
      content,
      'signer.certificate.number',
      'certificate.number',
    ),
  ];
}

const SIGN_OFF = {
  work: { include: { ...WORK_ROW, inspection: true } },
} as const satisfies Prisma.SignOffInclude;
type SignOffRow = Prisma.SignOffGetPayload<object> & {
  readonly work: WorkRow & { readonly inspection?: Inspection | null };
};
type Inspection = Prisma.InspectionGetPayload<object>;

async function signOffs(tx: Tx, scope: Scope): Promise<SignedRow[]> {
  const rows = await tx.signOff.findMany({
    where: { ...within(scope), work: of(scope) },
    include: SIGN_OFF,
  });
  return rows.map(signedSignOff);
}

/** A sign-off with the entry it signs, for verification. */
export function signedSignOff({ work, content, ...row }: SignOffRow): SignedRow {
  return {
    ...told('sign-off', work.aircraftId, content, row),
    columns: [
      ...signer(row, content),
      column('statement', row.statement, content, 'statement'),
      column('signed_at', instant(row.signedAt), content, 'at'),
      dayOfSigning(row.signedOn, row.signedAt),
      column('airworthy', row.airworthy, content, 'airworthy', 'inspection.airworthy'),
      column('list_id', row.listId, content, 'listId', 'list.id'),
      ...everyKey('work.', entryContent(work), saidIn(content, 'entry')),
      ...(work.inspection ? inspectionColumns(work.inspection, content) : []),
    ],
  };
}

/** What the entry of a part says of the inspection it belongs to. */
function inspectionColumns(row: Inspection, content: unknown): readonly SignedColumn[] {
  return [
    column('inspection.kind', row.kind, content, 'inspection.inspection'),
    column('inspection.extent', row.extent, content, 'inspection.extent'),
    column('inspection.checklist', row.checklist, content, 'inspection.checklist'),
    column('inspection.run_up', row.runUp, content, 'inspection.performance'),
    column('inspection.ttis_tenths', row.ttisTenths, content, 'inspection.ttisTenths'),
    column('inspection.completed_on', calendarDateOrNull(row.completedOn), content, 'inspection.completedOn'),
  ];
}

async function checkFlights(tx: Tx, scope: Scope): Promise<SignedRow[]> {
  const rows = await tx.checkFlight.findMany({
    where: { ...within(scope), work: of(scope) },
    include: { work: { include: { signOff: { select: { hash: true } } } } },
  });
  return rows.map(({ work, content, ...row }) => ({
    ...told('check flight', work.aircraftId, content, row),
    columns: [
      column('person_name', row.personName, content, 'by'),
      column('certificate_number', row.certificateNumber, content, 'certificate.number', 'certificate'),
      column('words', row.words, content, 'words'),
      column('flown_on', calendarDate(row.flownOn), content, 'flownOn'),
      column('signed_at', instant(row.signedAt), content, 'at'),
      column('work_id', work.signOff?.hash ?? null, content, 'signOff'),
    ],
  }));
}

async function determinations(tx: Tx, scope: Scope): Promise<SignedRow[]> {
  const rows = await tx.determination.findMany({
    where: { ...within(scope), discrepancy: of(scope) },
    include: { discrepancy: true, deferrals: { include: { placards: true } } },
  });
  const titles = await titlesOfItems(
    tx,
    scope,
    rows.flatMap(({ deferrals }) => deferrals.flatMap(({ melItemId }) => melItemId ?? [])),
  );
  return rows.map(({ discrepancy, deferrals, content, ...row }) => ({
    ...told('determination', discrepancy.aircraftId, content, row),
    columns: [
      ...signer(row, content),
      column('kind', row.kind, content, 'what'),
      column('discrepancy_id', discrepancy.number, content, 'writeUp'),
      column('statement', row.statement, content, 'statement'),
      column('signed_at', instant(row.signedAt), content, 'at'),
      dayOfSigning(row.signedOn, row.signedAt),
      row.kind === 'within-limits'
        ? follows('severity', row.severity, 'watch')
        : column('severity', row.severity, content, 'severity'),
      column('measured', row.measured, content, 'measured'),
      column('limit_text', row.limitText, content, 'limit', 'limitText'),
      column('limit_source', row.limitSource, content, 'source', 'limitSource'),
      column('measurement', row.measurement, content, 'measurement', 'readings.0.measurement'),
      column('measured_value', row.measuredValue, content, 'measuredValue', 'readings.0.measuredValue'),
      column('limit_id', row.limitId, content, 'limitId', 'readings.0.limitId'),
      column('deferral_id', row.deferralId, content, 'deferralId'),
      column('inspection_id', row.inspectionId, content, 'inspectionId'),
      column('compliance_id', row.complianceId, content, 'complianceId'),
      follows('vouching_id', row.vouchingId !== null, saidIn(content, 'carriedOver') !== undefined),
      ...deferrals.flatMap((deferral) => [
        column('deferral.method', deferral.method, content, 'method'),
        column('deferral.method_words', deferral.methodWords, content, 'methodWords'),
        column('deferral.eligibility', deferral.eligibility, content, 'eligibility'),
        ...basisColumns(deferral, discrepancy.openedAt, titles, content),
        ...deferral.placards.flatMap((placard) => [
          column('placard.wording', placard.wording, content, 'placardWording'),
          column('placard.location', placard.location, content, 'placardLocation'),
        ]),
      ]),
    ],
  }));
}

/** Titles of items of minimum equipment lists, by id. */
async function titlesOfItems(
  tx: Tx,
  { operatorId }: Scope,
  ids: readonly string[],
): Promise<ReadonlyMap<string, string>> {
  const rows = await tx.melItem.findMany({ where: { operatorId, id: { in: [...ids] } } });
  return new Map(rows.map(({ id, title }) => [id, title]));
}

/**
 * What a deferral rests on and when its clock began. The determination does not name these columns; the report signed with
 * it does, and where that names no day, the day is the write-up's.
 */
function basisColumns(
  row: Prisma.DeferralGetPayload<object>,
  openedAt: Date,
  titles: ReadonlyMap<string, string>,
  content: unknown,
): readonly SignedColumn[] {
  const path = saidIn(content, 'eligibility.path');
  if (saidIn(content, 'carriedOver') !== undefined) {
    return carriedBasis(
      row,
      row.melItemId === null ? null : (titles.get(row.melItemId) ?? row.melItemId),
      content,
    );
  }
  const begun = saidIn(content, 'eligibility.listEntry.clock.recordedOn');
  const item = row.melItemId === null ? null : (titles.get(row.melItemId) ?? row.melItemId);
  return [
    follows('deferral.basis', row.basis, path === undefined ? path : path === 'mel' ? 'mel' : '91.213(d)'),
    follows(
      'deferral.mel_item_id',
      item,
      path === 'mel' ? saidIn(content, 'eligibility.listEntry.title') : path === undefined ? path : null,
    ),
    begun === undefined
      ? dayOf('deferral.recorded_on', row.recordedOn, openedAt)
      : follows('deferral.recorded_on', calendarDate(row.recordedOn), begun),
  ];
}

const LIST = { inspection: true } as const satisfies Prisma.DiscrepancyListInclude;
type ListRow = Prisma.DiscrepancyListGetPayload<{ include: typeof LIST }>;

async function lists(tx: Tx, scope: Scope): Promise<SignedRow[]> {
  const rows = await tx.discrepancyList.findMany({
    where: { ...within(scope), inspection: of(scope) },
    include: LIST,
  });
  return rows.map(signedList);
}

/** A list of 43.11(b), for verification. */
export function signedList({ inspection, content, ...row }: ListRow): SignedRow {
  return {
    ...told('discrepancy list', inspection.aircraftId, content, row),
    columns: [
      ...signer(row, content),
      column('dated', calendarDate(row.dated), content, 'dated'),
      column('items', row.items, content, 'items'),
      column('inspection_id', row.inspectionId, content, 'inspectionId', 'inspection.id'),
      column('supersedes_id', row.supersedesId, content, 'supersedesId', 'supersedes.id'),
      column('signed_at', instant(row.signedAt), content, 'at'),
      dayOfSigning(row.signedOn, row.signedAt),
    ],
  };
}

async function extensions(tx: Tx, scope: Scope): Promise<SignedRow[]> {
  const rows = await tx.melExtension.findMany({
    where: { ...within(scope), deferral: { discrepancy: of(scope) } },
    include: { deferral: { include: { discrepancy: true } } },
  });
  return rows.map(({ deferral, content, ...row }) => ({
    ...told('extension', deferral.discrepancy.aircraftId, content, row),
    columns: [
      column('person_name', row.personName, content, 'signer.name', 'by', 'person.name'),
      column('until_on', calendarDate(row.untilOn), content, 'untilOn', 'until'),
      column('reason', row.reason, content, 'reason'),
      column('authority', row.authority, content, 'authority'),
      column('deferral_id', deferral.discrepancy.number, content, 'writeUp'),
      column('signed_at', instant(row.signedAt), content, 'at'),
      dayOfSigning(row.signedOn, row.signedAt),
    ],
  }));
}

async function permits(tx: Tx, scope: Scope): Promise<SignedRow[]> {
  const rows = await tx.specialFlightPermit.findMany({
    where: { ...within(scope), ...of(scope) },
    include: { from: true, to: true },
  });
  return rows.map(({ content, ...row }) => ({
    ...told('special flight permit', row.aircraftId, content, { ...row, personId: row.recordedById }),
    columns: [
      ...(['reference', 'purpose', 'issuedBy', 'crew', 'limits', 'covers', 'asksInspection'] as const).map(
        (name) => column(snake(name), row[name], content, name),
      ),
      column('issued_on', calendarDate(row.issuedOn), content, 'issuedOn'),
      column('good_from', calendarDate(row.goodFrom), content, 'goodFrom'),
      column('good_through', calendarDate(row.goodThrough), content, 'goodThrough'),
      column('from_base_id', row.from.ident, content, 'from'),
      column('to_base_id', row.to.ident, content, 'to'),
      column('signed_at', instant(row.signedAt), content, 'at'),
      dayOfSigning(row.signedOn, row.signedAt),
    ],
  }));
}

async function permitInspections(tx: Tx, scope: Scope): Promise<SignedRow[]> {
  const rows = await tx.permitInspection.findMany({
    where: { ...within(scope), permit: of(scope) },
    include: { permit: true },
  });
  return rows.map(({ permit, content, ...row }) => ({
    ...told('permit inspection', permit.aircraftId, content, row),
    columns: [
      ...signer(row, content),
      column('permit_id', permit.hash, content, 'permitHash'),
      column('statement', row.statement, content, 'statement'),
      column('signed_at', instant(row.signedAt), content, 'at'),
      dayOfSigning(row.signedOn, row.signedAt),
    ],
  }));
}

async function compliances(tx: Tx, scope: Scope): Promise<SignedRow[]> {
  const rows = await tx.compliance.findMany({
    where: {
      operatorId: scope.operatorId,
      hash: { not: null },
      requirement: of(scope),
      ...(scope.signed && { recordedAt: scope.signed }),
    },
    include: { requirement: true },
  });
  return rows.map(({ requirement, content, ...row }) => ({
    ...told('record of compliance', requirement.aircraftId, content, {
      id: row.id,
      hash: row.hash ?? '',
      personId: row.recordedById,
      signedAt: row.recordedAt,
    }),
    columns: [
      column('requirement.name', requirement.name, content, 'requirement'),
      column('requirement_id', row.requirementId, content, 'requirementId'),
      column('requirement.kind', requirement.kind, content, 'kind'),
      column('inspection_id', row.inspectionId, content, 'inspectionId'),
      column('work_id', row.workId, content, 'workId'),
      column('sign_off_id', row.signOffId, content, 'signOffId'),
      column('done_on', calendarDate(row.doneOn), content, 'doneOn'),
      column('ttis_tenths', row.ttisTenths, content, 'ttisTenths'),
      column('was_due_tenths', row.wasDueTenths, content, 'wasDueTenths'),
      column('tested_to_ft', row.testedToFt, content, 'testedToFt'),
      column('approved_by', row.approvedBy, content, 'approvedBy'),
      column('approved_by_authorised', row.approvedByAuthorised, content, 'approvedByAuthorised'),
      column('details', row.details, content, 'details'),
      column('new_expiry', calendarDateOrNull(row.newExpiry), content, 'newExpiry'),
      column('supersedes_id', row.supersedesId, content, 'supersedesId'),
      column('recorded_at', instant(row.recordedAt), content, 'at'),
    ],
  }));
}

async function acceptances(tx: Tx, scope: Scope): Promise<SignedRow[]> {
  const rows = await tx.flightAcceptance.findMany({
    where: { ...within(scope), release: of(scope) },
    include: { release: true },
  });
  return rows.map(({ release, content, ...row }) => ({
    ...told('acceptance', release.aircraftId, content, row),
    columns: [
      ...signer(row, content),
      column('release_id', row.releaseId, content, 'releaseId'),
      column('release.hash', release.hash, content, 'release'),
      column('statement', row.statement, content, 'statement'),
      column('signed_at', instant(row.signedAt), content, 'at'),
      dayOfSigning(row.signedOn, row.signedAt),
    ],
  }));
}

const snake = (name: string): string => name.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);
