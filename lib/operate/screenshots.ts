import path from 'node:path';
import { mkdir } from 'node:fs/promises';
import { chromium, type Browser, type Page } from '@playwright/test';
import { DEMO_PASSWORD } from '../../seed/people';
import { withJourneyServer } from './journey-server';
import { inRepository } from './places.mjs';
import { say } from './say.mjs';
import { runAsProgram } from './run-as-program';

/**
 * `npm run screenshots`: builds, loads the demo into a database that is thrown away, and takes the README's pictures into
 * tests/pictures. Run again after a change of the screens.
 */
const FOLDER = inRepository('tests', 'pictures');
const PHONE = { viewport: { width: 390, height: 844 }, deviceScaleFactor: 1, isMobile: true, hasTouch: true };
const DESKTOP = { viewport: { width: 1280, height: 800 }, deviceScaleFactor: 1 };

/** One picture: whose screen, how to get there, what it is called. */
interface Picture {
  readonly name: string;
  readonly who: string;
  readonly device: typeof PHONE | typeof DESKTOP;
  go(page: Page): Promise<void>;
}

const PICTURES: readonly Picture[] = [
  { name: 'desk-board', who: 'tess', device: DESKTOP, go: (page) => open(page, '/desk') },
  { name: 'bench-queue', who: 'moira', device: DESKTOP, go: (page) => open(page, '/bench') },
  { name: 'bench-due', who: 'moira', device: DESKTOP, go: (page) => open(page, '/bench/due') },
  {
    name: 'bench-eligibility',
    who: 'abel',
    device: DESKTOP,
    async go(page) {
      await open(page, '/bench');
      await page.getByRole('link', { name: /Landing light dead/ }).click();
      await page.getByRole('table').first().scrollIntoViewIfNeeded();
    },
  },
  { name: 'office-setting-up', who: 'gil', device: DESKTOP, go: (page) => open(page, '/office') },
  {
    name: 'office-equipment',
    who: 'gil',
    device: DESKTOP,
    async go(page) {
      await open(page, '/office/fleet');
      await page
        .getByRole('link', { name: /equipment/ })
        .first()
        .click();
      await page.getByRole('heading', { level: 1, name: /^Equipment of/ }).waitFor();
    },
  },
  { name: 'ramp-aircraft', who: 'pia', device: PHONE, go: (page) => open(page, '/ramp') },
  {
    name: 'ramp-walk',
    who: 'pia',
    device: PHONE,
    async go(page) {
      await openWalk(page, 'N043QB', 'nose-right');
      await page.getByRole('textbox').first().fill('3.5');
      await page.getByRole('textbox').first().press('Enter');
      await page.getByRole('region', { name: 'Proposed finding' }).waitFor();
    },
  },
  {
    name: 'ramp-drawing',
    who: 'pia',
    device: PHONE,
    async go(page) {
      await openWalk(page, 'N043QB', 'propeller');
      await page.getByRole('button', { name: 'Plan' }).click();
      await page.getByRole('heading', { name: 'The way round' }).waitFor();
    },
  },
  {
    name: 'ramp-finding',
    who: 'pia',
    device: PHONE,
    async go(page) {
      await open(page, '/ramp');
      const aircraft = await page.getByRole('link', { name: /N051QB/ }).getAttribute('href');
      await open(page, `${aircraft}/finding?station=propeller`);
      await page.getByRole('button', { name: 'Propeller nick, deep or sharp' }).waitFor();
    },
  },
  { name: 'ramp-mine', who: 'pia', device: PHONE, go: (page) => open(page, '/ramp/mine') },
];

async function open(page: Page, where: string): Promise<void> {
  await page.goto(where);
  await page.getByRole('heading', { level: 1 }).waitFor();
}

/** At one station of a walkaround under way. */
async function openWalk(page: Page, registration: string, area: string): Promise<void> {
  await open(page, '/ramp');
  const aircraft = await page.getByRole('link', { name: new RegExp(registration) }).getAttribute('href');
  await open(page, `${aircraft}/walk`);
  await page.getByRole('button', { name: 'Start walkaround' }).click();
  await page.getByRole('heading', { level: 2 }).first().waitFor();
  await open(page, `${aircraft}/walk?at=${area}`);
  await page.getByRole('heading', { level: 2 }).first().waitFor();
}

async function take(browser: Browser, address: string, picture: Picture): Promise<void> {
  const context = await browser.newContext({
    ...picture.device,
    serviceWorkers: 'block',
    baseURL: address,
    colorScheme: 'light',
  });
  const page = await context.newPage();
  await page.goto('/sign-in');
  await page.getByLabel('E-mail address').fill(`${picture.who}@quillback.example`);
  await page.getByLabel('Password').fill(DEMO_PASSWORD);
  await page.getByRole('button', { name: 'Sign in' }).click();
  await page.waitForURL((url) => !url.pathname.startsWith('/sign-in'));
  await picture.go(page);
  await page.screenshot({ path: path.join(FOLDER, `${picture.name}.png`) });
  await context.close();
  say(`tests/pictures/${picture.name}.png`);
}

/** Takes all pictures. */
export async function screenshots(): Promise<void> {
  await mkdir(FOLDER, { recursive: true });
  await withJourneyServer(async ({ address, browser: executablePath }) => {
    const browser = await chromium.launch({ executablePath, args: ['--no-sandbox', '--disable-gpu'] });
    try {
      for (const picture of PICTURES) await take(browser, address, picture);
    } finally {
      await browser.close();
    }
  });
}

runAsProgram(import.meta.url, () => screenshots().then(() => 0));
