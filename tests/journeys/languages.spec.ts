import { expect, test, type Page } from '@playwright/test';
import { DEMO_PASSWORD } from '../../seed/people';
import { aircraftId } from '../../seed/load/ids';
import { QUILLBACK } from '../../seed/operators';
import { axeOn } from '../fixtures/axe';
import { pageOf } from '../fixtures/browser';

/**
 * The screens in Spanish. Source: issue 6, "language files (English first, one more language complete)"; WCAG 2.2, 3.1.1 and 3.1.2
 * for what language a page and its parts are said to be in. With no network: offline.spec.ts.
 */
const LIMITED = aircraftId(QUILLBACK.key, 'N042QB');

const languageOf = (page: Page) => page.evaluate(() => document.documentElement.lang);

test('who asks for Spanish gets it before anybody is signed in; choosing English keeps what is typed, and stays', async ({
  browser,
}) => {
  const context = await browser.newContext({ locale: 'es-MX' });
  const page = await context.newPage();
  await page.goto('/sign-in');
  await expect(page).toHaveTitle('Iniciar sesión · Wheelchock');
  expect(await languageOf(page)).toBe('es');
  await page.getByLabel('Dirección de correo').fill('pia@quillback.example');

  await page.getByRole('button', { name: 'English' }).click();
  await expect(page.getByRole('heading', { name: 'Sign in' })).toBeVisible();
  await expect.poll(() => languageOf(page)).toBe('en');
  await expect(page.getByLabel('E-mail address')).toHaveValue('pia@quillback.example');
  await page.reload();
  await expect(page.getByRole('heading', { name: 'Sign in' })).toBeVisible();

  await page.getByRole('button', { name: 'Español' }).click();
  await page.getByLabel('Dirección de correo').fill('pia@quillback.example');
  await page.getByLabel('Contraseña').fill('not this one');
  await page.getByRole('button', { name: 'Iniciar sesión' }).click();
  await expect(page.getByText('Esa dirección y esa contraseña no corresponden.')).toBeVisible();
  await page.getByLabel('Contraseña').fill(DEMO_PASSWORD);
  await page.getByRole('button', { name: 'Iniciar sesión' }).click();
  await expect(page.getByRole('heading', { name: 'Elija la aeronave' })).toBeVisible();
  await context.close();
});

test('reasons stay English and say so; all else is Spanish, with nothing amiss for axe', async ({
  browser,
}) => {
  const page = await pageOf(browser, 'tess', { locale: 'es-US' });
  await page.goto(`/desk/aircraft/${LIMITED}`);
  await expect(page.getByRole('link', { name: 'Liberaciones' }).first()).toBeVisible();
  expect(await languageOf(page)).toBe('es');
  const reason = page.getByRole('main').locator('[lang="en"]', { hasText: 'Landing light' }).first();
  await expect(reason).toBeVisible();
  const { violations } = await axeOn(page).analyze();
  expect(violations).toEqual([]);
  await page.context().close();
});

test('a refusal of the server comes in Spanish, beside the field and above the button', async ({
  browser,
}) => {
  const page = await pageOf(browser, 'tess', { locale: 'es' });
  await page.goto('/desk/flight');
  await page.getByRole('button', { name: 'Pedir la respuesta' }).click();
  await expect(page.getByText('Elija la aeronave.').first()).toBeVisible();
  await page.context().close();
});
