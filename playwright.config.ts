import { defineConfig, devices } from '@playwright/test';

const baseURL = process.env['WHEELCHOCK_BASE_URL'];
if (baseURL === undefined) {
  throw new Error(
    'The journeys need a built server with the demo in its database. Run them with: npm test -- journeys',
  );
}

const executablePath = process.env['WHEELCHOCK_CHROMIUM'];

/** Set by lib/operate/run-tests.ts, which starts the server and finds a browser. */
export default defineConfig({
  testDir: 'tests/journeys',
  outputDir: 'test-results',
  workers: 1,
  retries: 0,
  fullyParallel: false,
  forbidOnly: process.env['CI'] !== undefined,
  timeout: 90_000,
  expect: { timeout: 10_000 },
  use: {
    baseURL,
    serviceWorkers: 'block',
    trace: 'retain-on-failure',
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
