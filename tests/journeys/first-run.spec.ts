/**
 * Opening day of a school that is not the demo: from the token on the console to an aircraft the desk calls go, on an empty
 * database, by the screens alone. One after another, as a manager does it who is alone with the papers of one aircraft; each
 * test goes on where the one before ended. Sources: issue 6, first point ("set-up is done when the engine stops asking"); what
 * day VFR needs is 91.203, 91.205(b), 91.207, 91.409, 91.413 and 43.3.
 */
import { expect, test, type Browser, type Locator, type Page } from '@playwright/test';
import { openEmptySchool, type EmptySchool } from '../fixtures/empty-school';

const PASSWORD = 'seven grey herons at dusk';
const MANUAL = 'Invented flight manual, section 6, revision B';
const REGISTRATION = 'N0482F';
let school: EmptySchool;
/** The manager's own window, open from the token to the end. */
let manager: Page;
/** How many facts the engine lacked when it was last looked at. */
let lacked = Number.POSITIVE_INFINITY;

test.describe.configure({ mode: 'serial' });
test.beforeAll(async ({ browser }, info) => {
  test.setTimeout(180_000);
  school = await openEmptySchool(info.project.name);
  manager = await windowOf(browser);
});
test.afterAll(async () => {
  await manager?.context().close();
  await school?.close();
});

const windowOf = async (browser: Browser): Promise<Page> =>
  (await browser.newContext({ baseURL: new URL(school.address).origin })).newPage();

/** One answer of a group of choices. */
const choose = (page: Page | Locator, question: string | RegExp, answer: string): Promise<void> =>
  page.getByRole('radiogroup', { name: question }).getByRole('radio', { name: answer, exact: true }).check();

async function signed(submit: string, within: Page | Locator = manager): Promise<void> {
  await within.getByLabel('Your password, to sign').fill(PASSWORD);
  await within.getByRole('button', { name: submit }).click();
}

const day = (days: number): string => new Date(Date.now() + days * 86_400_000).toISOString().slice(0, 10);

const step = (title: string) =>
  manager
    .getByRole('listitem')
    .filter({ has: manager.getByRole('heading', { level: 3, name: title, exact: true }) });

/** The office's first page, and from it the way of a step. */
async function goOn(title: string, link: string): Promise<void> {
  await manager.getByRole('link', { name: 'Office', exact: true }).click();
  await step(title).getByRole('link', { name: link }).click();
}

/** The engine asks for fewer facts than when it was asked before. */
async function expectFewerLacking(): Promise<void> {
  await manager.goto('/office');
  const asks = await manager.getByText(/^The engine still lacks \d+ fact/).innerText();
  const now = Number(/\d+/.exec(asks)?.[0]);
  expect(now).toBeGreaterThan(0);
  expect(now).toBeLessThan(lacked);
  lacked = now;
}

async function expectAtTheDesk(answer: 'no go' | 'go'): Promise<void> {
  await manager.goto('/desk');
  await expect(
    manager.getByRole('link', { name: `${REGISTRATION} Day VFR, for hire: ${answer}`, exact: true }),
  ).toBeVisible();
}

/** A sitting with the documents: what `absent` names is not there, all else agrees. Then one signature. */
async function confirmEquipment(absent: RegExp | null): Promise<void> {
  await manager.getByLabel('Document you hold it against').fill(MANUAL);
  const all = Number(/of (\d+)/.exec(await manager.getByText(/^0 of \d+ decided$/).innerText())?.[1]);
  expect(all).toBeGreaterThan(10);
  for (let done = 1; done <= all; done += 1) {
    const item = await manager.getByRole('heading', { level: 2 }).first().innerText();
    const isThere = absent === null || !absent.test(item);
    await manager
      .getByRole('button', { name: isThere ? 'It agrees: next' : 'Not installed on this aircraft' })
      .press('Enter');
    await expect(manager.getByText(`${done} of ${all} decided`, { exact: true })).toBeVisible();
  }
  await signed(`Sign for ${all} items`);
  await expect(manager.getByText('Every item is confirmed.')).toBeVisible();
}

