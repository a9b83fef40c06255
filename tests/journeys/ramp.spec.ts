import AxeBuilder from '@axe-core/playwright';
import { expect, test, type Locator, type Page } from '@playwright/test';
import { randomUUID } from 'node:crypto';
import sharp from 'sharp';
import { DEMO_LOGINS } from '@/lib/operate/load-demo';

/**
 * The pilot's side in a real browser against the demo. All findings go to the aircraft that is in the hangar for its
 * annual, so that no other journey's answer depends on this one. Sources: issue 2 ("a finding with photo", "nothing typed
 * is lost") for the demands, WCAG 2.2 AA for axe; the rest is common practice, no source.
 */
const IN_HANGAR = 'N053QB';
const PILOT = DEMO_LOGINS.find((login) => login.roles.startsWith('pilot ('));

async function signIn(page: Page): Promise<void> {
  if (!PILOT) throw new Error('The demo has nobody who is a pilot only.');
  await page.goto('/sign-in?next=/ramp');
  await fillSignIn(page);
  await expect(page.getByRole('heading', { name: 'Choose the aircraft' })).toBeVisible();
}

async function fillSignIn(page: Page): Promise<void> {
  await page.getByLabel('E-mail address').fill(PILOT?.email ?? '');
  await page.getByLabel('Password').fill(PILOT?.password ?? '');
  await page.getByRole('button', { name: 'Sign in' }).click();
}

/** Path of the aircraft's page. */
async function pathOf(page: Page, registration: string): Promise<string> {
  await page.goto('/ramp');
  const href = await page.getByRole('link', { name: registration }).getAttribute('href');
  if (!href) throw new Error(`${registration} is not on the list.`);
  return href;
}

/** Opens the form for a nest in an inlet and gives the words a mark of their own, to be found again. */
async function openForm(page: Page): Promise<string> {
  await page.goto(`${await pathOf(page, IN_HANGAR)}/finding?station=propeller`);
  await page.getByRole('button', { name: 'Nest, rag or plug in an inlet' }).click();
  const words = `Straw in the left inlet, mark ${randomUUID().slice(0, 8)}`;
  await page.getByLabel('What you saw').fill(words);
  return words;
}

const sendButton = (page: Page): Locator => page.getByRole('button', { name: /^Send( again)?$/ });

/** Waits as long as the page itself waits for an answer: a busy machine is no failure. */
const expectSent = (page: Page): Promise<void> =>
  expect(page.getByRole('heading', { name: /^Sent: W-\d{4,}/ })).toBeVisible({ timeout: 20_000 });

/** How often a write-up with these words stands in the pilot's own list. */
async function timesWritten(page: Page, words: string): Promise<number> {
  await page.goto('/ramp/mine');
  await expect(page.getByRole('heading', { name: 'What became of my write-ups' })).toBeVisible();
  return page.getByText(words, { exact: true }).count();
}

const picture = async (): Promise<{ name: string; mimeType: string; buffer: Buffer }> => ({
  name: 'inlet.jpg',
  mimeType: 'image/jpeg',
  buffer: await sharp({ create: { width: 2400, height: 1800, channels: 3, background: '#7a6a4f' } })
    .jpeg()
    .toBuffer(),
});

test('a finding with a photo, from the list of aircraft to sent, in at most twelve taps', async ({
  page,
}) => {
  await signIn(page);
  let taps = 0;
  const tap = async (target: Locator) => {
    taps += 1;
    await target.click();
  };
  await tap(page.getByRole('link', { name: IN_HANGAR }));
  await tap(page.getByRole('link', { name: 'Write up a finding' }));
  await tap(page.getByRole('link', { name: /^Propeller and inlets/ }));
  await tap(page.getByRole('button', { name: 'Propeller nick, deep or sharp' }));
  await tap(page.getByRole('button', { name: 'Put in: Propeller nick, deep or sharp' }));
  await tap(page.getByRole('button', { name: 'Put in: near the tip' }));
  // The camera: open it, press its shutter, accept the picture.
  taps += 3;
  await page.getByLabel('Take a photo').setInputFiles(await picture());
  await expect(page.getByText('Not sent yet')).toBeVisible();
  await tap(sendButton(page));

  await expectSent(page);
  await expect(page.getByText(`${IN_HANGAR} is no go until it is put right and signed.`)).toBeVisible();
  await expect(page.getByText('1 photo sent.', { exact: true })).toBeVisible();
  expect(taps).toBeLessThanOrEqual(12);

  await page.getByRole('link', { name: 'See the write-up' }).click();
  const photo = page.getByRole('img', { name: /^W-\d{4,}, number 1 of 1$/ });
  await expect(photo).toBeVisible();
  await expect.poll(() => photo.evaluate((img: HTMLImageElement) => img.naturalWidth)).toBe(1600);
  await expect(page.getByText('Propeller and inlets: near the tip')).toBeVisible();
});

