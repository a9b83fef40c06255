import { z } from 'zod';
import { query } from '../access/service';
import { calendarDate, calendarDateOrNull, instant } from '../db/dates';
import type { Prisma } from '../db/client';
import { standingRecords } from '../inspections/requirement';
import { nameIn, namesOf } from '../people/names';
import { PROOFS, proofViews, type ProofView } from '../people/proof-view';
import { Refusal } from '../problems';
import { VOUCHED, markOf, type CarriedMark } from '../records/carried-mark';
import { dayAtBase } from '../records/signature';
import type { PaperKind, RequirementKind } from '../rules/aircraft';
import type { HoursTenths } from '../rules/facts';
import { measurementOf, sayBounds } from '../rules/findings/measurements';
import { said } from '../words/said';

export interface AircraftHistory {
  readonly aircraftId: string;
  readonly registration: string;
  readonly typeName: string;
  readonly forHire: boolean;
  readonly zone: string;
  readonly today: string;
  readonly ttisTenths: HoursTenths | null;
  readonly papers: readonly PaperRow[];
  readonly requirements: readonly RequirementRow[];
  readonly directives: readonly DirectiveRow[];
  readonly directivesReviewedOn: string | null;
  readonly directivesReview: CarriedMark | null;
  readonly limits: readonly LimitRow[];
  readonly mel: MelView | null;
  readonly withoutMel: boolean | null;
  readonly endedMel: readonly { readonly id: string; readonly reference: string; readonly endedAt: string }[];
  readonly writeUps: readonly CarriedRow[];
  /** For choosing: names of the equipment list, and titles of the list in force. */
  readonly equipment: readonly { readonly id: string; readonly name: string; readonly installed: number }[];
  readonly melTitles: readonly string[];
}

interface PaperRow {
  readonly id: string;
  readonly kind: PaperKind;
  readonly reference: string | null;
  readonly aboard: boolean | null;
  readonly expires: boolean | null;
  readonly validThrough: string | null;
  readonly mark: CarriedMark | null;
}

interface RequirementRow {
  readonly id: string;
  readonly kind: RequirementKind;
  readonly name: string;
  readonly last: {
    readonly on: string;
    readonly ttisTenths: HoursTenths;
    readonly approvedBy: string;
    readonly authorised: boolean | null;
    readonly mark: CarriedMark | null;
  } | null;
}

interface DirectiveRow {
  readonly id: string;
  readonly number: string;
  readonly title: string;
  readonly equipment: string | null;
  readonly requiresOperable: boolean;
}

interface LimitRow {
  readonly id: string;
  readonly label: string;
  readonly bounds: string;
  readonly source: string;
  readonly sourceDate: string | null;
  readonly addedBy: string | null;
}

interface MelView {
  readonly id: string;
  readonly reference: string;
  readonly revision: string | null;
  readonly letterReference: string | null;
  readonly letterIssuedOn: string | null;
  readonly letterAboard: boolean | null;
  readonly enforceCategories: boolean;
  readonly extensionCategories: readonly string[];
  readonly items: readonly {
    readonly id: string;
    readonly title: string;
    readonly category: string;
    readonly equipment: string;
  }[];
  /** Of the letter of authorization, as uploaded. */
  readonly proofs: readonly ProofView[];
  readonly mark: CarriedMark | null;
}

interface CarriedRow {
  readonly id: string;
  readonly number: string;
  readonly title: string;
  readonly state: string;
  readonly openedAt: string;
  readonly deferred: boolean;
  readonly mark: CarriedMark | null;
}

const HISTORY = {
  base: { select: { zone: true } },
  type: { select: { name: true } },
  papers: { include: { vouching: VOUCHED } },
  requirements: {
    where: { endedOn: null },
    orderBy: { name: 'asc' },
    include: { compliances: { include: { vouching: VOUCHED }, orderBy: { recordedAt: 'desc' } } },
  },
  directives: { where: { endedOn: null }, orderBy: { number: 'asc' } },
  limits: { where: { endedAt: null }, orderBy: { measurement: 'asc' } },
  mel: {
    include: {
      items: { include: { equipment: { select: { name: true } } }, orderBy: { title: 'asc' } },
      vouching: VOUCHED,
      proofs: PROOFS,
    },
  },
  equipment: {
    where: { removedOn: null },
    orderBy: { name: 'asc' },
    select: { id: true, name: true, installed: true },
  },
  discrepancies: {
    where: { vouchingId: { not: null } },
    orderBy: { number: 'asc' },
    include: { vouching: VOUCHED, deferrals: { select: { end: { select: { id: true } } } } },
  },
} as const satisfies Prisma.AircraftInclude;