test('an address that is not complete says so, and what to do', async ({ page }) => {
  await page.goto(school.address.slice(0, -1));
  await expect(page.getByText('This address does not open the set-up page')).toBeVisible();
  await expect(page.getByText('npm run set-up-token')).toBeVisible();
  await expect(page.getByLabel('Password')).toHaveCount(0);
});

test('the token makes a school, its base and its manager, and the office says what comes next', async ({}, info) => {
  const page = manager;
  await page.goto(school.address);
  await page.getByLabel('Its name').fill('Fernhollow Flying Club');
  await choose(page, 'Is it certificated under part 141?', 'No');
  await page.getByRole('radio', { name: /US customary/ }).check();
  await page.getByLabel('Code, name or town').fill('KLSE');
  await page.getByRole('button', { name: /^KLSE/ }).click();
  await expect(page.getByLabel('Time zone')).toHaveValue('America/Chicago');
  await page.getByLabel('Your name').fill('Ada Fernhollow');
  // Another address for each project, should both run on one database.
  await page.getByLabel('E-mail address').fill(`ada.${info.project.name}.${Date.now()}@fernhollow.example`);
  await page.getByLabel('Password').fill('password1234');
  await page.getByRole('button', { name: 'Set up', exact: true }).click();
  // Refused in the browser or by the server; what was typed stays.
  await expect(page.getByText('Look at the time there and tick that it is right.').first()).toBeVisible();
  await page.getByRole('checkbox', { name: /I looked at the time there/ }).check();
  await page.getByRole('button', { name: 'Set up', exact: true }).click();
  // The lists of common passwords are read in for the first one that is judged.
  await expect(page.getByText(/easy to guess|many people use/).first()).toBeVisible({ timeout: 30_000 });
  await page.getByLabel('Password').fill(PASSWORD);
  await page.getByRole('button', { name: 'Set up', exact: true }).click();

  await expect(page).toHaveURL(/\/office$/, { timeout: 60_000 });
  await expect(page.getByRole('heading', { level: 3 })).toHaveCount(8);
  await expect(page.getByText('There is no aircraft yet.')).toBeVisible();

  // The base says in which airspace it lies.
  await page.getByRole('link', { name: 'To the bases' }).click();
  await page.getByRole('link', { name: 'Change KLSE' }).click();
  for (const question of [/91\.215\(b\)/, /91\.225/]) await choose(page, question, 'No');
  await choose(page, /Is IFR from here in controlled airspace/, 'Yes');
  await page.getByRole('button', { name: 'Save the base' }).click();
  await expect(page.getByText('Saved.')).toBeVisible({ timeout: 30_000 });
  await page.getByRole('link', { name: 'Office', exact: true }).click();
  await expect(step('Bases').getByText('Done', { exact: true })).toBeVisible();

  // It is left, and comes back by itself until it is done.
  await page.goto('/');
  await expect(page).toHaveURL(/\/office$/);
});

test('the token opens nothing more once it was used', async ({ page }) => {
  await page.goto(school.address);
  await expect(page.getByText('This address does not open the set-up page')).toBeVisible();
});

