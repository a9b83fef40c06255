import { expect, test, type Browser, type BrowserContext, type Page } from '@playwright/test';
import getPort from 'get-port';
import { randomBytes, randomUUID } from 'node:crypto';
import sharp from 'sharp';
import { withClient } from '@/lib/operate/connection';
import { DEMO_PASSWORD, PEOPLE } from '../../seed/people';
import { Line } from '../fixtures/line';
import { ownServer, type OwnServer } from '../fixtures/own-server';
import { axeOn } from '../fixtures/axe';

/**
 * The ramp with no network, in a real browser with its service worker, against a server of its own that is really stopped
 * and started, over a line that is really cut. What arrived is counted in the database itself. Source: issue 3, "Offline";
 * the install criteria from W3C, Web Application Manifest. All writes go to the aircraft that is in the hangar.
 */
const IN_HANGAR = 'N053QB';
const HOUR_MS = 60 * 60 * 1000;

test.skip(({ isMobile }) => !isMobile, 'each journey brings its own phone');

let server: OwnServer;
let line: Line;

// Two servers, a browser and a database on one machine, and pauses between tries that are part of what is tested.
test.setTimeout(180_000);

test.beforeAll(async () => {
  const [web, call] = [await getPort(), await getPort()];
  server = ownServer(web, `http://localhost:${call}`);
  await server.start();
  line = await Line.to(web, call);
});
test.beforeEach(async () => {
  await server.start();
  await line.mend();
});
test.afterAll(async () => {
  await line.cut();
  await server.stop();
});

const personOf = (who: string) => {
  const person = PEOPLE.find(({ email }) => email.startsWith(`${who}@`));
  if (!person) throw new Error(`Nobody in the demo is called ${who}.`);
  return person;
};

/** A phone of its own, with nothing on it and nobody signed in. */
async function newPhone(browser: Browser): Promise<BrowserContext> {
  return browser.newContext({
    baseURL: line.address,
    serviceWorkers: 'allow',
    viewport: { width: 390, height: 844 },
  });
}

async function fillSignIn(page: Page, who: string): Promise<void> {
  await page.getByLabel('E-mail address').fill(personOf(who).email);
  await page.getByLabel('Password').fill(DEMO_PASSWORD);
  await page.getByRole('button', { name: 'Sign in' }).click();
}

/** A phone whose person has opened the ramp once, with a connection: the worker and the pack are there. */
async function phoneOf(browser: Browser, who: string): Promise<{ context: BrowserContext; page: Page }> {
  const context = await newPhone(browser);
  const page = await context.newPage();
  await page.goto('/sign-in?next=/ramp');
  await fillSignIn(page, who);
  await tookAlong(page);
  return { context, page };
}

async function tookAlong(page: Page): Promise<void> {
  await expect(page.getByRole('heading', { name: 'Choose the aircraft' })).toBeVisible();
  await page.evaluate(async () => void (await navigator.serviceWorker.ready));
  await expect.poll(() => countKept(page, 'packs')).toBe(1);
}

/** How many things lie on a shelf of the phone's database. */
const countKept = (page: Page, shelf: string): Promise<number> =>
  page.evaluate(
    (name) =>
      new Promise<number>((resolve, reject) => {
        const opening = indexedDB.open('wheelchock');
        opening.onerror = () => reject(new Error('The database does not open.'));
        opening.onsuccess = () => {
          const db = opening.result;
          if (!db.objectStoreNames.contains(name)) {
            db.close();
            resolve(0);
            return;
          }
          const count = db.transaction(name).objectStore(name).count();
          count.onsuccess = () => {
            db.close();
            resolve(count.result);
          };
        };
      }),
    shelf,
  );

/** What the bar on top says. */
const bar = (page: Page) => page.getByTestId('sent-bar');
const expectBar = (page: Page, words: string | RegExp): Promise<void> =>
  expect(bar(page)).toContainText(words, { timeout: 60_000 });

async function goOffline(context: BrowserContext): Promise<void> {
  await line.cut();
  await context.setOffline(true);
}

async function goOnline(context: BrowserContext): Promise<void> {
  await line.mend();
  await context.setOffline(false);
}

