/**
 * Flights taken in from files, and a base added from the airport file, by the manager of the demo's second operator: nothing of
 * it stands in the way of the other journeys. Sources: issue 5 ("row-level errors and nothing half-imported", "Bases and
 * sunrise"), RFC 5545, axe.
 */
import { expect, test, type Page } from '@playwright/test';
import { randomUUID } from 'node:crypto';
import { axeOn } from '../fixtures/axe';
import { signIn } from '../fixtures/browser';

const AIRCRAFT = 'N091MF';
/** Five days ahead: on the list, and after everything the demo plans. */
const DAY = new Date(Date.now() + 5 * 86_400_000).toISOString().slice(0, 10);

async function expectAxe(page: Page): Promise<void> {
  const { violations } = await axeOn(page).analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`)).toEqual([]);
}

/** Nothing is wider than the window. */
async function expectNoSidewaysScrolling(page: Page): Promise<void> {
  expect(await page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)).toBe(true);
}

async function openImport(page: Page): Promise<void> {
  await signIn(page, 'nell');
  await page.goto('/desk/plans/import');
  await expect(page.getByRole('button', { name: 'Check' })).toBeEnabled();
}

const box = (page: Page) => page.getByLabel('Its text');

test('a CSV with an error says the row, is put right in place, and goes in once', async ({ page }) => {
  await openImport(page);
  const name = `Lesson ${randomUUID().slice(0, 8)}`;
  const text = [
    'aircraft;depart;arrive;hours;words;id',
    `${AIRCRAFT};${DAY} 09:00;${DAY} 10:30;1.2;${name};${name}`,
    `${AIRCRAFT};${DAY} noon;${DAY} 13:00;0.8;${name}, again;${name} b`,
  ].join('\n');
  await page.getByText('CSV', { exact: true }).first().click();
  await box(page).fill(text);
  await page.getByRole('button', { name: 'Check' }).click();
  const notice = page.getByRole('alert').filter({ hasText: 'Nothing can be taken in yet' });
  await expect(notice).toContainText(`Row 3, depart: "${DAY} noon" is no time.`);
  await expect(page.getByRole('button', { name: /^Take in/ })).toHaveCount(0);
  await expectAxe(page);
  await expectNoSidewaysScrolling(page);

  await box(page).fill(text.replace('noon', '12:00'));
  await expect(page.getByText('Changed since it was checked.')).toBeVisible();
  await page.getByRole('button', { name: 'Check' }).click();
  await expect(page.getByText('2 to add.')).toBeVisible();
  await page.getByRole('button', { name: 'Take in 2 flights' }).click();
  await expect(page.getByText('Taken in.')).toBeVisible();

  // The same again changes nothing.
  await page.getByText('CSV', { exact: true }).first().click();
  await box(page).fill(text.replace('noon', '12:00'));
  await page.getByRole('button', { name: 'Check' }).click();
  await expect(page.getByText('2 as before.')).toBeVisible();
  await expect(page.getByText('There is nothing to take in.')).toBeVisible();

  await page.goto('/desk/plans');
  const flights = page
    .getByRole('region', { name: AIRCRAFT })
    .getByRole('listitem')
    .filter({ hasText: name });
  await expect(flights).toHaveCount(2);
  await expect(flights.first()).toContainText('from pasted text');
  for (const left of [1, 0]) {
    await flights
      .first()
      .getByRole('button', { name: /^Cancel/ })
      .click();
    await flights.first().getByRole('button', { name: 'Yes, cancel it' }).click();
    await expect(flights).toHaveCount(left);
  }
});

test('an iCalendar file is chosen, goes in, and is called off by the next one', async ({ page }) => {
  await openImport(page);
  const uid = randomUUID();
  const at = DAY.replaceAll('-', '');
  const file = (more: readonly string[] = []) => ({
    name: 'lessons.ics',
    mimeType: 'text/calendar',
    buffer: Buffer.from(
      [
        'BEGIN:VCALENDAR',
        'VERSION:2.0',
        'PRODID:-//Invented//Journey//EN',
        'BEGIN:VEVENT',
        `UID:${uid}`,
        `SUMMARY:Round the lake in ${AIRCRAFT}`,
        'ATTENDEE:mailto:nell@marrowfield.example',
        `DTSTART:${at}T140000`,
        'DURATION:PT1H30M',
        ...more,
        'END:VEVENT',
        'END:VCALENDAR',
        '',
      ].join('\r\n'),
    ),
  });
  await page.getByLabel('File', { exact: true }).setInputFiles(file());
  await expect(page.getByText('lessons.ics is in the box below.')).toBeVisible();
  await expect(page.getByRole('radio', { name: 'iCalendar' })).toBeChecked();
  await page.getByRole('button', { name: 'Check' }).click();
  await expect(page.getByRole('row', { name: /Event 1/ })).toContainText('Nell Ashgrebe');
  await page.getByRole('button', { name: 'Take in 1 flight' }).click();
  await expect(page.getByText('1 added')).toBeVisible();

  await page.getByLabel('File', { exact: true }).setInputFiles(file(['STATUS:CANCELLED']));
  await page.getByRole('button', { name: 'Check' }).click();
  await page.getByRole('button', { name: 'Cancel 1 flight' }).click();
  await expect(page.getByText('1 cancelled')).toBeVisible();
});

test('a base from the airport file: filled in, its zone confirmed, and its sun shown', async ({ page }) => {
  await signIn(page, 'nell');
  await page.goto('/desk/bases/add');
  await expect(page.getByRole('button', { name: 'Add the base' })).toBeEnabled();
  await page.getByRole('searchbox', { name: 'Code, name or town' }).fill('longyear');
  await page.getByRole('button', { name: /^ENSB/ }).click();
  await expect(page.getByLabel('Time zone')).toHaveValue('Europe/Oslo');
  // Another name for it, so that this journey can be walked again.
  const ident = `Z${randomUUID().slice(0, 5)}`.toUpperCase();
  await page.getByLabel('Identifier').fill(ident);
  for (const question of await page.getByRole('radiogroup').all()) {
    await question.getByText('Not said', { exact: true }).click();
  }
  await expectAxe(page);
  await expectNoSidewaysScrolling(page);
  await page.getByRole('button', { name: 'Add the base' }).click();
  await expect(
    page.getByRole('alert').filter({ hasText: 'Look at the time there and tick that it is right.' }),
  ).toBeVisible();
  await page.getByText('I looked at the time there, and it is right.').click();
  await page.getByRole('button', { name: 'Add the base' }).click();
  await expect(page.getByText(`${ident} is added.`)).toBeVisible();

  const sun = page.getByRole('region', { name: `The sun at ${ident} today` });
  // At 78 N it depends on the season what there is to say; something there is always.
  await expect(sun).toContainText(/The sun does not (set|rise) today|Sunrise|Sunset/);
  await expect(page.getByRole('region', { name: 'The sun at ZZMF today' })).toContainText(
    /Sunrise\d\d:\d\d M[SD]T/,
  );
  await expectAxe(page);
  await expectNoSidewaysScrolling(page);
});