/** Everything of one aircraft's history that is entered, with who vouches for it. */
export const readAircraftHistory = query({
  verb: 'carry-over.read',
  input: z.object({ aircraftId: z.uuid() }),
  async run({ tx, operatorId, now }, { aircraftId }): Promise<AircraftHistory> {
    const row = await tx.aircraft.findUnique({
      where: { operatorId_id: { operatorId, id: aircraftId } },
      include: HISTORY,
    });
    if (!row || row.retiredOn)
      throw new Refusal('not_found', { say: said('There is no such aircraft here.') });
    const review = await tx.vouching.findFirst({
      where: { operatorId, subjectKind: 'directives', subjectId: row.id },
      orderBy: { signedAt: 'desc' },
      ...VOUCHED,
    });
    const names = await namesOf(
      tx,
      row.limits.flatMap(({ addedById }) => addedById ?? []),
    );
    const inForce = row.mel.find(({ endedAt }) => endedAt === null);
    return {
      aircraftId: row.id,
      registration: row.registration,
      typeName: row.type.name,
      forHire: row.forHire,
      zone: row.base.zone,
      today: dayAtBase(now, row.base.zone),
      ttisTenths: row.ttisTenths,
      papers: row.papers.map(({ id, kind, reference, aboard, expires, validThrough, vouching }) => ({
        id,
        kind: kind as PaperKind,
        reference,
        aboard,
        expires,
        validThrough: calendarDateOrNull(validThrough),
        mark: markOf(vouching),
      })),
      requirements: row.requirements.map(requirementRow),
      directives: row.directives.map(({ id, number, title, equipmentId, requiresOperable }) => ({
        id,
        number,
        title,
        equipment: row.equipment.find((item) => item.id === equipmentId)?.name ?? null,
        requiresOperable,
      })),
      directivesReviewedOn: calendarDateOrNull(row.directivesReviewedOn),
      directivesReview: markOf(review),
      limits: row.limits.map((limit) => ({
        ...limitWords(limit),
        id: limit.id,
        source: limit.source,
        sourceDate: calendarDateOrNull(limit.sourceDate),
        addedBy: limit.addedById === null ? null : nameIn(names, limit.addedById),
      })),
      mel: inForce ? melView(inForce) : null,
      withoutMel: row.withoutMel,
      endedMel: row.mel.flatMap(({ id, reference, endedAt }) =>
        endedAt === null ? [] : [{ id, reference, endedAt: instant(endedAt) }],
      ),
      writeUps: row.discrepancies.map((one) => ({
        id: one.id,
        number: one.number,
        title: one.title,
        state: one.state,
        openedAt: instant(one.openedAt),
        deferred: one.deferrals.some(({ end }) => end === null),
        mark: markOf(one.vouching),
      })),
      equipment: row.equipment,
      melTitles: inForce?.items.map(({ title }) => title) ?? [],
    };
  },
});

type Row = Prisma.AircraftGetPayload<{ include: typeof HISTORY }>;

function requirementRow(row: Row['requirements'][number]): RequirementRow {
  const [last] = standingRecords(row.compliances);
  return {
    id: row.id,
    kind: row.kind as RequirementKind,
    name: row.name,
    last: last
      ? {
          on: calendarDate(last.doneOn),
          ttisTenths: last.ttisTenths,
          approvedBy: last.approvedBy,
          authorised: last.approvedByAuthorised,
          mark: markOf(last.vouching),
        }
      : null,
  };
}

const melView = (mel: Row['mel'][number]): MelView => ({
  id: mel.id,
  reference: mel.reference,
  revision: mel.revision,
  letterReference: mel.letterReference,
  letterIssuedOn: calendarDateOrNull(mel.letterIssuedOn),
  letterAboard: mel.letterAboard,
  enforceCategories: mel.enforceCategories,
  extensionCategories: mel.extensionCategories,
  items: mel.items.map(({ id, title, category, equipment }) => ({
    id,
    title,
    category,
    equipment: equipment.name,
  })),
  proofs: proofViews(mel.proofs),
  mark: markOf(mel.vouching),
});

/** The bounds as printed; a key or unit of another version stands as it is. */
function limitWords({ measurement, unit, min, max }: Row['limits'][number]) {
  const known = measurementOf(measurement);
  return known && known.unit === unit
    ? { label: known.label, bounds: sayBounds({ min, max }, known.unit) }
    : { label: measurement, bounds: `${min ?? ''} to ${max ?? ''} ${unit}` };
}
