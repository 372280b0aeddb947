import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: new URL('../..', import.meta.url).pathname,
  cacheDir: 'node_modules/.cache/vitest',
  test: {
    include: ['test/{core,reference,rules,electron,renderer}/**/*.test.ts'],
    environment: 'node',
    passWithNoTests: false,
  },
});