test('a mechanic and a pilot join by printed links, with their certificates entered', async ({ browser }) => {
  for (const person of [
    {
      name: 'Otto Birkmoor',
      role: /^Mechanic/,
      first: /\/bench/,
      certificate: 'Mechanic certificate',
      ratings: ['Airframe', 'Powerplant'],
    },
    {
      name: 'Pia Lindqvale',
      role: /^Pilot/,
      first: /\/ramp/,
      certificate: 'Pilot certificate',
      ratings: ['Airplane single-engine land'],
    },
  ]) {
    await goOn('People', 'To the people');
    await manager.getByRole('link', { name: 'Invite somebody' }).click();
    await manager.getByLabel('Name', { exact: true }).fill(person.name);
    const email = `${person.name.split(' ')[0]}.${Date.now()}@fernhollow.example`.toLowerCase();
    await manager.getByLabel('E-mail address').fill(email);
    await manager.getByRole('checkbox', { name: person.role }).check();
    await manager.getByRole('radio', { name: /On paper/ }).check();
    await manager.getByRole('button', { name: 'Invite' }).click();
    const link = await manager
      .getByRole('region', { name: `For ${person.name}` })
      .getByRole('code')
      .innerText();
    await manager.getByRole('link', { name: /Next: certificates/ }).click();
    await manager.getByText(`Enter: ${person.certificate}`).click();
    const form = manager.getByRole('form', { name: person.certificate });
    await form.getByLabel('Number').fill('0000417');
    if (person.certificate.startsWith('Pilot')) await form.getByLabel('Grade').selectOption('private');
    else await form.getByLabel('Recent experience vouched for through').fill(day(90));
    for (const rating of person.ratings)
      await form.getByRole('checkbox', { name: rating, exact: true }).check();
    await form.getByRole('button', { name: 'Enter the certificate' }).click();
    await expect(manager.getByText('0000417')).toBeVisible();

    const joined = await windowOf(browser);
    await joined.goto(link);
    await expect(
      joined.getByText(`${person.name}, you are invited to Fernhollow Flying Club.`),
    ).toBeVisible();
    await joined.getByLabel('New password').fill(PASSWORD);
    await joined.getByLabel('The same again').fill(PASSWORD);
    await joined.getByRole('button', { name: 'Set the password' }).click();
    await joined.getByRole('link', { name: 'Sign in' }).click();
    await joined.getByLabel('E-mail address').fill(email);
    await joined.getByLabel('Password', { exact: true }).fill(PASSWORD);
    await joined.getByRole('button', { name: 'Sign in' }).click();
    await expect(joined).toHaveURL(person.first);
    await joined.context().close();
  }
  await manager.getByRole('link', { name: 'Office', exact: true }).click();
  await manager.getByRole('button', { name: 'Everybody is here' }).click();
  await expect(manager.getByText('Called done by Ada Fernhollow.')).toBeVisible();
  // A person calls done what the facts cannot tell, and may take it back.
  await step('People').getByRole('button', { name: 'Not done after all' }).click();
  await manager.getByRole('button', { name: 'Everybody is here' }).click();
  await expect(step('People').getByText('Done', { exact: true })).toBeVisible();
});

test('a type and an aircraft of it: no go, and the engine says what it lacks', async () => {
  await goOn('Aircraft types', 'To the types');
  await manager.getByRole('link', { name: 'Add a type' }).click();
  const type = manager.getByRole('form', { name: 'Add a type' });
  await type.getByLabel('Name of the type').fill('Fernhollow 150');
  await type.getByLabel('Category', { exact: true }).selectOption('airplane');
  await type.getByLabel(/Category and class rating/).selectOption('airplane-single-engine-land');
  await type.getByLabel('Engines').fill('1');
  await choose(manager, 'Is the engine a turbine?', 'No');
  await type.getByLabel('Maximum takeoff weight').fill('2300');
  await choose(manager, /master minimum equipment list/, 'Yes');
  await type.getByLabel('Date of the type’s certification').fill('1956-06-01');
  await choose(manager, /certificated under part 23/, 'No');
  await choose(manager, /How is the engine cooled/, 'By air');
  for (const no of [/turbocharged/, /landing gear retract/, /fuses a pilot/]) await choose(manager, no, 'No');
  await type.getByLabel('Fuel tanks').fill('2');
  await type.getByLabel('Seats in all').fill('4');
  await type.getByLabel('Front seats').fill('2');
  await type.getByLabel('Document it is taken from').fill('Invented type certificate data sheet, revision 3');
  await signed('Sign and add the type');
  await expect(manager.getByText('Fernhollow 150 is added.')).toBeVisible();

  await manager.getByRole('link', { name: 'Add an aircraft' }).click();
  const aircraft = manager.getByRole('form', { name: 'Add an aircraft' });
  await aircraft.getByLabel('Registration').fill(REGISTRATION.toLowerCase());
  await aircraft.getByLabel('Serial number').fill('INVENTED-482');
  await choose(manager, /for hire/, 'Yes');
  await choose(manager, /standard airworthiness/, 'Yes');
  await aircraft.getByLabel('Date of manufacture').fill('1974-05-01');
  await aircraft.getByLabel('Hobbs').first().fill('1234.5');
  await aircraft.getByLabel('Tachometer').first().fill('4100.1');
  await aircraft.getByLabel('Total time in service').fill('4512.3');
  await choose(manager, /Which meter/, 'Tachometer');
  await aircraft.getByLabel('Document it is taken from').fill('Invented logbook, page 88');
  await signed('Sign and add the aircraft');
  await expect(manager.getByRole('heading', { level: 1, name: REGISTRATION })).toBeVisible();
  await expectFewerLacking();
  await expectAtTheDesk('no go');
});