test('a form with something missing, or refused by the server, keeps what was typed', async ({
  page,
  context,
}) => {
  await signIn(page);
  const words = await openForm(page);
  await page.getByLabel('What you saw').fill('');
  await page.getByLabel('Where exactly').fill('behind the spinner');
  await sendButton(page).click();
  await expect(page.getByText('Say in a few words what you saw.')).toBeVisible();
  await expect(page.getByLabel('What you saw')).toBeFocused();
  await expect(page.getByLabel('Where exactly')).toHaveValue('behind the spinner');

  // The session ends while one types: the server itself refuses.
  await page.getByLabel('What you saw').fill(words);
  await context.clearCookies();
  await sendButton(page).click();
  await expect(page.getByText('You are not signed in', { exact: false })).toBeVisible();
  await expect(page.getByLabel('What you saw')).toHaveValue(words);
  await expect(page.getByLabel('Where exactly')).toHaveValue('behind the spinner');

  const [second] = await Promise.all([
    context.waitForEvent('page'),
    page.getByRole('link', { name: 'Sign in in a new tab' }).click(),
  ]);
  await fillSignIn(second);
  await second.waitForURL((url) => url.pathname === '/sign-in/done');
  await second.close();
  await sendButton(page).click();
  await expectSent(page);
  expect(await timesWritten(page, words)).toBe(1);
});

test('with no connection everything stays, over a reload too, and one more press sends it once', async ({
  page,
  context,
}) => {
  await signIn(page);
  const words = await openForm(page);
  await context.setOffline(true);
  await sendButton(page).click();
  await expect(page.getByText('Not sent: no connection.', { exact: false })).toBeVisible();
  await expect(page.getByLabel('What you saw')).toHaveValue(words);
  await context.setOffline(false);
  await page.reload();
  await expect(page.getByLabel('What you saw')).toHaveValue(words);
  await sendButton(page).click();
  await expectSent(page);
  expect(await timesWritten(page, words)).toBe(1);
});

test('an answer lost on the way makes no second write-up, even after the words were changed', async ({
  page,
}) => {
  await signIn(page);
  const words = await openForm(page);
  // The server gets it; its answer never arrives.
  await page.route(
    '**/api/sync/findings',
    async (route) => {
      await route.fetch();
      await route.abort('connectionreset');
    },
    { times: 1 },
  );
  await sendButton(page).click();
  await expect(page.getByText('Not sent: no connection.', { exact: false })).toBeVisible();
  await page.getByLabel('What you saw').fill(`${words} and more of it`);
  await sendButton(page).click();
  await expectSent(page);
  await expect(page.getByText('Your first try had arrived after all.')).toBeVisible();
  expect(await timesWritten(page, words)).toBe(1);
  expect(await timesWritten(page, `${words} and more of it`)).toBe(0);
});

test('a photo that did not get through says so, is sent on request, and is there once', async ({ page }) => {
  await signIn(page);
  await openForm(page);
  await page.getByLabel('Take a photo').setInputFiles(await picture());
  await expect(page.getByText('Not sent yet')).toBeVisible();
  await page.route(
    '**/api/sync/photos',
    async (route) => {
      await route.fetch();
      await route.abort('connectionreset');
    },
    { times: 1 },
  );
  await sendButton(page).click();
  await expectSent(page);
  await expect(page.getByText('0 of 1 photo sent.')).toBeVisible();
  await expect(page.getByText('1 photo not sent yet.', { exact: false })).toBeVisible();
  await page.getByRole('button', { name: 'Send the photos again' }).click();
  await expect(page.getByText('1 photo sent.', { exact: true })).toBeVisible();
  await page.getByRole('link', { name: 'See the write-up' }).click();
  await expect(page.getByRole('img', { name: /number 1 of 1$/ })).toBeVisible();
});

