import { z } from 'zod';
import { query } from '../access/service';
import { calendarDateOrNull, instant } from '../db/dates';
import { onPaperOf, type OnPaperView } from '../fleet/carried-determination';
import { aircraftFacts, basePlace, readAircraft } from '../fleet/facts';
import {
  EARLIER,
  earlierWriteUp,
  laterWriteUps,
  observationViews,
  SEEN_AGAIN,
  type ObservationView,
  type RelatedWriteUp,
} from '../findings/observations';
import { repeatsOf, type RepeatView } from '../findings/repeats';
import { SUMMARY, summaryOf, type WriteUpSummary } from '../findings/summary';
import { namesOf } from '../people/names';
import { PHOTOS_IN_ORDER } from '../photos/view';
import { readSigner, signerFacts } from '../people/signer';
import { Refusal } from '../problems';
import { dayAtBase } from '../records/signature';
import { workPartOf } from '../rules/findings/catalogue';
import type { ExtensionRuling } from '../rules/advisory/mmel-extension';
import { jascLabel, type PartOfAircraft } from '../rules/jasc';
import { extensionOf } from '../rules/part-91/91-213-list-entry';
import { chosenUnits } from '../units/chosen';
import type { Units } from '../units/say';
import { whyCarriedOverDoesNotCount } from '../rules/carried-over-counts';
import { houseOnDeferral, type HouseOnDeferral } from '../rules/house/deferral-under-house';
import { deferralEligibility, type EligibilityReport } from '../rules/part-91/91-213-deferral-eligibility';
import { mayDetermineNoHazard, mayFindWithinLimits } from '../rules/who-may-determine';
import type { AircraftTypeFacts } from '../rules/aircraft';
import type { Ruling } from '../rules/ruling';
import type { Line } from '../rules/verdict';
import { WORK_ROW } from '../work/entry';
import { usualWork, type UsualWorkView } from '../work/usual-work';
import { workView, type WorkView } from '../work/work-view';
import { limitsOfWriteUp, limitViews, neededInWords, type LimitView } from './limits-of-write-up';
import {
  extensionView,
  pastDeferrals,
  superseded,
  type ExtensionView,
  type PastDeferral,
} from './record-of-write-up';
import { said } from '../words/said';

export type { WorkView } from '../work/work-view';

export interface WriteUpView {
  readonly asOf: string;
  readonly zone: string;
  readonly today: string;
  readonly aircraftId: string;
  readonly registration: string;
  readonly typeName: string;
  /** What the reader reads quantities in. */
  readonly units: Units;
  readonly ttisTenths: number | null;
  readonly summary: WriteUpSummary;
  readonly jascLabel: string;
  readonly part: PartOfAircraft | null;
  readonly findingKey: string | null;
  readonly equipmentId: string | null;
  readonly inoperativeCount: number | null;
  readonly measurements: Readonly<Record<string, number>>;
  readonly foundAt: string;
  /** Others who have seen the same since, oldest first. */
  readonly observations: readonly ObservationView[];
  /** The write-up this one was opened because of. */
  readonly earlier: RelatedWriteUp | null;
  /** Write-ups opened because of this one, oldest first. */
  readonly later: readonly RelatedWriteUp[];
  /** The same system was signed off within 30 days or 10 flights before; null when not. */
  readonly repeat: RepeatView | null;
  readonly reasons: readonly Line[];
  readonly determinations: readonly {
    readonly id: string;
    readonly kind: string;
    readonly by: string;
    readonly certificateKind: string;
    readonly certificateNumber: string;
    readonly statement: string;
    /** It stood on paper: the day of the paper, and who vouches for it. Null: it was signed here. */
    readonly onPaper: OnPaperView | null;
    readonly measured: string | null;
    readonly limitText: string | null;
    readonly limitSource: string | null;
    readonly at: string;
    readonly hash: string;
    /** A later judgement has taken its place; it stays in the record. */
    readonly superseded: boolean;
  }[];
  readonly deferral: {
    readonly id: string;
    readonly basis: string;
    readonly method: string;
    readonly methodWords: string;
    readonly recordedOn: string | null;
    readonly begunAt: string;
    /** Of one carried over: why it does not count, and may be deferred anew. Empty for every other. */
    readonly doesNotCount: readonly Line[];
    /** Its repair interval extended, as signed. */
    readonly extension: ExtensionView | null;
  } | null;
  /** Whether its repair interval may be extended now; null where that does not arise. */
  readonly mayExtend: ExtensionRuling | null;
  /** Stored limits of this aircraft that can judge the finding by number. */
  readonly limits: readonly LimitView[];
  /** What has to be measured beside these and has no stored limit: asked in words. */
  readonly neededInWords: readonly string[];
  /** Deferrals that have ended, oldest first. */
  readonly pastDeferrals: readonly PastDeferral[];
  /** 91.213 asked now; null once closed. */
  readonly eligibility: EligibilityReport | null;
  /** What rules of the house add while it is deferred: apart from the law's answer. */
  readonly houseOnDeferral: readonly HouseOnDeferral[];
  readonly work: readonly WorkView[];
  /** How the finding is usually put right; a hint for starting work. */
  readonly usual: UsualWorkView;
  readonly equipment: readonly {
    readonly id: string;
    readonly name: string;
    readonly installed: number;
    /** An emergency locator transmitter: its removal is recorded as 91.207(f)(10) asks. */
    readonly isElt: boolean;
  }[];
  /** What the law says about the person looking; policy (roles) is apart. */
  readonly me: {
    readonly name: string;
    readonly mayFindWithinLimits: Ruling | null;
    readonly mayDetermine: Ruling;
  };
}

