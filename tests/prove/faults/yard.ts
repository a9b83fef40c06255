/** Everything a fault is run against: database, two schools with six aircraft, the application's processes, and the load. */
import { setTimeout as pause } from 'node:timers/promises';
import { type AppProcess, Spares } from './app-process';
import { acknowledged, checkAll } from './check';
import { AircraftLedger } from './ledger';
import { Load } from './load';
import { foundToday, withAircraft, type SchoolToday } from './school-today';
import { Site } from './site';
import type { Tally } from './tally';

const AIRCRAFT = [3, 1];

export class Yard {
  private constructor(
    readonly site: Site,
    readonly schools: readonly SchoolToday[],
    readonly ledgers: readonly AircraftLedger[],
    private readonly spares: Spares,
    /** Those that serve; calls are spread over them. */
    readonly apps: AppProcess[],
  ) {
    let turn = 0;
    this.load = new Load(() => {
      const app = this.apps[(turn += 1) % this.apps.length];
      if (!app) throw new Error('No application runs.');
      return app;
    });
  }

  readonly load: Load;
  /** Aircraft beside the load. */
  private readonly beside: AircraftLedger[] = [];

  /** @param place where the database's files lie; a temporary folder unless said */
  static async open(place?: string): Promise<Yard> {
    const site = await Site.open(place);
    try {
      await site.use();
      const schools: SchoolToday[] = [];
      const ledgers: AircraftLedger[] = [];
      for (const [index, more] of AIRCRAFT.entries()) {
        const school = await foundToday(site, `SCHOOL${index}`);
        schools.push(school);
        ledgers.push(new AircraftLedger(school, `N0SCHOOL${index}`));
        for (let one = 0; one < more; one += 1) {
          const registration = `N0${index}${one}`;
          ledgers.push(new AircraftLedger(await withAircraft(school, registration), registration));
        }
      }
      const spares = new Spares(site.appUrl);
      return new Yard(site, schools, ledgers, spares, [await spares.take()]);
    } catch (error) {
      await site.close();
      throw error;
    }
  }

  /** A second process of the application on the same database, if there is none yet. */
  async twoApps(): Promise<readonly [AppProcess, AppProcess]> {
    while (this.apps.length < 2) this.apps.push(await this.spares.take());
    const [first, second] = this.apps;
    if (!first || !second) throw new Error('No application runs.');
    return [first, second];
  }

  /** Another school on its own aircraft, for acts beside the load. */
  async newcomer(name: string): Promise<AircraftLedger> {
    const ledger = new AircraftLedger(await foundToday(this.site, name), `N0${name}`);
    this.beside.push(ledger);
    return ledger;
  }

  /** An aircraft whose answer is checked some other way from now on. */
  forget(ledger: AircraftLedger): void {
    this.beside.splice(this.beside.indexOf(ledger), 1);
  }

  /** One kill -9 of every application's process; the spare takes over. */
  async killApps(): Promise<void> {
    await Promise.all(this.apps.map((app) => app.kill()));
    for (const index of this.apps.keys()) this.apps[index] = await this.spares.take();
  }

  /** Load for about so long. */
  async busyFor(ms: number): Promise<void> {
    this.load.set('open');
    await pause(ms);
  }

  /** What was acknowledged is there at once, before anything is sent again. */
  async checkAcknowledged(tally: Tally, since: number): Promise<void> {
    tally.add(await acknowledged(this.site, this.load.acked.slice(since)));
  }

  /** The whole check, after everything in doubt was sent again. */
  async checkAll(tally: Tally): Promise<void> {
    await this.load.settle();
    const [app] = this.apps;
    if (!app) throw new Error('No application runs.');
    const found = await checkAll(this.site, app, this.load.acked, [...this.ledgers, ...this.beside]);
    tally.add({ ...found, otherAnswer: [...found.otherAnswer, ...this.load.odd.splice(0)] });
    process.stdout.write(
      `  check ${tally.checks}: ${this.load.acked.length} writes acknowledged so far; ${tally.toString()}\n`,
    );
  }

  async close(): Promise<void> {
    await this.load.end().catch(() => undefined);
    await Promise.all(this.apps.map((app) => app.kill()));
    await this.spares.end();
    await this.site.close();
  }
}

/** Opens a yard with its load, does the work, and takes everything away again. */
export async function inYard<T>(work: (yard: Yard) => Promise<T>, place?: string): Promise<T> {
  const yard = await Yard.open(place);
  try {
    yard.load.begin(yard.ledgers);
    return await work(yard);
  } finally {
    await yard.close();
  }
}

/** A moment nobody chose. */
export const between = (least: number, most: number): number => least + Math.random() * (most - least);
