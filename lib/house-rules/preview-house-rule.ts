import { query } from '../access/service';
import { instant } from '../db/dates';
import { bookedFlights } from '../fleet/booked-flights';
import { aircraftFacts, basePlace, readFleet, readSome, type AircraftRow } from '../fleet/facts';
import { Refusal } from '../problems';
import { dayAtBase } from '../records/signature';
import { whereActive } from '../releases/active-releases';
import { WITH_HISTORY } from '../releases/history';
import { recallNow } from '../releases/recall-releases';
import type { AircraftFacts } from '../rules/aircraft';
import { answerForUse, headline } from '../rules/answer';
import type { HouseRuleVersion } from '../rules/house/house-rule';
import { operationName, OPERATION_KINDS, type UseOfAircraft } from '../rules/operations';
import { referenceUse } from '../rules/use-of-flight';
import type { Outcome } from '../rules/verdict';
import type { Context } from '../access/service';
import { previewHouseRuleInput } from './schema';
import { houseRuleVersion } from './stored';
import { said } from '../words/said';

export interface PreviewedChange {
  /** "Night VFR, private", or a student's solo flight. */
  readonly name: string;
  readonly before: Outcome;
  readonly after: Outcome;
  readonly headline: string | null;
}

export interface PreviewedAircraft {
  readonly registration: string;
  readonly changes: readonly PreviewedChange[];
}

export interface HousePreview {
  readonly asOf: string;
  readonly fleet: number;
  /** Only aircraft for which something changes now. */
  readonly aircraft: readonly PreviewedAircraft[];
  /** Active releases that would become void. */
  readonly voided: readonly {
    readonly registration: string;
    readonly departAt: string;
    readonly zone: string;
  }[];
}

/**
 * What a rule would change on the board right now, without writing anything: the rules asked with and without it. With
 * `setting` null what the end of a rule would change. Students' solo flights stand on no column of the board, so they are
 * asked as well.
 */
export const previewHouseRule = query({
  verb: 'house-rule.set',
  input: previewHouseRuleInput,
  async run(context, input): Promise<HousePreview> {
    const { tx, now } = context;
    const proposed = await proposedVersion(context, input);
    const before = await readFleet(tx);
    const after = new Map((await readSome(tx, { retiredOn: null }, [proposed])).map((row) => [row.id, row]));
    const pairs = before.flatMap((row) => {
      const then = after.get(row.id);
      return then ? [{ row, facts: aircraftFacts(row), then: aircraftFacts(then) }] : [];
    });
    return {
      asOf: instant(now),
      fleet: pairs.length,
      aircraft: pairs.flatMap(({ row, facts, then }) => {
        const changes = changesOf(row, facts, then, now);
        return changes.length > 0 ? [{ registration: row.registration, changes }] : [];
      }),
      voided: await voidedBy(
        context,
        pairs.map(({ row, then }) => ({ row, then })),
      ),
    };
  },
});

type Reader = Pick<Context, 'tx' | 'operatorId' | 'actor' | 'now'>;

async function proposedVersion(
  { tx, operatorId, actor, now }: Reader,
  {
    ruleId,
    setting,
    reach,
  }: { ruleId: string | null; setting: HouseRuleVersion['setting'] | null; reach: HouseRuleVersion['reach'] },
): Promise<HouseRuleVersion> {
  const by = { by: actor.name, at: instant(now), why: '' };
  const row =
    ruleId && (await tx.houseRule.findFirst({ where: { operatorId, ruleId }, orderBy: { version: 'desc' } }));
  if (ruleId && !row)
    throw new Refusal('not_found', { say: said('There is no such rule of the house here.') });
  const newest = row ? houseRuleVersion(row) : null;
  const version = (newest?.version ?? 0) + 1;
  if (setting) return { ruleId: ruleId ?? 'proposed', version, holds: true, setting, reach, ...by };
  if (!newest) throw new Refusal('invalid', { say: said('Choose what the rule asks.') });
  return { ...newest, version, holds: false, ...by };
}

function changesOf(
  row: AircraftRow,
  facts: AircraftFacts,
  then: AircraftFacts,
  now: Date,
): PreviewedChange[] {
  return usesOf(row, now).flatMap(({ name, use }) => {
    const [before, after] = [answerForUse(facts, use), answerForUse(then, use)];
    if (before.outcome === after.outcome) return [];
    const says =
      after.outcome === 'go' ? null : headline({ ...after, lines: after.lines.filter(({ house }) => house) });
    return [{ name, before: before.outcome, after: after.outcome, headline: says }];
  });
}

/** The columns of the board, and a student's solo flight by day and by night. */
function usesOf(row: AircraftRow, now: Date): { name: string; use: UseOfAircraft }[] {
  const base = basePlace(row.base);
  const today = dayAtBase(now, base.zone);
  const uses = OPERATION_KINDS.map((kind) => ({
    name: operationName(kind),
    use: referenceUse(kind, base, today, instant(now)),
  }));
  const solo = (['day', 'night'] as const).map((light) => ({
    name: light === 'day' ? 'Student solo by day' : 'Student solo at night',
    use: {
      ...referenceUse({ light, rules: 'VFR', hire: false }, base, today, instant(now)),
      purpose: 'student-solo' as const,
    },
  }));
  return [...uses, ...solo];
}

/** Releases that the save would make void: judged as a recall judges them, with the rule among the facts. */
async function voidedBy(
  { tx, operatorId, now }: Reader,
  fleet: readonly { row: AircraftRow; then: AircraftFacts }[],
): Promise<HousePreview['voided']> {
  const rows = await tx.release.findMany({
    where: { operatorId, ...whereActive(now) },
    include: WITH_HISTORY,
    orderBy: { departAt: 'asc' },
  });
  if (rows.length === 0) return [];
  const booked = await bookedFlights(tx, operatorId, now);
  const voided: { registration: string; departAt: string; zone: string }[] = [];
  for (const release of rows) {
    const of = fleet.find(({ row }) => row.id === release.aircraftId);
    if (!of) continue;
    const facts = { facts: of.then, booked: booked.get(release.aircraftId) ?? [] };
    const recall = await recallNow({ tx, operatorId }, release, facts);
    if (recall?.what !== 'void') continue;
    const { registration, base } = of.row;
    voided.push({ registration, departAt: instant(release.departAt), zone: base.zone });
  }
  return voided;
}
