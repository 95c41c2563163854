import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    testTimeout: 60_000,
    hookTimeout: 120_000,
    // Two cores on the machines this runs on; the browser project gets its own run (see infra/local/commands/test.ts).
    maxWorkers: 2,
    // In CI, where a test that fails must fail again; elsewhere each run looks at other cases.
    setupFiles: process.env['PROPERTY_SEED'] === undefined ? [] : ['tests/support/propertySeed.ts'],
    // Tests pull the embedded store away in the middle of its reads, and it then throws from a stream of its own that
    // nobody can listen to. This one error of that store's database is not a failure; any other still is.
    onUnhandledError: (error) => ('code' in error ? error.code !== 'LEVEL_ITERATOR_NOT_OPEN' : true),
  },
});
