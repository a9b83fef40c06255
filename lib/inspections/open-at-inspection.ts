import type { Context } from '../access/service';
import { aircraftFacts, readAircraft } from '../fleet/facts';
import { Refusal } from '../problems';
import { contentHash } from '../records/canonical';
import type { AircraftFacts, DiscrepancyFacts } from '../rules/aircraft';
import { standingAtInspection } from '../rules/part-43/43-11-inspection-entry';

/** Everything written up and still open on the aircraft, as facts, with the placards that stand for what is deferred. */
export interface OpenAtInspection {
  readonly facts: AircraftFacts;
  readonly open: readonly DiscrepancyFacts[];
  /** By write-up: wording and place of its standing placards. */
  readonly placards: ReadonlyMap<string, string>;
}

export async function openAtInspection(
  { tx, operatorId }: Pick<Context, 'tx' | 'operatorId'>,
  aircraftId: string,
): Promise<OpenAtInspection> {
  const row = await readAircraft(tx, operatorId, aircraftId);
  if (!row) throw new Refusal('not_found');
  const facts = aircraftFacts(row);
  const placards = row.discrepancies.flatMap(({ id, deferrals }) => {
    const standing = deferrals
      .filter(({ end }) => !end)
      .flatMap((deferral) => deferral.placards)
      .filter(({ placedAt, removedAt }) => placedAt && !removedAt)
      .map(({ wording, location }) => `${wording}: ${location}`);
    return standing.length > 0 ? [[id, standing.join('; ')] as const] : [];
  });
  return { facts, open: facts.discrepancies, placards: new Map(placards) };
}

/** Hash of what stands open and how, with the placards: shown with the list to sign, and demanded back with its signature. */
export const openHash = ({ open, placards }: Pick<OpenAtInspection, 'open' | 'placards'>): string =>
  contentHash(
    open
      .map((d) => ({
        id: d.id,
        number: d.number,
        standing: standingAtInspection(d),
        placard: d.deferral?.placardPlaced ? (placards.get(d.id) ?? null) : null,
      }))
      .toSorted((a, b) => a.id.localeCompare(b.id)),
  );
