import { z } from 'zod';
import { query } from '../access/service';
import { instant } from '../db/dates';
import { repeatsAmong } from '../findings/repeats';
import { SUMMARY, summaryOf, type WriteUpSummary } from '../findings/summary';
import { readFleet } from '../fleet/facts';
import { nextFlights } from '../flights/next-flights';
import { newestSeq } from '../live/newest-change';
import { namesOf } from '../people/names';
import type { CalendarDate, Instant } from '../rules/facts';
import { jascChapter, jascLabel } from '../rules/jasc';
import { localDate } from '../rules/months';
import { daysBetween, flightInWords, queueOrder, type QueueGroup } from '../rules/queue-order';
import { openVisits, type OpenVisit } from '../visits/open-visits';
import { benchFacts } from './bench-facts';
import { owedAfterWork, type OwedAfterWork } from './owed-after-work';

/** One line of the mechanic's queue. */
export interface BenchRow {
  readonly aircraftId: string;
  readonly registration: string;
  readonly baseIdent: string;
  readonly zone: string;
  readonly jascLabel: string;
  /** Chapter of the table, such as 33 Lights; null when no system of the table is named. */
  readonly chapter: { readonly code: string; readonly title: string } | null;
  readonly writeUp: WriteUpSummary;
  /** What is waited for next, in a few words. */
  readonly next: string;
  readonly work: { readonly id: string; readonly state: string; readonly title: string } | null;
  /** What it does to flying, which gives its place in the queue, and that in a few words. */
  readonly group: QueueGroup;
  readonly why: string;
  /** When the aircraft next departs, as planned or released. */
  readonly nextFlight: { readonly at: Instant; readonly words: string } | null;
  /** Days at the base since it was written up: 0 today. */
  readonly ageDays: number;
  /** Last day of the deferral and the days to it, negative once passed; null without one. */
  readonly deferralEnds: { readonly on: CalendarDate; readonly inDays: number } | null;
  /** The open visit it is in. */
  readonly visit: { readonly id: string; readonly title: string } | null;
  /** The same system was signed off within 30 days or 10 flights before: see lib/rules/repeat-defect. */
  readonly repeat: boolean;
}

export interface Bench {
  readonly asOf: string;
  /** How far the records had come: a change after it is not in this queue. */
  readonly seq: number;
  readonly rows: readonly BenchRow[];
  /** Signed work whose check flight of 91.407(b) is owed. */
  readonly checkFlightsOwed: readonly OwedAfterWork[];
  /** Owed tests, and unsigned work that is on no open write-up. */
  readonly owed: readonly OwedAfterWork[];
  readonly visits: readonly OpenVisit[];
}

/** All open write-ups, by what each does to flying: see lib/rules/queue-order. */
export const readBench = query({
  verb: 'bench.read',
  input: z.object({}),
  async run({ tx, operatorId, now }): Promise<Bench> {
    const asOf = instant(now);
    const rows = await tx.discrepancy.findMany({
      where: { operatorId, state: { not: 'closed' }, aircraft: { retiredOn: null } },
      include: {
        ...SUMMARY,
        aircraft: { include: { base: { select: { ident: true, zone: true } } } },
        work: { where: { state: { in: ['started', 'entered'] } } },
      },
    });
    const names = await namesOf(
      tx,
      rows.map((row) => row.finding.personId),
    );
    const fleet = await readFleet(tx);
    const owed = owedAfterWork(fleet);
    const facts = benchFacts(fleet, now);
    const flights = await nextFlights(tx, operatorId, now);
    const visits = await openVisits(tx, operatorId);
    const repeats = await repeatsAmong(tx, operatorId, rows);
    const lines = new Map<string, Omit<BenchRow, 'group' | 'why'>>(
      rows.map((row) => {
        const { zone, ident } = row.aircraft.base;
        const today = localDate(asOf, zone);
        const departs = flights.get(row.aircraftId);
        const endsOn = facts.get(row.id)?.deferralEndsOn ?? null;
        const work = row.work[0];
        const writeUp = summaryOf(row, names);
        const visit = visits.find(({ discrepancyIds }) => discrepancyIds.includes(row.id));
        return [
          row.id,
          {
            aircraftId: row.aircraftId,
            registration: row.aircraft.registration,
            baseIdent: ident,
            zone,
            jascLabel: row.jasc ? jascLabel(row.jasc) : 'no system named yet',
            chapter: row.jasc ? jascChapter(row.jasc) : null,
            writeUp,
            next: nextStep(writeUp, work?.state ?? null),
            work: work ? { id: work.id, state: work.state, title: work.title } : null,
            nextFlight: departs ? { at: departs, words: flightInWords(departs, asOf, zone) } : null,
            ageDays: daysBetween(localDate(writeUp.openedAt, zone), today),
            deferralEnds: endsOn === null ? null : { on: endsOn, inDays: daysBetween(today, endsOn) },
            visit: visit ? { id: visit.id, title: visit.title } : null,
            repeat: repeats.has(row.id),
          },
        ];
      }),
    );
    const places = queueOrder(
      [...lines].map(([id, line]) => ({
        id,
        openedAt: line.writeUp.openedAt,
        zone: line.zone,
        severity: facts.get(id)?.severity ?? null,
        // What the rules were not told of counts as grounding.
        barsEveryFlight: facts.get(id)?.barsEveryFlight ?? true,
        workUnsigned: line.work !== null,
        deferred: line.writeUp.state === 'deferred',
        placardOwed: line.writeUp.placards.some(({ placed }) => !placed),
        deferralEndsOn: line.deferralEnds?.on ?? null,
        nextFlightAt: line.nextFlight?.at ?? null,
      })),
      asOf,
    );
    return {
      asOf,
      seq: await newestSeq(tx, operatorId),
      rows: places.flatMap(({ id, group, why }) => {
        const line = lines.get(id);
        return line ? [{ ...line, group, why }] : [];
      }),
      checkFlightsOwed: owed.filter(({ what }) => what === 'check-flight'),
      owed: owed.filter(({ what }) => what !== 'check-flight'),
      visits,
    };
  },
});

function nextStep(writeUp: WriteUpSummary, work: string | null): string {
  if (work === 'entered') return 'Entry written, signature owed';
  if (work === 'started') return 'Work begun, entry owed';
  if (writeUp.placards.some((placard) => !placard.placed)) return 'Placard owed';
  if (writeUp.state === 'deferred') return 'Deferred';
  if (writeUp.severity === null) return 'To be judged';
  if (writeUp.severity === 'watch') return 'Within limits, look again';
  if (writeUp.severity === 'limiting') return 'Repair or defer';
  if (writeUp.severity === 'note') return 'When convenient';
  return 'Repair';
}
