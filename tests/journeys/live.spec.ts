import { expect, test, type Browser, type Page } from '@playwright/test';
import getPort from 'get-port';
import { pageOf, signIn } from '../fixtures/browser';
import { ownServer, type OwnServer } from '../fixtures/own-server';
import { sendFinding } from '../fixtures/send-finding';

/**
 * The board while the fleet changes under it: two instances of the app on one database, real streams that really end.
 * Source: issue 5, "changes show within 2 s on every open screen of every app instance ... falls back to polling; nothing
 * stale shown as fresh ... a board that cannot reach the server says so". All writes go to the aircraft in the hangar.
 */
const IN_HANGAR = 'N053QB';
const PROMISED_MS = 2000;

test.skip(
  ({ isMobile }) => isMobile,
  'the same code on every screen; two instances are enough to start once',
);
test.setTimeout(120_000);

const rowOf = (page: Page, registration: string) =>
  page.getByRole('row').filter({ has: page.getByRole('link', { name: registration, exact: true }) });

/** How many write-ups the board says are open; one more of the paint is judged cosmetic by itself, and open all the same. */
const open = async (page: Page): Promise<number> =>
  Number(/(\d+) open/.exec(await rowOf(page, IN_HANGAR).innerText())?.[1] ?? 0);

const told = (page: Page) => page.getByRole('main').getByText('Changes show at once');
const asking = (page: Page) => page.getByRole('main').getByText(/^Asking every \d+ s$/);
const trouble = (page: Page) => page.getByRole('main').getByRole('alert');

async function openBoard(page: Page): Promise<void> {
  await page.goto('/desk');
  await expect(told(page)).toBeVisible();
}

interface Pilot {
  readonly page: Page;
  readonly aircraftId: string;
  readonly origin: string;
}

/** Writes one up as a pilot, over the way that phones send; resolves with the moment of the server's word that it has it. */
async function report({ page, aircraftId, origin }: Pilot): Promise<number> {
  const answer = await sendFinding(page, origin, {
    aircraftId,
    station: 'left-rear-fuselage',
    kind: 'cosmetic',
    jasc: '5330',
    place: 'Left side',
    words: 'A scratch in the paint, seen while the board was open.',
  });
  expect(answer.status()).toBe(200);
  return Date.now();
}

/** A pilot with no screen open: on this machine every open screen would take its share of the two seconds. */
async function pilotAt(browser: Browser, baseURL?: string): Promise<Pilot> {
  const page = await pageOf(browser, 'ruth', baseURL === undefined ? {} : { baseURL });
  await page.goto('/ramp');
  const { origin } = new URL(page.url());
  const aircraft = await page.getByRole('link', { name: IN_HANGAR }).getAttribute('href');
  await page.goto('about:blank');
  return { page, origin, aircraftId: aircraft?.split('/').pop() ?? '' };
}

