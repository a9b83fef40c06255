/**
 * The guides of app/guide, walked through: each step's screen is there and looks as its picture shows. With
 * WHEELCHOCK_PICTURES=take the pictures are taken anew into public/guide (npm run guide-pictures).
 */
import { expect, test, type Page } from '@playwright/test';
import { mkdir, writeFile } from 'node:fs/promises';
import sharp from 'sharp';
import { GUIDES, READERS, type Reader } from '../../app/guide/guides';
import { PICTURE_SIZES } from '../../app/guide/picture-sizes';
import { aircraftId } from '../../seed/load/ids';
import { QUILLBACK } from '../../seed/operators';
import { signIn } from '../fixtures/browser';

const FOLDER = 'public/guide';
const of = (registration: string) => aircraftId(QUILLBACK.key, registration);

const WHO: Record<Reader, string> = { pilot: 'pia', mechanic: 'abel', dispatcher: 'tess', manager: 'gil' };

/** How the screen of each step is reached. */
const SCREEN_OF: Record<string, (page: Page) => Promise<void>> = {
  'pilot-1': (page) => open(page, '/ramp'),
  'pilot-2': (page) => open(page, `/ramp/${of('N042QB')}`),
  'pilot-3': async (page) => {
    await open(page, `/ramp/${of('N043QB')}`);
    await page.getByRole('button', { name: 'Start walkaround' }).click();
    await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
    await expect(page).toHaveURL(/\/walk/);
  },
  'pilot-4': async (page) => {
    await open(page, `/ramp/${of('N051QB')}/finding?station=propeller`);
    await expect(page.getByRole('button', { name: 'Propeller nick, deep or sharp' })).toBeVisible();
  },
  'pilot-5': (page) => open(page, '/ramp/mine'),
  'mechanic-1': (page) => open(page, '/bench'),
  'mechanic-2': async (page) => {
    await open(page, '/bench');
    await page
      .getByRole('link', { name: /Landing light dead/ })
      .first()
      .click();
    await expect(page.getByRole('table').first()).toBeVisible();
    await page.getByRole('table').first().scrollIntoViewIfNeeded();
  },
  'mechanic-3': async (page) => {
    await open(page, '/bench');
    await page
      .getByRole('link', { name: /Landing light dead/ })
      .first()
      .click();
    await page.locator('summary').filter({ hasText: 'Start work' }).first().click();
    await expect(page.getByLabel('What is to be done')).toBeVisible();
    await page.getByLabel('What is to be done').scrollIntoViewIfNeeded();
  },
  'mechanic-4': (page) => open(page, '/bench/due'),
  'mechanic-5': (page) => open(page, `/bench/aircraft/${of('N041QB')}/records`),
  'dispatcher-1': (page) => open(page, '/desk'),
  'dispatcher-2': (page) => open(page, `/desk/aircraft/${of('N042QB')}/day`),
  'dispatcher-3': (page) => open(page, `/desk/flight?aircraft=${of('N042QB')}`),
  'dispatcher-4': (page) => open(page, `/desk/aircraft/${of('N053QB')}`),
  'dispatcher-5': (page) => open(page, '/desk/releases'),
  'manager-1': (page) => open(page, '/office'),
  'manager-2': (page) => open(page, '/office/people'),
  'manager-3': (page) => open(page, '/office/fleet'),
  'manager-4': (page) => open(page, '/office/history'),
  'manager-5': (page) => open(page, '/office/rules'),
};

async function open(page: Page, where: string): Promise<void> {
  await page.goto(where);
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
}

for (const reader of READERS) {
  test(`the guide of the ${reader} leads through screens that are there`, async ({ page, isMobile }) => {
    const guide = GUIDES[reader];
    test.skip(isMobile !== (guide.device === 'phone'), 'it is a guide for another device');
    test.setTimeout(180_000);
    await page.goto(`/guide/${reader}`);
    await expect(page.getByRole('heading', { level: 2 })).toHaveCount(guide.steps.length);
    for (const step of guide.steps) {
      const picture = page.getByRole('img', { name: step.shows });
      await picture.scrollIntoViewIfNeeded();
      if (process.env['WHEELCHOCK_PICTURES'] !== 'take') {
        await expect
          .poll(() => picture.evaluate((img: HTMLImageElement) => img.naturalWidth), step.picture)
          .toBe(PICTURE_SIZES[guide.device].width);
      }
    }
    await signIn(page, WHO[reader]);
    for (const step of guide.steps) {
      await test.step(step.title, async () => {
        await SCREEN_OF[step.picture]?.(page);
        if (process.env['WHEELCHOCK_PICTURES'] === 'take') await take(page, step.picture, guide.device);
      });
    }
  });
}

test('every step has a way to its screen', () => {
  const steps = READERS.flatMap((reader) => GUIDES[reader].steps.map(({ picture }) => picture));
  expect(Object.keys(SCREEN_OF).sort()).toEqual([...steps].sort());
});

async function take(page: Page, name: string, device: 'phone' | 'desktop'): Promise<void> {
  const shot = await page.screenshot({ animations: 'disabled' });
  await mkdir(FOLDER, { recursive: true });
  const small = await sharp(shot).resize(PICTURE_SIZES[device]).webp({ quality: 80 }).toBuffer();
  await writeFile(`${FOLDER}/${name}.webp`, small);
}
