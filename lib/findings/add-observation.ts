import type { Tx } from '../db/client';
import { command, type Context } from '../access/service';
import { isOilReading, walksCount } from '../fleet/house-facts';
import { factsChanged, requireAircraft } from '../fleet/require-aircraft';
import { namedByOpenPermit } from '../permits/permit-facts';
import { Refusal } from '../problems';
import type { FindingKind, Severity } from '../rules/aircraft';
import { whyAnew } from '../rules/findings/observed-worse';
import { triage, type SettledBy } from '../rules/findings/triage';
import type { Line } from '../rules/verdict';
import { findingRow, openWriteUp, storedLimits, type FoundThing } from './open-write-up';
import { requireWalkaround } from './report-finding';
import { addObservationInput } from './schema';
import { said } from '../words/said';

/** What the observer is told at once. */
export interface ObservationAdded {
  readonly observationId: string;
  /** The write-up it now belongs to: the one it was about, or the new one. */
  readonly discrepancyId: string;
  readonly number: string;
  readonly title: string;
  readonly openedAnew: boolean;
  /** Why a new write-up was opened; null when the observation rests on the old one. */
  readonly why: string | null;
  /** What counts for that write-up from now on; null while undecided, and undecided grounds. */
  readonly severity: Severity | null;
  readonly reasons: readonly Line[];
  readonly settledBy: SettledBy;
}

/**
 * Takes an observation of a write-up from the ramp: somebody else has seen the same. It is kept as a finding without a
 * write-up of its own and changes no severity. Where it may not rest on the old one (closed meanwhile, or worse by what
 * was measured, see `whyAnew`) it opens a new write-up that names the old one; what is closed stays closed.
 * Refuses what is another operator's, and a walkaround of another aircraft.
 */
export const addObservation = command({
  verb: 'observation.add',
  input: addObservationInput,
  async run(context, { requestId, discrepancyId, ...seen }) {
    const { tx, operatorId } = context;
    const writeUp = await requireWriteUp(tx, operatorId, discrepancyId);
    const aircraft = await requireAircraft(tx, operatorId, writeUp.aircraftId);
    await requireWalkaround(tx, operatorId, seen.walkaroundId, aircraft.id);
    const why = whyAnew(
      {
        number: writeUp.number,
        state: writeUp.state as 'open' | 'deferred' | 'closed',
        severity: writeUp.severity as Severity | null,
        findingKey: writeUp.findingKey,
      },
      seen.measurements,
      await storedLimits(tx, operatorId, aircraft.id),
    );
    const found: FoundThing = {
      ...seen,
      findingId: requestId,
      relatedId: writeUp.id,
      findingKey: writeUp.findingKey,
      kind: writeUp.kind as FindingKind,
      jasc: writeUp.jasc === '' ? null : writeUp.jasc,
      equipmentId: writeUp.equipmentId,
      inoperativeCount: writeUp.inoperativeCount,
      place: writeUp.finding.place,
    };
    const value =
      why === null
        ? await restOn(context, writeUp, aircraft.typeId, found)
        : await openAnew(context, aircraft.id, found, why);
    return {
      value,
      audit: {
        subjectKind: 'discrepancy',
        subjectId: value.discrepancyId,
        detail: {
          number: value.number,
          aircraft: aircraft.registration,
          observationId: value.observationId,
          of: writeUp.number,
          openedAnew: value.openedAnew,
          why,
          severity: value.severity,
        },
      },
    };
  },
});

async function requireWriteUp(tx: Tx, operatorId: string, id: string) {
  const writeUp = await tx.discrepancy.findUnique({
    where: { operatorId_id: { operatorId, id } },
    include: { finding: { select: { place: true } } },
  });
  if (!writeUp) throw new Refusal('not_found', { say: said('There is no such write-up here.') });
  return writeUp;
}

type WriteUp = Awaited<ReturnType<typeof requireWriteUp>>;

/** The old write-up stands as it is; the observation is kept beside it. */
async function restOn(
  context: Context,
  writeUp: WriteUp,
  typeId: string,
  found: FoundThing,
): Promise<ObservationAdded> {
  const { tx, operatorId, actor, now } = context;
  // The place and the kind are the write-up's; of the observer there are the words and the numbers.
  const row = { ...found, place: '', kind: null };
  await tx.finding.create({ data: findingRow(operatorId, writeUp.aircraftId, actor.personId, now, row) });
  // A special flight permit that names the write-up stands in for it no more (lib/permits/permit-facts.ts), and oil that was
  // measured may be what a rule of the house asks. Otherwise an observation of the same thing changes no answer.
  const changes =
    (await namedByOpenPermit(context, writeUp)) ||
    (isOilReading(found.measurements) && (await walksCount(tx, { id: writeUp.aircraftId, typeId })));
  if (changes) await factsChanged(tx, operatorId, writeUp.aircraftId);
  const { settledBy } = triage({
    findingKey: found.findingKey,
    kind: found.kind,
    jasc: found.jasc,
    measurements: {},
    limits: [],
  });
  return {
    observationId: found.findingId,
    discrepancyId: writeUp.id,
    number: writeUp.number,
    title: writeUp.title,
    openedAnew: false,
    why: null,
    severity: writeUp.severity as Severity | null,
    reasons: writeUp.reasons as unknown as Line[],
    settledBy,
  };
}

async function openAnew(
  context: Context,
  aircraftId: string,
  found: FoundThing,
  why: string,
): Promise<ObservationAdded> {
  const { findingId, ...opened } = await openWriteUp(context, aircraftId, found);
  return { observationId: findingId, ...opened, openedAnew: true, why };
}
