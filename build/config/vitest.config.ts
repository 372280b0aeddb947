import { defineConfig } from 'vitest/config';

/** Where build/scripts/count-tests.mjs finds the results of a run on the build machine. */
const RESULTS = 'node_modules/.cache/test-results/unit.json';

export default defineConfig({
  root: new URL('../..', import.meta.url).pathname,
  cacheDir: 'node_modules/.cache/vitest',
  test: {
    include: ['test/{core,reference,rules,electron,renderer,fuzz}/**/*.test.ts'],
    environment: 'node',
    // a loaded machine must not turn a slow property test into a failure
    testTimeout: 120_000,
    hookTimeout: 120_000,
    passWithNoTests: false,
    reporters: process.env['CI'] ? ['default', ['json', { outputFile: RESULTS }]] : ['default'],
  },
});
