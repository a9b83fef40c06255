/** The office's fleet: a type's facts, a new aircraft, its equipment begun, confirmed, taken in from a file, and the aircraft retired again. */
import { expect, test, type Page } from '@playwright/test';
import { DEMO_PASSWORD } from '../../seed/people';
import { signIn } from '../fixtures/browser';
import { freeMark } from '../fixtures/fleet-office';

const DOCUMENT = 'Invented equipment list, revision B';

async function signed(page: Page, submit: string | RegExp): Promise<void> {
  await page.getByLabel('Your password, to sign').last().fill(DEMO_PASSWORD);
  await page.getByRole('button', { name: submit }).click();
}

test('a new aircraft gets its equipment, item by item, and leaves again', async ({ page }) => {
  const registration = freeMark();
  await signIn(page, 'gil');
  await page.goto('/office/fleet/aircraft/add');
  const form = page.getByRole('form', { name: 'Add an aircraft' });
  await form.getByLabel('Registration').fill(registration);
  await form.getByLabel('Serial number').fill('INVENTED-500');
  await form.getByLabel('Type', { exact: true }).selectOption({ index: 1 });
  await form.getByLabel('Base', { exact: true }).selectOption({ index: 1 });
  await form
    .getByRole('radiogroup', { name: /for hire/ })
    .getByLabel('Yes')
    .check();
  await form
    .getByRole('radiogroup', { name: /standard airworthiness/ })
    .getByLabel('Not known yet')
    .check();
  await form
    .getByRole('radiogroup', { name: /Which meter/ })
    .getByLabel('Not known yet')
    .check();
  await form.getByLabel('Hobbs').first().fill('12,5');
  await form.getByLabel('Document it is taken from').fill(DOCUMENT);
  await signed(page, 'Sign and add the aircraft');
  // One decimal, with a point; everything typed is still there.
  await expect(form.getByText('Enter hours with one decimal').first()).toBeVisible();
  await expect(form.getByLabel('Serial number')).toHaveValue('INVENTED-500');
  await form.getByLabel('Hobbs').first().fill('12.5');
  await signed(page, 'Sign and add the aircraft');
  await expect(page.getByRole('heading', { level: 1, name: registration })).toBeVisible();
  await expect(page.getByRole('heading', { name: 'What the engine still lacks' })).toBeVisible();
  await page.getByRole('link', { name: 'Its equipment' }).click();

  // A starting set stands unconfirmed.
  await expect(page.getByText('Nothing is on the list yet.')).toBeVisible();
  await page.getByRole('checkbox', { name: /Night VFR/ }).check();
  await page.getByRole('button', { name: 'Put them on the list' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Confirm the equipment' })).toBeVisible();

  // By keyboard: the document once, then Enter for each that agrees.
  const agrees = page.getByRole('button', { name: 'It agrees: next' });
  await agrees.click();
  await expect(page.getByText('Name the document it is taken from')).toBeVisible();
  await page.getByLabel('Document you hold it against').fill(DOCUMENT);
  await agrees.press('Enter');
  await expect(page.getByText(/^1 of \d+ decided$/)).toBeVisible();
  await expect(agrees).toBeFocused();
  await page.getByLabel('How many are installed').fill('2');
  await page.keyboard.press('Enter');
  await expect(page.getByText(/^2 of \d+ decided$/)).toBeVisible();
  await page.getByRole('button', { name: 'Not installed on this aircraft' }).click();
  await expect(page.getByText(/^3 of \d+ decided$/)).toBeVisible();
  // A reload loses nothing of a sitting.
  await page.reload();
  await expect(page.getByText(/^3 of \d+ decided$/)).toBeVisible();
  await signed(page, 'Sign for 3 items');
  await expect(page.getByText(/^0 of \d+ decided$/)).toBeVisible();

  // A file: the template is refused with its examples in it, a row of our own is taken in and signed.
  await page.goto(page.url().replace('/confirm', '/import'));
  const template = await page.request.get('/api/templates/equipment?format=csv');
  expect(template.headers()['content-type']).toContain('text/csv');
  const text = await template.text();
  await page.getByLabel('File', { exact: true }).setInputFiles({
    name: 'equipment.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from(text),
  });
  await page.getByRole('button', { name: 'Check', exact: true }).click();
  await expect(page.getByText(/Nothing can be taken in yet: 2 things/)).toBeVisible();
  await page
    .getByLabel('Its text')
    .fill(text.replaceAll('N0EXAMPLE', '').replaceAll(/Example: | \(write over[^)]*\)/g, 'Our '));
  await page.getByRole('button', { name: 'Check', exact: true }).click();
  await expect(page.getByRole('row', { name: /Our landing light/ })).toContainText('Add');
  await page.getByLabel('Document it is taken from').fill(DOCUMENT);
  await signed(page, 'Sign and take in 2 rows');
  await expect(page.getByText('Taken in and signed.')).toBeVisible();
  await page.getByRole('link', { name: 'To the equipment list' }).click();
  await expect(page.getByRole('heading', { level: 1, name: `Equipment of ${registration}` })).toBeVisible();
  await expect(page.getByText('Our landing light')).toBeVisible();

  // Retired, it is off the board.
  await page.getByRole('link', { name: registration }).click();
  await page.getByText('Retire this aircraft').click();
  await page.getByLabel('Why').fill('Only for this test.');
  await page.getByRole('button', { name: 'Retire the aircraft' }).click();
  await expect(page.getByText('Retired: Only for this test.', { exact: false })).toBeVisible();
  await page.goto('/desk');
  await expect(page.getByText('N041QB').first()).toBeVisible();
  await expect(page.getByText(registration)).toHaveCount(0);
});

test('a mechanic reads types and equipment and changes none', async ({ page }) => {
  await signIn(page, 'moira');
  await page.goto('/office/fleet');
  await expect(page.getByRole('link', { name: 'Add an aircraft' })).toHaveCount(0);
  await page.getByRole('link', { name: 'See', exact: true }).first().click();
  await expect(page.getByText('Fuel tanks')).toBeVisible();
  await expect(page.getByRole('form')).toHaveCount(0);
});