test('a walkaround survives a reload and a lost connection, and ends with every answer', async ({
  page,
  context,
}) => {
  await signIn(page);
  const aircraft = await pathOf(page, IN_HANGAR);
  await page.goto(aircraft);
  await page.getByRole('button', { name: 'Start walkaround' }).click();
  const good = page.getByRole('button', { name: 'Good', exact: true });
  for (const done of [1, 2, 3]) {
    await good.click();
    await expect(page.getByText(`${done} of 18 looked at`)).toBeVisible();
  }
  await page.reload();
  await expect(page.getByText('3 of 18 looked at')).toBeVisible();

  // A finding on the way marks its station, and the walkaround goes on where it was.
  await page.getByRole('link', { name: 'Finding', exact: true }).click();
  await page.getByRole('button', { name: 'Something else' }).click();
  await page.getByRole('radio', { name: 'Cosmetic' }).check();
  await page.getByLabel('What you saw').fill('Scratch in the paint');
  await sendButton(page).click();
  await expectSent(page);
  await page.getByRole('link', { name: 'Back to the walkaround' }).click();
  await expect(page.getByText('4 of 18 looked at')).toBeVisible();

  await page.getByRole('button', { name: 'Finish the walkaround' }).click();
  await expect(page.getByText('14 stations not looked at.')).toBeVisible();
  await context.setOffline(true);
  await page.getByRole('button', { name: 'Finish all the same' }).click();
  await expect(page.getByText('Not sent: no connection.', { exact: false })).toBeVisible();
  expect(await keptWalks(page)).toBe(1);
  await context.setOffline(false);
  await page.getByRole('button', { name: 'Finish all the same' }).click();
  await expect(page.getByText('3 good, 1 with a finding, 14 not looked at.')).toBeVisible();
  expect(await keptWalks(page)).toBe(0);
});

const keptWalks = (page: Page): Promise<number> =>
  page.evaluate(() => Object.keys(localStorage).filter((key) => key.startsWith('wheelchock/walk/')).length);

test('the door of the phone takes only what comes from here, signed in, and in a form it reads', async ({
  page,
  context,
  baseURL,
}) => {
  await signIn(page);
  const here = new URL(baseURL ?? '').origin;
  const post = (path: string, headers: Record<string, string>, data: string | Buffer) =>
    page.request.post(path, { headers, data });
  const json = { Origin: here, 'Content-Type': 'application/json' };

  const elsewhere = { ...json, Origin: 'https://elsewhere.invalid' };
  expect((await post('/api/sync/findings', elsewhere, '{"version":1}')).status()).toBe(403);
  expect((await post('/api/sync/findings', json, '{"version":1}')).status()).toBe(422);
  expect((await post('/api/sync/findings', json, '{"version":2}')).status()).toBe(422);
  expect((await post('/api/sync/findings', json, '{"version":')).status()).toBe(400);
  expect(
    (await post('/api/sync/findings', { ...json, 'Content-Type': 'text/plain' }, '{"version":1}')).status(),
  ).toBe(415);
  // A message of 64,000 bytes is read (and found wanting), one of 64,001 is not.
  const long = (length: number) => `{"version":1,"words":"${'x'.repeat(length - 24)}"}`;
  expect(long(64_000)).toHaveLength(64_000);
  expect((await post('/api/sync/findings', json, long(64_000))).status()).toBe(422);
  expect((await post('/api/sync/findings', json, long(64_001))).status()).toBe(413);

  const photo = {
    Origin: here,
    'Content-Type': 'application/octet-stream',
    'X-Request-Id': randomUUID(),
    'X-Finding-Id': randomUUID(),
  };
  expect((await post('/api/sync/photos', photo, Buffer.from('no picture'))).status()).toBe(422);
  expect((await post('/api/sync/photos', photo, (await picture()).buffer)).status()).toBe(404);
  expect((await page.request.get(`/api/photos/${randomUUID()}`)).status()).toBe(404);
  expect((await page.request.get('/api/photos/none')).status()).toBe(404);

  await context.clearCookies();
  expect((await post('/api/sync/findings', json, '{"version":1}')).status()).toBe(422);
  expect((await post('/api/sync/photos', photo, Buffer.from('no picture'))).status()).toBe(401);
  expect((await page.request.get(`/api/photos/${randomUUID()}`)).status()).toBe(401);
});

