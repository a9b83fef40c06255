/**
 * Every page x every role x own or other operator, against the table lib/access/pages.ts, as a browser asks a built server:
 * what a role may not see is refused in words and shows none of it; a stranger is sent to sign in. A new page without a row
 * fails. Source: issue 7, "every route and action x every role x own/other operator".
 */
import { expect, test, type APIRequestContext, type APIResponse } from '@playwright/test';
import { PAGES, type PageAccess } from '../../lib/access/pages';
import { POLICY, type Role } from '../../lib/access/policy';
import { PROBLEMS } from '../../lib/problems';
import { MARROWFIELD } from '../../seed/second-operator';
import { signIn } from '../fixtures/browser';
import { pathOf, routesOfApp, SCREENS } from '../fixtures/every-screen';

// One way of asking is enough: nothing here is drawn.
test.skip(({ viewport }) => (viewport?.width ?? 0) < 1000, 'the same on a phone');

/** One role each. */
const PEOPLE: readonly (readonly [Role, string])[] = [
  ['pilot', 'ruth'],
  ['mechanic', 'moira'],
  ['dispatcher', 'tess'],
  ['manager', 'gil'],
];
const STRANGERS = MARROWFIELD.people.map(({ email }) => email.split('@')[0] ?? '');

const mayOpen = (access: PageAccess, roles: readonly string[]) =>
  typeof access === 'string' ||
  access.every((verb) => (POLICY[verb] as readonly string[]).some((role) => roles.includes(role)));

const NOT_ALLOWED = PROBLEMS.not_allowed.say;
/** "There is no such record here", or aircraft, or write-up. */
const NOT_FOUND = /There is no such [a-z -]+ here\.|There is no flight of yours/;
/** Shown to its pilot in command only, who may or may not be the one who asks. */
const OWN = '/ramp/flight/[id]';

/** What came, in a word: the page itself, a refusal, or the way to sign in. */
async function cameOf(answer: APIResponse): Promise<string> {
  if (answer.status() >= 300 && answer.status() < 400)
    return new URL(answer.headers()['location'] ?? '', answer.url()).pathname;
  // What is shown, and not what the scripts bring along: every page carries the words of one that is not there.
  const html = (await answer.text()).replaceAll(/<script\b[\s\S]*?<\/script>/g, '');
  if (answer.status() === 404 || NOT_FOUND.test(html)) return 'not found';
  if (html.includes(NOT_ALLOWED)) return 'not allowed';
  return answer.status() === 200 ? 'the page' : `status ${answer.status()}`;
}
const open = async (request: APIRequestContext, path: string) =>
  cameOf(await request.get(path, { maxRedirects: 0 }));

const screens = SCREENS.map((screen) => ({ ...screen, access: PAGES[screen.route] }));

test('every page has its row, and no row is of a page that is gone', () => {
  expect(Object.keys(PAGES).sort()).toEqual(routesOfApp().sort());
});

for (const [role, who] of PEOPLE)
  test(`as ${role}`, async ({ page }) => {
    test.setTimeout(300_000);
    await signIn(page, who);
    for (const screen of screens) {
      const path = await pathOf(screen, process.env['DATABASE_URL'] ?? '');
      if (path === null || !screen.access || screen.access === 'anybody') continue;
      const came = await open(page.request, path);
      const wanted = mayOpen(screen.access, [role]) ? 'the page' : 'not allowed';
      if (screen.route === OWN) expect.soft(came, path).toMatch(/^(the page|not found)$/);
      else expect.soft({ path, came }).toEqual({ path, came: wanted });
    }
  });

test('as nobody: to sign in, from every page that is somebody’s', async ({ request }) => {
  test.setTimeout(300_000);
  for (const screen of screens) {
    const path = await pathOf(screen, process.env['DATABASE_URL'] ?? '');
    if (path === null || screen.access === 'anybody') continue;
    expect.soft({ path, came: await open(request, path) }).toEqual({ path, came: '/sign-in' });
  }
});

for (const who of STRANGERS)
  test(`as ${who} of another school: what is about one of our things is not there`, async ({ page }) => {
    test.setTimeout(300_000);
    await signIn(page, who);
    const roles = MARROWFIELD.people.find(({ email }) => email.startsWith(`${who}@`))?.roles ?? [];
    let asked = 0;
    for (const screen of screens) {
      const path = await pathOf(screen, process.env['DATABASE_URL'] ?? '');
      if (path === null || !screen.access || screen.access === 'anybody' || !screen.route.includes('['))
        continue;
      asked += 1;
      const came = await open(page.request, path);
      expect
        .soft({ path, came })
        .toEqual({ path, came: mayOpen(screen.access, roles) ? 'not found' : 'not allowed' });
    }
    expect(asked).toBeGreaterThan(25);
  });
