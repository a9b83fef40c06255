/**
 * Clients that write without pause and write down what was acknowledged to them. A call that got no answer, or "try again",
 * is sent again with the same number until it has one, as the ramp's phone does.
 */
import { setTimeout as pause } from 'node:timers/promises';
import { randomUUID } from 'node:crypto';
import { PASSWORD, PEOPLE } from '../../fixtures/school';
import { entryOf, nickedPropeller, startOf } from '../../fixtures/acts';
import type { AppProcess, Call } from './app-process';
import type { Acked, AircraftLedger } from './ledger';
import { dayAhead, lessonOn } from './school-today';

/** `open`: all may send. `settle`: only what was sent before and got no answer. `shut`: nothing is sent. */
type Gate = 'open' | 'settle' | 'shut' | 'over';

class Over extends Error {}

export class Load {
  readonly acked: Acked[] = [];
  /** Refusals that the story does not foresee; there are none when all is well. */
  readonly odd: string[] = [];
  /** What the application said while it could not do its work, and how often. */
  readonly troubles = new Map<string, number>();
  /** How many calls were under way when nobody answered any more, over all faults. */
  unanswered = 0;
  private gate: Gate = 'shut';
  private inFlight = 0;
  private inDoubt = 0;
  private writers: Promise<void>[] = [];

  constructor(private readonly choose: () => AppProcess) {}

  /** Starts one writer for each aircraft: a write-up, its repair, the sign-off, a release, and again. */
  begin(ledgers: readonly AircraftLedger[]): void {
    this.writers = ledgers.map((ledger, index) =>
      this.story(ledger, 3 + index).catch((error: unknown) => {
        if (!(error instanceof Over)) throw error;
      }),
    );
  }

  set(gate: Gate): void {
    this.gate = gate;
  }

  /** No new calls; gives when none is under way any more. Those without an answer stay in doubt. */
  async shut(): Promise<void> {
    this.gate = 'shut';
    while (this.inFlight > 0) await pause(5);
  }

  /** Sends again what is in doubt until it is answered; nothing new. */
  async settle(): Promise<void> {
    this.gate = 'settle';
    const until = Date.now() + 60_000;
    while (this.inFlight > 0 || this.inDoubt > 0) {
      if (Date.now() > until)
        throw new Error(`Not answered within a minute: ${[...this.troubles.keys()].join('; ')}`);
      await pause(5);
    }
    this.gate = 'shut';
  }

  async end(): Promise<void> {
    this.gate = 'over';
    await Promise.all(this.writers);
  }

  /** Sends until there is an answer to keep, and keeps it. */
  async send(call: Call, ledger: AircraftLedger): Promise<Record<string, unknown>> {
    for (let tries = 0; ; tries += 1) {
      await this.pass(tries > 0);
      this.inFlight += 1;
      try {
        const result = await this.choose().ask(call);
        if (result.ok) {
          if (tries > 0) this.inDoubt -= 1;
          const acked = { call, value: result.value };
          if ('requestId' in call.input) this.acked.push(acked);
          ledger.take(acked);
          return result.value as Record<string, unknown>;
        }
        this.trouble(`${result.problem.code}: ${result.problem.say}`);
        if (result.problem.code !== 'try_again' && result.problem.code !== 'bug') {
          if (tries > 0) this.inDoubt -= 1;
          this.odd.push(`${call.act}: ${JSON.stringify(result.problem)}`);
          throw new Over();
        }
      } catch (error) {
        if (error instanceof Over) throw error;
        this.unanswered += 1;
      } finally {
        this.inFlight -= 1;
      }
      if (tries === 0) this.inDoubt += 1;
      await pause(30);
    }
  }

  private trouble(what: string): void {
    this.troubles.set(what, (this.troubles.get(what) ?? 0) + 1);
  }

  private async pass(again: boolean): Promise<void> {
    while (this.gate !== 'open' && !(this.gate === 'settle' && again)) {
      if (this.gate === 'over') throw new Over();
      await pause(5);
    }
  }

  private async story(ledger: AircraftLedger, days: number): Promise<void> {
    const { school } = ledger;
    const { renter, powerplant, dispatcher } = school.people;
    for (;;) {
      const send = (act: Call['act'], ref: Call['ref'], input: Call['input']) =>
        this.send({ act, ref, input }, ledger);
      const found = { ...nickedPropeller(school), foundAt: new Date().toISOString() };
      const { discrepancyId } = await send('reportFinding', renter, found);
      const { workId } = await send('startWork', powerplant, startOf(String(discrepancyId)));
      const { entryHash } = await send('enterWork', powerplant, entryToday(String(workId)));
      await send('signWork', powerplant, signatureToday(String(workId), String(entryHash)));
      const lesson = lessonOn(school, days);
      const { factsVersion } = await send('answerFlight', dispatcher, lesson);
      await send('releaseFlight', dispatcher, {
        ...lesson,
        requestId: randomUUID(),
        factsVersion,
        limitsPassedOn: true,
      });
    }
  }
}

export const entryToday = (workId: string) => ({
  ...entryOf(workId, PEOPLE.powerplant.name),
  completedOn: dayAhead(0),
});

export const signatureToday = (workId: string, entryHash: string) => ({
  requestId: randomUUID(),
  workId,
  entryHash,
  placardRemoved: null,
  password: PASSWORD,
});
