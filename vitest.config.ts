import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    testTimeout: 30_000,
    hookTimeout: 60_000,
    // Two cores on the machines this runs on; the browser project gets its own run (see infra/local/commands/test.ts).
    maxWorkers: 2,
  },
});