test.describe('two instances of the app', { tag: '@alone' }, () => {
  let server: OwnServer;
  let address: string;

  test.beforeAll(async () => {
    const port = await getPort();
    address = `http://localhost:${port}`;
    server = ownServer(port, address);
    await server.start();
  });
  test.afterAll(() => server.stop());

  test('a finding reported through one shows on the boards of both within two seconds', async ({
    browser,
  }) => {
    const here = await pageOf(browser, 'tess');
    const there = await pageOf(browser, 'gil', { baseURL: address });
    const pilot = await pilotAt(browser);
    for (const board of [here, there]) {
      await openBoard(board);
      await board.evaluate(() => document.body.setAttribute('data-not-loaded-again', ''));
    }
    // Both ways: each instance hears of what the other wrote and of what it wrote itself.
    for (const writer of [pilot, await pilotAt(browser, address)]) {
      const before = await open(here);
      const acknowledged = await report(writer);
      const took = await Promise.all(
        [here, there].map(async (board) => {
          await expect(rowOf(board, IN_HANGAR)).toContainText(`${before + 1} open`);
          return Date.now() - acknowledged;
        }),
      );
      console.log(`shown ${took.join(' and ')} ms after the acknowledgement`);
      expect(Math.max(...took)).toBeLessThan(PROMISED_MS);
    }
    for (const board of [here, there]) {
      await expect(board.locator('body')).toHaveAttribute('data-not-loaded-again', '');
      await board.context().close();
    }
  });

  test('a server that stops does so at once, the board says so, and comes back with the server', async ({
    browser,
  }) => {
    const context = await browser.newContext({ baseURL: address });
    const board = await context.newPage();
    await board.clock.install();
    await signIn(board, 'tess');
    await openBoard(board);

    const asked = Date.now();
    await server.stop();
    // Waiting for the streams of open screens would take minutes; whoever waits kills after eight seconds.
    expect(Date.now() - asked).toBeLessThan(5000);
    await expect(trouble(board)).toContainText('No contact with the server.');
    await expect(trouble(board)).toContainText('may be old');
    await expect(asking(board)).toBeVisible();
    await board.clock.runFor(130_000);
    await expect(trouble(board)).toContainText('not known means no go');
    await expect(board.getByRole('table').getByText('Not known', { exact: true })).toHaveCount(36);
    await expect(board.getByRole('table')).not.toContainText(/until \d\d:\d\d|no change before/);

    await server.start();
    await board.clock.runFor(15_000);
    await expect(told(board)).toBeVisible({ timeout: 45_000 });
    await expect(board.getByRole('table').getByText('Not known', { exact: true })).toHaveCount(0);
    await context.close();
  });
});

test('tabs of one browser share one stream, and the next takes it over', async ({ context }) => {
  const streams: string[] = [];
  context.on('request', (request) => {
    if (new URL(request.url()).pathname === '/api/live') streams.push(request.url());
  });
  const first = await context.newPage();
  await signIn(first, 'tess');
  await openBoard(first);
  // The page that signing in led to had a stream of its own, which ended with it.
  const atStart = streams.length;
  const second = await context.newPage();
  await openBoard(second);
  const third = await context.newPage();
  await openBoard(third);
  expect(streams).toHaveLength(atStart);

  const pilot = await pilotAt(context.browser() as Browser);
  const before = await open(second);
  await report(pilot);
  for (const tab of [first, second, third]) {
    await expect(rowOf(tab, IN_HANGAR)).toContainText(`${before + 1} open`);
  }

  await first.close();
  await expect.poll(() => streams.length).toBe(atStart + 1);
  const later = await open(third);
  await report(pilot);
  for (const tab of [second, third]) {
    await expect(rowOf(tab, IN_HANGAR)).toContainText(`${later + 1} open`);
    await expect(told(tab)).toBeVisible();
  }
  expect(streams).toHaveLength(atStart + 1);
});

test('without a stream the board asks by itself, and says so', async ({ page, browser }) => {
  await page.route('**/api/live', (route) => route.abort());
  await signIn(page, 'tess');
  await page.goto('/desk');
  await expect(asking(page)).toBeVisible();
  await expect(trouble(page)).toBeEmpty();
  const before = await open(page);
  await report(await pilotAt(browser));
  await expect(rowOf(page, IN_HANGAR)).toContainText(`${before + 1} open`, { timeout: 20_000 });
  await expect(page.getByRole('main').getByText(/^\d+ s ago$/)).toBeVisible();
});

test('somebody who signs out in one tab is told so in the other', async ({ context }) => {
  const board = await context.newPage();
  await signIn(board, 'tess');
  await openBoard(board);
  const other = await context.newPage();
  await other.goto('/desk/releases');
  await other.getByRole('button', { name: 'Sign out' }).click();
  await expect(other).toHaveURL(/sign-in/);
  await expect(trouble(board)).toContainText('You are signed out.');
});