/** A picture of noise: it does not get small, so that it can break half way. */
async function picture(): Promise<{ name: string; mimeType: string; buffer: Buffer }> {
  const [width, height] = [900, 675];
  const raw = { width, height, channels: 3 as const };
  const buffer = await sharp(randomBytes(width * height * 3), { raw })
    .jpeg()
    .toBuffer();
  return { name: 'inlet.jpg', mimeType: 'image/jpeg', buffer };
}

async function idOfAircraft(): Promise<string> {
  const [row] = await ask<{ id: string }>('SELECT id FROM aircraft WHERE registration = $1', [IN_HANGAR]);
  if (!row) throw new Error(`${IN_HANGAR} is not in the demo.`);
  return row.id;
}

const ask = <Row extends object>(sql: string, values: readonly unknown[]): Promise<Row[]> =>
  withClient(
    process.env['DATABASE_URL'] ?? '',
    async (client) => (await client.query<Row>(sql, [...values])).rows,
  );

/** Findings with these words in the database, with who wrote them and how many photos each has. */
const written = (words: string) =>
  ask<{ person: string; photos: number; on_walk: boolean }>(
    `SELECT p.name AS person, f.walkaround_id IS NOT NULL AS on_walk,
            (SELECT count(*)::int FROM photo WHERE photo.finding_id = f.id) AS photos
       FROM finding f JOIN person p ON p.id = f.person_id WHERE f.words = $1`,
    [words],
  );

const newWords = (about: string) => `${about}, mark ${randomUUID().slice(0, 8)}`;

/** Fills the form for something cosmetic: it asks the least, and grounds nobody. */
async function fillFinding(page: Page, words: string, photos = 0): Promise<void> {
  await page.getByRole('button', { name: 'Something else' }).click();
  await page.getByRole('radio', { name: 'Cosmetic' }).check();
  await page.getByLabel('What you saw').fill(words);
  for (let taken = 1; taken <= photos; taken += 1) {
    await page.getByLabel(taken === 1 ? 'Take a photo' : 'Another photo').setInputFiles(await picture());
    await expect(page.getByRole('list', { name: 'Photos taken' }).getByRole('listitem')).toHaveCount(taken);
  }
}

/** What is typed last decides whether "is it this one?" is asked; a new one is meant here. */
async function send(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Send', exact: true }).click();
  const asNew = page.getByRole('button', { name: 'Send as a new one' });
  const outcome = page.getByRole('heading', { name: /^(Sent:|Kept on this phone|Not sent yet|Sending)/ });
  await expect(asNew.or(outcome).first()).toBeVisible({ timeout: 30_000 });
  if (await asNew.isVisible()) await asNew.click();
  await expect(outcome).toBeVisible({ timeout: 30_000 });
}

async function writeFinding(page: Page, words: string, photos = 0): Promise<void> {
  await page.goto(`/ramp/${await idOfAircraft()}/finding?station=last-look`);
  await fillFinding(page, words, photos);
  await send(page);
}