test('the equipment of day VFR is held against the documents, item by item, and signed', async () => {
  await goOn('Equipment', 'To the equipment');
  await manager.getByRole('link', { name: 'Its equipment' }).click();
  await manager.getByRole('checkbox', { name: /Day VFR/ }).check();
  await manager.getByRole('button', { name: 'Put them on the list' }).click();
  await expect(manager.getByRole('heading', { level: 1, name: 'Confirm the equipment' })).toBeVisible();
  await confirmEquipment(null);
  await expectFewerLacking();
  await expectAtTheDesk('no go');
});

test('what night and IFR need is said too, and the engine asks no more about the equipment', async () => {
  await goOn('Equipment', 'To the equipment');
  await manager.getByRole('link', { name: 'Its equipment' }).click();
  await manager.getByText('Starting sets for a generic single').click();
  for (const set of [/Night VFR/, /^IFR/]) await manager.getByRole('checkbox', { name: set }).check();
  await manager.getByRole('button', { name: 'Put them on the list' }).click();
  // A day aircraft: no lights to be seen by, no gyros.
  await confirmEquipment(
    /Position lights|Landing light|Instrument lights|gyro|indicator|VOR|GPS|Pitot|Vacuum/,
  );
  await manager.getByRole('link', { name: 'Next: papers and inspections' }).click();
  await expect(
    manager.getByRole('heading', { level: 1, name: `${REGISTRATION}: Papers aboard` }),
  ).toBeVisible();
  await expectFewerLacking();
  await expect(step('Equipment').getByText('Done', { exact: true })).toBeVisible();
});

