import { gzipSync } from 'node:zlib';
import { build } from 'esbuild';
import { describe, expect, it } from 'vitest';

/** 46 kB when written; with the general build of the formula library it would be above 90 kB. */
const LARGEST_ZIPPED_BYTES = 55_000;

describe('the size of the quantity parser', () => {
  it('stays small when bundled, so that a window opens quickly', async () => {
    const bundle = await build({
      entryPoints: ['core/quantities/parse.ts'],
      bundle: true,
      minify: true,
      write: false,
      format: 'esm',
      mainFields: ['module', 'main'],
      logLevel: 'silent',
    });
    const zipped = gzipSync(bundle.outputFiles[0]!.contents).length;
    expect(zipped).toBeGreaterThan(10_000);
    expect(zipped).toBeLessThan(LARGEST_ZIPPED_BYTES);
  });
});