async function expectNoAxeFindings(page: Page): Promise<void> {
  const { violations } = await axeOn(page)
    .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
    .analyze();
  expect(
    violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.target.join(' ')).join(', ')}`),
  ).toEqual([]);
}

test('it can be installed, its worker serves the app, and nothing of a person is cached', async ({
  browser,
}) => {
  const { context, page } = await phoneOf(browser, 'pia');
  const href = await page.locator('link[rel="manifest"]').getAttribute('href');
  const answer = await page.request.get(href ?? '');
  expect(answer.headers()['content-type']).toContain('manifest+json');
  const manifest = (await answer.json()) as Record<string, unknown> & {
    icons: { src: string; sizes: string; purpose: string }[];
  };
  expect(manifest).toMatchObject({
    name: 'Wheelchock',
    start_url: '/ramp',
    display: 'standalone',
    scope: '/',
  });
  expect(manifest.icons.map(({ sizes, purpose }) => `${sizes} ${purpose}`)).toEqual([
    '192x192 any',
    '512x512 any',
    '512x512 maskable',
  ]);
  for (const { src, sizes } of manifest.icons) {
    const icon = await sharp(await (await page.request.get(src)).body()).metadata();
    expect(`${icon.format} ${icon.width}x${icon.height}`).toBe(`png ${sizes}`);
  }
  const cdp = await context.newCDPSession(page);
  const { installabilityErrors } = await cdp.send('Page.getInstallabilityErrors');
  // A window of a test is never installable from, being without a profile; nothing else may stand in the way.
  expect(installabilityErrors.map(({ errorId }) => errorId).filter((id) => id !== 'in-incognito')).toEqual(
    [],
  );

  const shell = await page.goto('/ramp/out');
  expect(shell?.fromServiceWorker()).toBe(true);
  await expect(page.getByRole('heading', { name: 'Sent and not sent' })).toBeVisible();
  await expectBar(page, 'Everything is sent.');

  await page.goto(`/ramp/${await idOfAircraft()}`);
  await page.goto('/ramp/mine');
  const cached = await page.evaluate(async () => {
    const found: { path: string; text: string }[] = [];
    for (const name of await caches.keys()) {
      const cache = await caches.open(name);
      for (const request of await cache.keys()) {
        const text = (await (await cache.match(request))?.text()) ?? '';
        found.push({ path: new URL(request.url).pathname, text });
      }
    }
    return found;
  });
  expect(cached.filter(({ path }) => path === '/ramp/out')).toHaveLength(1);
  for (const { path, text } of cached) {
    expect(path).toMatch(/^\/(ramp\/out$|_next\/static\/)/);
    expect(text).not.toContain(personOf('pia').name);
  }
  await context.close();
});

test('with no network: it opens, a walkaround with a finding and photos is written, the tab is killed, and hours later all is there once and in order', async ({
  browser,
}) => {
  const { context, page: first } = await phoneOf(browser, 'pia');
  const aircraft = await idOfAircraft();
  const words = newWords('Scratch in the paint');
  await goOffline(context);

  await first.goto('/ramp');
  await expect(
    first.getByText('No connection: this is what the phone took along', { exact: false }),
  ).toBeVisible();
  await first.getByRole('link', { name: IN_HANGAR }).click();
  await first.getByRole('link', { name: 'Start walkaround' }).click();
  await first.getByRole('button', { name: 'Start walkaround' }).click();
  await expect(first.getByText(/^0 of \d+ looked at$/)).toBeVisible();
  await expectBar(first, '1 not sent yet: no connection. Kept on this phone.');
  await first.getByRole('button', { name: 'Good', exact: true }).first().click();
  await first.getByRole('link', { name: 'Something else found here' }).click();
  await fillFinding(first, words, 2);
  await send(first);
  await expect(first.getByRole('heading', { name: 'Kept on this phone, not sent yet' })).toBeVisible();
  await expectBar(first, '4 not sent yet: no connection. Kept on this phone.');
  await first.close();

  // The tab is gone and comes again, still with no network.
  const page = await context.newPage();
  await page.goto(`/ramp/${aircraft}/walk`);
  await expectBar(page, '4 not sent yet: no connection. Kept on this phone.');
  await page.getByRole('button', { name: 'Finish', exact: true }).click();
  await page.getByRole('button', { name: 'Finish all the same' }).click();
  await expect(page.getByRole('heading', { name: `Walkaround ${IN_HANGAR} finished` })).toBeVisible();
  await expect(page.getByText('Kept on this phone, not sent yet')).toBeVisible();
  await expectBar(page, '5 not sent yet: no connection. Kept on this phone.');
  await expectNoAxeFindings(page);
  expect(await written(words)).toEqual([]);
  const began = await page.evaluate(() => Date.now());

  await page.clock.setSystemTime(began + 5 * HOUR_MS);
  await goOnline(context);
  await expectBar(page, 'Everything is sent.');
  await expect(page.getByText('Kept on this phone, not sent yet')).toHaveCount(0);
  expect(await written(words)).toEqual([{ person: personOf('pia').name, photos: 2, on_walk: true }]);
  expect(await countKept(page, 'photos')).toBe(0);

  const rows = await ask<{ verb: string }>(
    `SELECT verb FROM audit_row a WHERE request_id IN (
       SELECT w.id FROM walkaround w JOIN finding f ON f.walkaround_id = w.id WHERE f.words = $1
       UNION SELECT id FROM finding WHERE words = $1
       UNION SELECT p.id FROM photo p JOIN finding f ON f.id = p.finding_id WHERE f.words = $1
     ) OR (verb = 'walkaround.finish' AND subject_id IN (
       SELECT walkaround_id::text FROM finding WHERE words = $1)) ORDER BY a.operator_id, seq`,
    [words],
  );
  expect(rows.map(({ verb }) => verb)).toEqual([
    'walkaround.start',
    'finding.report',
    'photo.add',
    'photo.add',
    'walkaround.finish',
  ]);
  await context.close();
});

test('a photo that breaks half way writes nothing, and is there once after the next try', async ({
  browser,
}) => {
  const { context, page } = await phoneOf(browser, 'pia');
  const words = newWords('Mark on the wheel pant');
  const sprung = line.sprung;
  line.set({ does: 'break', path: '/api/sync/photos', afterBytes: 60_000 });
  await writeFinding(page, words, 1);
  await expect.poll(() => line.sprung, { timeout: 20_000 }).toBe(sprung + 1);
  await expectBar(page, /not sent yet|Everything is sent/);
  await expectBar(page, 'Everything is sent.');
  expect(await written(words)).toEqual([{ person: personOf('pia').name, photos: 1, on_walk: false }]);
  await context.close();
});

test('an answer that is lost on its way does not write twice', async ({ browser }) => {
  const { context, page } = await phoneOf(browser, 'pia');
  const words = newWords('Smudge on the window');
  line.set({ does: 'lose-answer', path: '/api/sync/findings' });
  const before = line.sprung;
  await writeFinding(page, words);
  await expect.poll(() => line.sprung).toBe(before + 1);
  // The server has it, and the phone does not know.
  await expect.poll(() => written(words)).toHaveLength(1);
  await expectBar(page, 'Everything is sent.');
  expect(await written(words)).toHaveLength(1);
  await context.close();
});

test('two phones at one aircraft while the server is down: each one’s finding stands once, as theirs', async ({
  browser,
}) => {
  const pia = await phoneOf(browser, 'pia');
  const ruth = await phoneOf(browser, 'ruth');
  const words = { pia: newWords('Chip on the left'), ruth: newWords('Chip on the right') };
  // A server that is asked to stop waits for whoever is still on the line.
  await line.cut();
  await server.stop();
  await line.mend();
  await writeFinding(pia.page, words.pia);
  await writeFinding(ruth.page, words.ruth);
  await expectBar(pia.page, '1 not sent yet');
  await expectBar(ruth.page, '1 not sent yet');
  await server.start();
  // By themselves: nobody presses anything.
  await expectBar(pia.page, 'Everything is sent.');
  await expectBar(ruth.page, 'Everything is sent.');
  for (const who of ['pia', 'ruth'] as const) {
    expect(await written(words[who])).toEqual([{ person: personOf(who).name, photos: 0, on_walk: false }]);
  }
  await pia.context.close();
  await ruth.context.close();
});

test('a session that ended while offline: it asks to sign in, and then sends', async ({ browser }) => {
  const { context, page } = await phoneOf(browser, 'pia');
  const words = newWords('Placard faded');
  await goOffline(context);
  await writeFinding(page, words);
  await context.clearCookies();
  await goOnline(context);
  await expectBar(page, '1 not sent yet: your session has ended. Kept on this phone.');
  expect(await written(words)).toEqual([]);
  await page.getByRole('button', { name: 'Sign in to send' }).click();
  await fillSignIn(page, 'pia');
  await expect(page).toHaveURL(/\/ramp\//);
  await expectBar(page, 'Everything is sent.');
  expect(await written(words)).toHaveLength(1);
  await context.close();
});

test('another person on the same phone: what the first one wrote waits, and goes as theirs when they are back', async ({
  browser,
}) => {
  const { context, page } = await phoneOf(browser, 'pia');
  const words = { pia: newWords('Worn carpet'), sam: newWords('Worn handle') };
  await goOffline(context);
  await writeFinding(page, words.pia);
  await context.clearCookies();
  await goOnline(context);

  await page.goto('/sign-in?next=/ramp');
  await fillSignIn(page, 'sam');
  await tookAlong(page);
  await expectBar(page, '1 of somebody else not sent: it waits until they sign in.');
  await writeFinding(page, words.sam);
  await expectBar(page, '1 of somebody else not sent: it waits until they sign in.');
  expect(await written(words.sam)).toHaveLength(1);
  expect(await written(words.pia)).toEqual([]);
  // The next one sees that something waits, not what.
  await page.goto('/ramp/out');
  await expect(page.getByText(/^Sent \(\d+\)$/)).toBeVisible();
  await expect(page.getByText('Not sent yet (', { exact: false })).toHaveCount(0);

  await page.getByRole('button', { name: 'Sign out' }).click();
  await expect(page).toHaveURL(/sign-in/);
  await page.goto('/sign-in?next=/ramp');
  await fillSignIn(page, 'pia');
  await tookAlong(page);
  await expectBar(page, 'Everything is sent.');
  expect(await written(words.pia)).toEqual([{ person: personOf('pia').name, photos: 0, on_walk: false }]);
  await context.close();
});

test('signing out with something unsent asks first; what is unsent stays, what was taken along goes', async ({
  browser,
}) => {
  const { context, page } = await phoneOf(browser, 'pia');
  const words = newWords('Loose cover');
  line.set({ does: 'refuse', path: '/api/sync/' });
  await writeFinding(page, words);
  await page.goto('/ramp/out');
  await page.getByRole('button', { name: 'Sign out' }).click();
  await expect(page.getByText('One thing is not sent yet.')).toBeVisible();
  await page.getByRole('button', { name: 'Stay signed in' }).click();
  await expect(page.getByText('One thing is not sent yet.')).toHaveCount(0);
  await page.getByRole('button', { name: 'Sign out' }).click();
  await page.getByRole('button', { name: 'Sign out all the same' }).click();
  await expect(page).toHaveURL(/sign-in/);
  expect([await countKept(page, 'packs'), await countKept(page, 'outbox')]).toEqual([0, 1]);

  // Nothing of hers is shown to whoever holds the phone now.
  await goOffline(context);
  await page.goto('/ramp');
  await expect(page.getByRole('heading', { name: 'Nothing is kept on this phone yet' })).toBeVisible();
  await expect(page.getByText(personOf('pia').name)).toHaveCount(0);
  await goOnline(context);
  await page.goto('/sign-in?next=/ramp');
  await fillSignIn(page, 'pia');
  await expectBar(page, 'Everything is sent.');
  expect(await written(words)).toHaveLength(1);
  await context.close();
});

test('the browser wakes the worker when the connection is back, with no page of the ramp open', async ({
  browser,
}) => {
  const { context, page } = await phoneOf(browser, 'pia');
  const words = newWords('Dull beacon lens');
  await goOffline(context);
  await writeFinding(page, words, 1);
  await expectBar(page, '2 not sent yet');
  // A page of this site that sends nothing by itself.
  const other = await context.newPage();
  await page.close();
  await goOnline(context);
  await other.goto('/manifest.webmanifest');
  const cdp = await context.newCDPSession(other);
  const registered = new Promise<string>((resolve) => {
    cdp.on('ServiceWorker.workerRegistrationUpdated', ({ registrations }) => {
      const ours = registrations.find(({ scopeURL }) => scopeURL.startsWith(line.address));
      if (ours) resolve(ours.registrationId);
    });
  });
  await cdp.send('ServiceWorker.enable');
  await cdp.send('ServiceWorker.dispatchSyncEvent', {
    origin: line.address,
    registrationId: await registered,
    tag: 'wheelchock-outbox',
    lastChance: false,
  });
  await expect
    .poll(() => written(words), { timeout: 30_000 })
    .toEqual([{ person: personOf('pia').name, photos: 1, on_walk: false }]);
  await context.close();
});

test('a server that takes calls and never answers is not waited for; other pages say that they need it', async ({
  browser,
}) => {
  const { context, page } = await phoneOf(browser, 'pia');
  line.hold();
  const began = Date.now();
  await page.goto('/ramp');
  await expect(
    page.getByText('No connection: this is what the phone took along', { exact: false }),
  ).toBeVisible();
  expect(Date.now() - began).toBeLessThan(15_000);
  await line.cut();
  await page.goto('/ramp/mine');
  await expect(page.getByRole('heading', { name: 'This page needs a connection' })).toBeVisible();
  await context.close();
});

test('without a service worker everything works while the server answers', async ({ browser }) => {
  const context = await browser.newContext({ baseURL: line.address, serviceWorkers: 'block' });
  const page = await context.newPage();
  const words = newWords('Sticky seat track');
  await page.goto('/sign-in?next=/ramp');
  await fillSignIn(page, 'pia');
  await expect(page.getByRole('heading', { name: 'Choose the aircraft' })).toBeVisible();
  await writeFinding(page, words);
  await expectBar(page, 'Everything is sent.');
  expect(await written(words)).toHaveLength(1);
  await context.close();
});

test('the door takes a message only from its own writer, and a photo only whole', async ({ browser }) => {
  const { context, page } = await phoneOf(browser, 'pia');
  const [pia, sam] = await Promise.all(
    ['pia', 'sam'].map((who) =>
      ask<{ id: string }>('SELECT id FROM person WHERE email = $1', [personOf(who).email]),
    ),
  );
  const headers = { Origin: line.address, 'X-Wheelchock-Person': sam?.[0]?.id ?? '' };
  const finding = { ...headers, 'Content-Type': 'application/json' };
  const codeOf = async (answer: { status(): number; json(): Promise<unknown> }) =>
    `${answer.status()} ${((await answer.json()) as { problem: { code: string } }).problem.code}`;
  const post = (path: string, options: Parameters<typeof page.request.post>[1]) =>
    page.request.post(path, options);

  expect(await codeOf(await post('/api/sync/findings', { headers: finding, data: '{"version":2}' }))).toBe(
    '409 other_person',
  );
  const about = JSON.stringify({
    version: 2,
    requestId: randomUUID(),
    findingId: randomUUID(),
    marks: [],
    sha256: null,
  });
  const photo = { name: 'photo', mimeType: 'image/jpeg', buffer: (await picture()).buffer };
  expect(await codeOf(await post('/api/sync/photos', { headers, multipart: { about, photo } }))).toBe(
    '409 other_person',
  );
  const own = { ...headers, 'X-Wheelchock-Person': pia?.[0]?.id ?? '' };
  // A form that is whole, for a finding that is not there.
  expect(await codeOf(await post('/api/sync/photos', { headers: own, multipart: { about, photo } }))).toBe(
    '404 not_found',
  );
  const isNoForm = '400 invalid';
  expect(await codeOf(await post('/api/sync/photos', { headers: own, multipart: { about } }))).toBe(isNoForm);
  expect(
    await codeOf(await post('/api/sync/photos', { headers: own, multipart: { about: 'x', photo } })),
  ).toBe(isNoForm);
  const half = { ...own, 'Content-Type': 'multipart/form-data; boundary=b' };
  const body = `--b\r\nContent-Disposition: form-data; name="about"\r\n\r\n${about}\r\n--b\r\nContent-Dis`;
  expect(await codeOf(await post('/api/sync/photos', { headers: half, data: Buffer.from(body) }))).toBe(
    isNoForm,
  );
  await context.clearCookies();
  expect(await codeOf(await post('/api/sync/photos', { headers: own, multipart: { about, photo } }))).toBe(
    '401 not_signed_in',
  );
  await context.close();
});

test('in Spanish too: the page that is the same for everybody, with no network', async ({ browser }) => {
  const context = await newPhone(browser);
  await context.addCookies([{ name: 'wheelchock-language', value: 'es', url: line.address }]);
  const page = await context.newPage();
  await page.goto('/sign-in?next=/ramp');
  await page.getByLabel('Dirección de correo').fill(personOf('pia').email);
  await page.getByLabel('Contraseña').fill(DEMO_PASSWORD);
  await page.getByRole('button', { name: 'Iniciar sesión' }).click();
  await expect(page.getByRole('heading', { name: 'Elija la aeronave' })).toBeVisible();
  await page.evaluate(async () => void (await navigator.serviceWorker.ready));
  await expect.poll(() => countKept(page, 'packs')).toBe(1);

  await goOffline(context);
  await page.goto(`/ramp/${await idOfAircraft()}/walk`);
  await expect(page.getByRole('heading', { name: `Recorrido de ${IN_HANGAR}` })).toBeVisible();
  expect(await page.evaluate(() => document.documentElement.lang)).toBe('es');
  // What it is kept for, and nothing of another place: bench and desk have their words apart.
  const kept = await page.evaluate(async () => {
    const caches_ = await Promise.all((await caches.keys()).map((name) => caches.open(name)));
    const requests = (await Promise.all(caches_.map((cache) => cache.keys()))).flat();
    const texts = await Promise.all(
      requests.map(async (one) => (await (await caches.match(one))?.text()) ?? ''),
    );
    return {
      ramp: texts.some((text) => text.includes('Comenzar el recorrido')),
      bench: texts.some((text) => text.includes('Comenzar una inspección')),
    };
  });
  expect(kept).toEqual({ ramp: true, bench: false });
  await goOnline(context);
  await context.close();
});
