import { z } from 'zod';
import { query } from '../access/service';
import { calendarDateOrNull, instant } from '../db/dates';
import { aircraftFacts, basePlace, readAircraft } from '../fleet/facts';
import { namesOf, SUMMARY, summaryOf, type WriteUpSummary } from '../findings/summary';
import { readSigner, signerFacts } from '../people/signer';
import { Refusal } from '../problems';
import { dayAtBase } from '../records/signature';
import { jascLabel, partOf, type PartOfAircraft } from '../rules/jasc';
import { deferralEligibility, type EligibilityReport } from '../rules/part-91/91-213-deferral-eligibility';
import { mayDetermineNoHazard, mayFindWithinLimits } from '../rules/who-may-determine';
import { mayApproveReturnToService, whoCanSentence } from '../rules/who-may-sign';
import type { Ruling } from '../rules/ruling';
import type { Line } from '../rules/verdict';
import { entryContent, entryHash, requireWork } from '../work/entry';
import { workToSign } from '../work/sign-work';

/** A piece of work on a write-up, with whether the person looking could sign it as it stands. */
export interface WorkView {
  readonly id: string;
  readonly forDeferral: boolean;
  readonly state: string;
  readonly startedAt: string;
  readonly startedBy: string;
  readonly entry: ReturnType<typeof entryContent>;
  readonly entryHash: string;
  readonly signOff: {
    readonly by: string;
    readonly certificateKind: string;
    readonly certificateNumber: string;
    readonly statement: string;
    readonly at: string;
    readonly hash: string;
  } | null;
  readonly checkFlight: {
    readonly by: string;
    readonly flownOn: string | null;
    readonly words: string;
  } | null;
  /** For work not yet signed: the ruling about the person looking, and who else could. */
  readonly mySignature: (Ruling & { readonly whoCan: string }) | null;
}

export interface WriteUpView {
  readonly asOf: string;
  readonly zone: string;
  readonly today: string;
  readonly aircraftId: string;
  readonly registration: string;
  readonly typeName: string;
  readonly ttisTenths: number | null;
  readonly summary: WriteUpSummary;
  readonly jascLabel: string;
  readonly part: PartOfAircraft | null;
  readonly findingKey: string | null;
  readonly equipmentId: string | null;
  readonly inoperativeCount: number | null;
  readonly measurements: Readonly<Record<string, number>>;
  readonly foundAt: string;
  readonly reasons: readonly Line[];
  readonly determinations: readonly {
    readonly id: string;
    readonly kind: string;
    readonly by: string;
    readonly certificateKind: string;
    readonly certificateNumber: string;
    readonly statement: string;
    readonly measured: string | null;
    readonly limitText: string | null;
    readonly limitSource: string | null;
    readonly at: string;
    readonly hash: string;
  }[];
  readonly deferral: {
    readonly id: string;
    readonly basis: string;
    readonly method: string;
    readonly methodWords: string;
    readonly recordedOn: string | null;
    readonly begunAt: string;
  } | null;
  /** 91.213 asked now; null once closed. */
  readonly eligibility: EligibilityReport | null;
  readonly work: readonly WorkView[];
  readonly equipment: readonly { readonly id: string; readonly name: string; readonly installed: number }[];
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
        finding: { include: { photos: { select: { id: true } } } },
        determinations: true,
        work: true,
      },
    });
    if (!row) throw new Refusal('not_found', { say: 'There is no such write-up here.' });
    const aircraft = await readAircraft(tx, operatorId, row.aircraftId);
    if (!aircraft) throw new Refusal('not_found');
    const names = await namesOf(tx, [row.finding.personId, ...row.work.map((work) => work.startedById)]);
    const zone = aircraft.base.zone;
    const today = dayAtBase(now, zone);
    const me = signerFacts(await readSigner(tx, operatorId, actor.personId));
    const facts = aircraftFacts(aircraft);
    const open = facts.discrepancies.find((one) => one.id === row.id);
    const part = partOf(row.jasc);
    const live = row.deferrals.find((deferral) => !deferral.end);
    const works = await Promise.all(row.work.map((work) => requireWork(tx, operatorId, work.id)));
    return {
      asOf: now.toISOString(),
      zone,
      today,
      aircraftId: aircraft.id,
      registration: aircraft.registration,
      typeName: aircraft.type.name,
      ttisTenths: aircraft.ttisTenths,
      summary: summaryOf(row, names),
      jascLabel: row.jasc ? jascLabel(row.jasc) : 'no system named yet',
      part: part.known ? part.value : null,
      findingKey: row.findingKey,
      equipmentId: row.equipmentId,
      inoperativeCount: row.inoperativeCount,
      measurements: row.finding.measurements as Record<string, number>,
      foundAt: instant(row.finding.foundAt),
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
          measured: entry.measured,
          limitText: entry.limitText,
          limitSource: entry.limitSource,
          at: instant(entry.signedAt),
          hash: entry.hash,
        })),
      deferral: live
        ? {
            id: live.id,
            basis: live.basis,
            method: live.method,
            methodWords: live.methodWords,
            recordedOn: calendarDateOrNull(live.recordedOn),
            begunAt: instant(live.begunAt),
          }
        : null,
      eligibility: open
        ? deferralEligibility(facts, open, basePlace(aircraft.base), today, now.toISOString())
        : null,
      work: works
        .toSorted((a, b) => a.startedAt.getTime() - b.startedAt.getTime())
        .map((work) => ({
          id: work.id,
          forDeferral: work.deferralId !== null,
          state: work.state,
          startedAt: instant(work.startedAt),
          startedBy: names.get(work.startedById) ?? 'somebody who left',
          entry: entryContent(work),
          entryHash: entryHash(work),
          signOff: work.signOff
            ? {
                by: work.signOff.personName,
                certificateKind: work.signOff.certificateKind,
                certificateNumber: work.signOff.certificateNumber,
                statement: work.signOff.statement,
                at: instant(work.signOff.signedAt),
                hash: work.signOff.hash,
              }
            : null,
          checkFlight: work.checkFlight
            ? {
                by: work.checkFlight.personName,
                flownOn: calendarDateOrNull(work.checkFlight.flownOn),
                words: work.checkFlight.words,
              }
            : null,
          mySignature:
            work.state === 'started' || work.state === 'entered'
              ? {
                  ...rulingOnly(mayApproveReturnToService(me, workToSign(work, me), today)),
                  whoCan: whoCanSentence(workToSign(work, me)),
                }
              : null,
        })),
      equipment: aircraft.equipment.map(({ id, name, installed }) => ({ id, name, installed })),
      me: {
        name: me.name,
        mayFindWithinLimits: part.known ? mayFindWithinLimits(me, part.value, today) : null,
        mayDetermine: mayDetermineNoHazard(me, aircraft.type.rating, today),
      },
    };
  },
});

const rulingOnly = ({ allowed, lines }: Ruling): Ruling => ({ allowed, lines });
