import { defineConfig, devices } from '@playwright/test';

const baseURL = process.env['WHEELCHOCK_BASE_URL'];
if (baseURL === undefined) {
  throw new Error(
    'The journeys need a built server with the demo in its database. Run them with: npm test -- journeys',
  );
}

const executablePath = process.env['WHEELCHOCK_CHROMIUM'];

/**
 * Work of the office and of the desk that is done at a table. That these screens fit and can be used on a phone as well is
 * asked of every page by screens.spec.ts.
 */
const AT_A_TABLE = [
  'account',
  'day',
  'feeds',
  'fleet',
  'history',
  'house-rules',
  'insight',
  'languages',
  'lists',
  'papers',
  'people',
  'plans',
].map((name) => `**/${name}.spec.ts`);

/** Set by lib/operate/run-tests.ts, which starts the server and finds a browser. */
export default defineConfig({
  testDir: 'tests/journeys',
  outputDir: 'test-results',
  workers: 1,
  retries: 0,
  fullyParallel: false,
  forbidOnly: process.env['CI'] !== undefined,
  // Two lanes share the machine.
  timeout: 150_000,
  expect: { timeout: 20_000 },
  use: {
    baseURL,
    serviceWorkers: 'block',
    // A trace takes a quarter of the time, and a machine that only prints keeps none.
    trace: process.env['CI'] === undefined ? 'retain-on-failure' : 'off',
    screenshot: 'only-on-failure',
    launchOptions: {
      ...(executablePath === undefined ? {} : { executablePath }),
      args: [
        '--no-sandbox',
        '--disable-gpu',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
        '--no-first-run',
      ],
    },
  },
  projects: [
    {
      name: 'phone',
      testIgnore: AT_A_TABLE,
      use: {
        ...devices['Desktop Chrome'],
        viewport: { width: 390, height: 844 },
        deviceScaleFactor: 2,
        hasTouch: true,
        isMobile: true,
      },
    },
    { name: 'desktop', use: { ...devices['Desktop Chrome'], viewport: { width: 1280, height: 800 } } },
  ],
});