test('a photo is served only as a picture, and again only when it may still be seen', async ({
  page,
  context,
}) => {
  await signIn(page);
  await openForm(page);
  await page.getByLabel('Take a photo').setInputFiles(await picture());
  await expect(page.getByText('Not sent yet')).toBeVisible();
  await sendButton(page).click();
  await expect(page.getByText('1 photo sent.', { exact: true })).toBeVisible();
  await page.getByRole('link', { name: 'See the write-up' }).click();
  const src = await page.getByRole('img', { name: /number 1 of 1$/ }).getAttribute('src');
  const answer = await page.request.get(src ?? '');
  const headers = answer.headers();
  expect(headers['content-type']).toBe('image/jpeg');
  expect(headers['x-content-type-options']).toBe('nosniff');
  expect(headers['content-security-policy']).toContain('sandbox');
  expect(headers['cache-control']).toBe('private, no-cache');
  const again = { headers: { 'If-None-Match': headers.etag ?? '' } };
  expect((await page.request.get(src ?? '', again)).status()).toBe(304);
  await context.clearCookies();
  expect((await page.request.get(src ?? '', again)).status()).toBe(401);
});

for (const colorScheme of ['light', 'dark'] as const) {
  test(`every screen of the ramp is free of axe findings, ${colorScheme}`, async ({ page }) => {
    // Twelve screens, each searched whole.
    test.slow();
    await page.emulateMedia({ colorScheme });
    await signIn(page);
    const aircraft = await pathOf(page, IN_HANGAR);
    const screens: [string, () => Promise<unknown>][] = [
      ['the list', () => page.goto('/ramp')],
      ['one with a placard owed', async () => page.goto(await pathOf(page, 'N054TM'))],
      ['one aircraft', () => page.goto(aircraft)],
      ['where', () => page.goto(`${aircraft}/finding`)],
      ['what', () => page.goto(`${aircraft}/finding?station=cabin`)],
      ['form', () => page.getByRole('button', { name: 'Something else' }).click()],
      ['form, wrong', () => sendButton(page).click()],
      ['mine', () => page.goto('/ramp/mine')],
      ['write-up', () => openFirstWriteUp(page, aircraft)],
      ['walk', () => openWalk(page, aircraft)],
      ['walk, unsure', () => page.getByRole('button', { name: 'Finish the walkaround' }).click()],
      ['nothing', () => page.goto(`/ramp/write-up/${randomUUID()}`)],
    ];
    for (const [name, open] of screens) {
      await open();
      await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
      await expect(page.getByText('One moment…')).toHaveCount(0);
      const { violations } = await new AxeBuilder({ page })
        .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
        .analyze();
      expect(
        violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.target.join(' ')).join(', ')}`),
        name,
      ).toEqual([]);
    }
  });
}

async function openFirstWriteUp(page: Page, aircraft: string): Promise<void> {
  await page.goto(aircraft);
  await page.locator('a[href^="/ramp/write-up/"]').first().click();
  await page.waitForURL('**/ramp/write-up/**');
}

async function openWalk(page: Page, aircraft: string): Promise<void> {
  await page.goto(aircraft);
  await page.getByRole('button', { name: 'Start walkaround' }).click();
  await expect(page.getByRole('button', { name: 'Good', exact: true })).toBeVisible();
}

test('the screens fit a narrow phone: nothing is wider than the screen, targets are 44 px', async ({
  page,
}) => {
  await page.setViewportSize({ width: 360, height: 740 });
  await signIn(page);
  const aircraft = await pathOf(page, IN_HANGAR);
  const paths = ['/ramp', aircraft, `${aircraft}/finding`, `${aircraft}/finding?station=cabin`, '/ramp/mine'];
  for (const path of paths) {
    await page.goto(path);
    await expect(page.getByText('One moment…')).toHaveCount(0);
    expect(await page.evaluate(() => document.documentElement.scrollWidth), path).toBeLessThanOrEqual(360);
    const small = await page
      .locator('main button:visible, main a:visible, main summary:visible')
      .evaluateAll((all) =>
        all
          .filter((one) => one.getBoundingClientRect().height < 44)
          .map((one) => `${one.textContent?.slice(0, 40)} ${one.getBoundingClientRect().height}`),
      );
    expect(small, path).toEqual([]);
  }
});