/** One write-up whole, as the bench and the ramp show it. */
export const readWriteUp = query({
  verb: 'write-up.read',
  input: z.object({ discrepancyId: z.uuid() }),
  async run({ tx, operatorId, actor, now }, { discrepancyId }): Promise<WriteUpView> {
    const row = await tx.discrepancy.findUnique({
      where: { operatorId_id: { operatorId, id: discrepancyId } },
      include: {
        ...SUMMARY,
        finding: { include: { photos: PHOTOS_IN_ORDER, related: EARLIER } },
        observations: SEEN_AGAIN,
        determinations: true,
        work: { include: WORK_ROW, orderBy: [{ startedAt: 'asc' }, { enteredAt: 'asc' }] },
      },
    });
    if (!row) throw new Refusal('not_found', { say: said('There is no such write-up here.') });
    const aircraft = await readAircraft(tx, operatorId, row.aircraftId);
    if (!aircraft) throw new Refusal('not_found');
    const units = await chosenUnits(tx, actor);
    const limits = await limitsOfWriteUp(tx, { ...row, operatorId });
    const names = await namesOf(tx, [
      row.finding.personId,
      ...row.observations.map((seen) => seen.personId),
      ...row.work.map((work) => work.startedById),
      ...row.deferrals.flatMap((deferral) => (deferral.end ? [deferral.end.endedById] : [])),
    ]);
    const zone = aircraft.base.zone;
    const today = dayAtBase(now, zone);
    const me = signerFacts(await readSigner(tx, operatorId, actor.personId));
    const facts = aircraftFacts(aircraft);
    const open = facts.discrepancies.find((one) => one.id === row.id);
    const part = workPartOf(row.findingKey, row.jasc);
    const live = row.deferrals.find((deferral) => !deferral.end);
    const doesNotCount = live?.vouchingId && open ? whyCarriedOverDoesNotCount(facts, open) : [];
    // What may be deferred anew is asked about as if it were not deferred: its questions and steps come afresh.
    const asked = open && doesNotCount.length > 0 ? { ...open, deferral: null } : open;
    return {
      asOf: now.toISOString(),
      zone,
      today,
      aircraftId: aircraft.id,
      registration: aircraft.registration,
      typeName: aircraft.type.name,
      units,
      ttisTenths: aircraft.ttisTenths,
      summary: summaryOf(row, names),
      jascLabel: row.jasc ? jascLabel(row.jasc) : 'no system named yet',
      part: part.known ? part.value : null,
      findingKey: row.findingKey,
      equipmentId: row.equipmentId,
      inoperativeCount: row.inoperativeCount,
      measurements: row.finding.measurements as Record<string, number>,
      foundAt: instant(row.finding.foundAt),
      observations: observationViews(row.observations, names),
      earlier: earlierWriteUp(row.finding.related, row.openedAt),
      later: laterWriteUps(row.observations, row.closedAt),
      repeat: await repeatsOf(tx, operatorId, row),
      reasons: row.reasons as unknown as Line[],
      determinations: row.determinations
        .toSorted((a, b) => a.signedAt.getTime() - b.signedAt.getTime())
        .map((entry) => ({
          id: entry.id,
          kind: entry.kind,
          by: entry.personName,
          certificateKind: entry.certificateKind,
          certificateNumber: entry.certificateNumber,
          statement: entry.statement,
          onPaper: onPaperOf(entry),
          measured: entry.measured,
          limitText: entry.limitText,
          limitSource: entry.limitSource,
          at: instant(entry.signedAt),
          hash: entry.hash,
          superseded: superseded(entry, row.determinations),
        })),
      deferral: live
        ? {
            id: live.id,
            basis: live.basis,
            method: live.method,
            methodWords: live.methodWords,
            recordedOn: calendarDateOrNull(live.recordedOn),
            begunAt: instant(live.begunAt),
            doesNotCount,
            extension: extensionView(live.extension),
          }
        : null,
      mayExtend: open ? extensionOf(facts, open, today) : null,
      limits: limitViews(limits, row.finding.measurements as Record<string, number>, units),
      neededInWords: neededInWords(row.findingKey, limits),
      pastDeferrals: pastDeferrals(row.deferrals, names),
      eligibility: asked
        ? deferralEligibility(facts, asked, basePlace(aircraft.base), today, now.toISOString())
        : null,
      houseOnDeferral: open
        ? houseOnDeferral(facts, open, basePlace(aircraft.base), today, now.toISOString())
        : [],
      work: row.work.map((work) => workView(work, { me, on: today, names, facts: facts.work })),
      usual: usualWork(row.findingKey, aircraft.type.category as AircraftTypeFacts['category']),
      equipment: aircraft.equipment.map((item) => ({
        id: item.id,
        name: item.name,
        installed: item.installed,
        isElt: item.function === 'elt',
      })),
      me: {
        name: me.name,
        mayFindWithinLimits: part.known ? mayFindWithinLimits(me, part.value, today) : null,
        mayDetermine: mayDetermineNoHazard(me, aircraft.type.rating, today),
      },
    };
  },
});
