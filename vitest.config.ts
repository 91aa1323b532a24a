import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: ['dist/**', 'node_modules/**'],
    setupFiles: ['tests/helpers/repeatable.ts'],
    globalSetup: ['tests/helpers/buildOnce.ts'],
    env: { TZ: 'UTC' },
    testTimeout: 120_000,
    hookTimeout: 60_000,
  },
});
