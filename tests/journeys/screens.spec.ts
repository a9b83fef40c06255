/**
 * Every page of the application, on a phone and on a desktop, in light and dark: WCAG 2.2 AA as far as axe can see it, one
 * heading, no sideways scrolling. A new page without a row in tests/fixtures/every-screen.ts fails here.
 */
import { expect, test, type Page } from '@playwright/test';
import { axeOn } from '../fixtures/axe';
import { signIn } from '../fixtures/browser';
import { pathOf, routesOfApp, SCREENS } from '../fixtures/every-screen';

const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

test('every page has its row', () => {
  expect(routesOfApp().sort()).toEqual(SCREENS.map(({ route }) => route).sort());
});

for (const who of [null, 'pia', 'moira', 'tess', 'gil'] as const) {
  test(`screens of ${who ?? 'nobody'} stand up to axe in both themes`, async ({ page }) => {
    test.setTimeout(900_000);
    // What lies under a bar that sticks would be measured as covered; on a tall window nothing does.
    await page.setViewportSize({ width: page.viewportSize()?.width ?? 390, height: 4000 });
    if (who) await signIn(page, who);
    for (const screen of SCREENS.filter((one) => one.who === who)) {
      await test.step(screen.route, async () => {
        const path = await pathOf(screen, process.env['DATABASE_URL'] ?? '');
        expect.soft(path, `no row for ${screen.route}: the journeys before this one make it`).not.toBeNull();
        if (path === null) return;
        await page.emulateMedia({ colorScheme: 'light', reducedMotion: 'reduce' });
        await page.goto(path);
        await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
        const width = page.viewportSize()?.width ?? 0;
        expect
          .soft(
            await page.evaluate(() => document.documentElement.scrollWidth),
            `${screen.route} is too wide`,
          )
          .toBeLessThanOrEqual(width);
        await expectNothingFound(page, `${screen.route}, light`);
        // Without motion: a colour on its way to the other theme is neither of the two.
        await page.emulateMedia({ colorScheme: 'dark', reducedMotion: 'reduce' });
        await expectNothingFound(page, `${screen.route}, dark`, ['color-contrast']);
      });
    }
  });
}

/** Of the dark theme only what a theme can change is asked again. */
async function expectNothingFound(page: Page, where: string, only?: string[]): Promise<void> {
  const axe = axeOn(page);
  const { violations } = await (only ? axe.withRules(only) : axe.withTags(TAGS)).analyze();
  expect
    .soft(
      violations.map(({ id, nodes }) => [id, nodes.map((node) => node.html)]),
      where,
    )
    .toEqual([]);
}
