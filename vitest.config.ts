import { defineConfig } from 'vitest/config';

/** What runs a second time, on PostgreSQL: whatever opens a store, unless it is about the file itself. */
const onPostgres = [
  'tests/postgres/**/*.test.ts',
  'tests/unit/store/**/*.test.ts',
  'tests/unit/reminders/{asked,morning,unlogged}.test.ts',
  'tests/property/{store*,isolation}.test.ts',
  'tests/attack/permissions/*.test.ts',
  'tests/e2e/{morning,terminalEvening}.test.ts',
];
const aboutFiles = ['brokenFile', 'ownership', 'migrate', 'rebuild'].map(
  (name) => `tests/unit/store/${name}.test.ts`,
);
const not = ['dist/**', 'node_modules/**'];

export default defineConfig({
  test: {
    setupFiles: ['tests/helpers/repeatable.ts'],
    env: { TZ: 'UTC' },
    // Every core: most tests wait for disks, browsers and processes.
    maxWorkers: '100%',
    testTimeout: 120_000,
    hookTimeout: 60_000,
    // A program waits a second and more before it tries again.
    expect: { poll: { timeout: 20_000 } },
    projects: [
      {
        extends: true,
        test: {
          name: 'files',
          include: ['tests/**/*.test.ts'],
          exclude: [...not, 'tests/postgres/**'],
          globalSetup: ['tests/helpers/buildOnce.ts'],
        },
      },
      {
        extends: true,
        test: {
          name: 'postgres',
          include: onPostgres,
          exclude: [...not, ...aboutFiles],
          globalSetup: ['tests/helpers/postgres/globalSetup.ts'],
        },
      },
    ],
  },
});
