import { defineConfig } from 'vitest/config';

const resolve = {
  alias: [
    // Outside Next the marker package throws on import; its own empty half stands in.
    { find: /^server-only$/, replacement: `${import.meta.dirname}/node_modules/server-only/empty.js` },
    { find: /^@\//, replacement: `${import.meta.dirname}/` },
  ],
};

/**
 * `rules` is pure and quick and runs under two zones (lib/operate/run-tests.ts sets TZ); `services` runs on a real
 * PostgreSQL, a copy of one migrated template for each test file that asks for it.
 */
export default defineConfig({
  test: {
    projects: [
      {
        resolve,
        test: {
          name: 'rules',
          include: ['tests/{rules,outside,properties}/**/*.test.ts'],
          testTimeout: 30_000,
        },
      },
      {
        resolve,
        test: {
          name: 'services',
          // Letters go out only where a test asks for it, whatever the developer's own environment says.
          env: { SMTP_URL: '', MAIL_OUTBOX_DIR: '', MAIL_FROM: '', LOG_LEVEL: 'error' },
          include: ['tests/{services,access}/**/*.test.ts'],
          globalSetup: ['tests/fixtures/server.ts'],
          pool: 'forks',
          maxWorkers: 2,
          testTimeout: 60_000,
          hookTimeout: 120_000,
        },
      },
    ],
  },
});
