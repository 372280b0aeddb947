import { defineConfig } from 'vitest/config';

/** Where build/scripts/count-tests.mjs finds the results of a run on the build machine. */
const RESULTS = 'node_modules/.cache/test-results/journeys.json';

// Journeys share one browser and one built page, so they run one file after another.
export default defineConfig({
  root: new URL('../..', import.meta.url).pathname,
  cacheDir: 'node_modules/.cache/vitest',
  test: {
    include: ['test/journeys/**/*.journey.ts'],
    environment: 'node',
    globalSetup: ['test/journeys/build-page.ts'],
    fileParallelism: false,
    testTimeout: 60_000,
    hookTimeout: 60_000,
    // a busy machine reckons more slowly; what never comes still fails
    expect: { poll: { timeout: 10_000 } },
    passWithNoTests: false,
    reporters: process.env['CI'] ? ['default', ['json', { outputFile: RESULTS }]] : ['default'],
  },
});