test('papers aboard, inspections last done, directives gone through', async () => {
  await goOn('Papers and inspections', 'To papers and inspections');
  await manager.getByRole('link', { name: `History of ${REGISTRATION}` }).click();
  await manager.getByRole('link', { name: 'To the papers' }).click();
  for (const paper of ['Airworthiness certificate', 'Registration', 'Flight manual', 'Weight and balance']) {
    await manager.getByText(new RegExp(`^Enter: ${paper}`)).click();
    await manager.getByLabel('Number or mark of the paper').fill(`Invented ${paper}`);
    if (paper === 'Registration') {
      await manager.getByLabel('Day of issue').fill(day(-400));
      await manager.getByLabel('Last day').fill(day(900));
    } else await choose(manager, 'Does it run out?', 'No');
    await choose(manager, 'Is it aboard?', 'Yes');
    await signed('Sign and enter the paper');
    await expect(manager.getByText(`Document: Invented ${paper}`)).toBeVisible();
  }
  await manager.getByRole('link', { name: 'Next: Inspections' }).click();
  await manager.getByText('The usual set', { exact: true }).click();
  for (const kind of [
    /^Annual/,
    /^100-hour/,
    /^Transponder/,
    /transmitter inspection/,
    /transmitter battery/,
  ])
    await manager.getByRole('checkbox', { name: kind }).check();
  await manager.getByLabel('Last good day of the battery').fill(day(300));
  await manager.getByRole('button', { name: 'Add these' }).click();
  await expect(manager.getByText('Added. Now say when each was last done.')).toBeVisible();
  for (const kind of [
    'Annual inspection',
    '100-hour inspection',
    'Transponder test',
    'Emergency locator transmitter inspection',
    'Emergency locator transmitter battery',
  ]) {
    const row = manager.getByRole('listitem').filter({ has: manager.getByText(kind, { exact: true }) });
    await row.getByText('Say when it was last done').click();
    await row.getByLabel('Day it was done').fill(day(-60));
    await row.getByLabel('Total time in service then').fill('4490.5');
    await row.getByLabel('Who approved it, as the record says').fill('Otto Birkmoor');
    await row.getByLabel('Kind of certificate').fill('inspection authorization');
    await row.getByLabel('Certificate number').fill('0000417');
    await row.getByLabel('Document that says so').fill('Airframe logbook, page 41');
    await choose(row, /hold what the law asks/, 'Yes');
    if (kind.endsWith('battery')) await row.getByLabel('New date on the part').fill(day(300));
    await signed('Sign and carry over', row);
    await expect(row.getByText('Document: Airframe logbook, page 41')).toBeVisible();
  }
  await expectFewerLacking();
  await expectAtTheDesk('no go');
  await goOn('Papers and inspections', 'To papers and inspections');
  await manager.getByRole('link', { name: `History of ${REGISTRATION}` }).click();
  await manager.getByRole('link', { name: 'To the directives' }).click();
  await manager.getByText('Sign a review', { exact: true }).click();
  await manager.getByLabel('Day of the review').fill(day(-3));
  await manager
    .getByLabel('List or record it was gone through by')
    .fill('Invented list of directives, revision 9');
  await signed('Sign the review');
  await expect(manager.getByText(/^Last on/)).toBeVisible();
});

test('the engine asks for nothing more, the desk says go for day VFR, and setting up is called done', async () => {
  await manager.goto('/office');
  await expect(manager.getByText('The engine asks for nothing more.')).toBeVisible();
  for (const title of [
    'Bases',
    'People',
    'Aircraft types',
    'Aircraft',
    'Equipment',
    'Papers and inspections',
  ])
    await expect(step(title).getByText('Done', { exact: true })).toBeVisible();
  await expectAtTheDesk('go');
  // What is known to be absent stays no go.
  for (const kind of ['Night VFR', 'Day IFR', 'Night IFR'])
    await expect(
      manager.getByRole('link', { name: `${REGISTRATION} ${kind}, for hire: no go`, exact: true }),
    ).toBeVisible();

  await goOn('Walkaround', 'To the walkaround lists');
  await manager.getByRole('link', { name: /Fernhollow 150/ }).click();
  await manager
    .getByLabel('Why this version?')
    .fill('Held against the flight manual; the starting list fits.');
  await manager.getByRole('button', { name: 'Save as version 1' }).click();
  await expect(manager.getByText('Version 1, current')).toBeVisible();
  await manager.goto('/desk/walkarounds');
  await manager.getByRole('link', { name: 'Back to setting up' }).click();
  await expect(step('Walkaround').getByText('Done', { exact: true })).toBeVisible();

  await goOn('Rules of the house', 'To the rules of the house');
  await manager.getByRole('link', { name: /Set a rule/ }).click();
  await manager.getByRole('link', { name: /night/i }).first().click();
  await manager.getByRole('radio', { name: /The whole fleet/ }).check();
  await manager.getByLabel('Why', { exact: true }).fill('We fly by day.');
  await manager.getByRole('button', { name: 'Set the rule' }).click();
  await expect(manager.getByText('The rule is set.')).toBeVisible();
  await manager.getByRole('link', { name: 'Office', exact: true }).click();
  await expect(step('Rules of the house').getByText('Done', { exact: true })).toBeVisible();

  await expect(manager.getByText('Everything is set up.')).toBeVisible();
  await manager.getByRole('button', { name: 'Done: start at the desk from now on' }).click();
  await expect(manager).toHaveURL(/\/desk$/);
  await expectAtTheDesk('go');
  await manager.goto('/');
  await expect(manager).toHaveURL(/\/desk$/);
});
