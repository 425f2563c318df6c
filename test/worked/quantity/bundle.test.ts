import { gzipSync } from 'node:zlib';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { describe, expect, it } from 'vitest';

const at = (path: string): string => fileURLToPath(new URL(`../../../packages/${path}`, import.meta.url));

/** What a page would load for these names: bytes and, of the modules that end up in it, those of mathjs. */
async function bundled(names: string): Promise<{ gzip: number; mathjs: number }> {
  const { outputFiles, metafile } = await build({
    stdin: { contents: `export { ${names} } from '${at('worked/src/quantity/index.ts')}';`, resolveDir: at('worked') },
    alias: { loomwright: at('loomwright/src/index.ts'), 'loomwright/table': at('loomwright/src/table/index.ts') },
    bundle: true,
    minify: true,
    format: 'esm',
    target: 'es2022',
    write: false,
    metafile: true,
    logLevel: 'silent',
  });
  const [output] = Object.values(metafile.outputs);
  const used = Object.entries(output?.inputs ?? {}).filter(([, { bytesInOutput }]) => bytesInOutput > 0);
  return {
    gzip: gzipSync(outputFiles[0]?.contents ?? '', { level: 9 }).length,
    mathjs: used.filter(([path]) => path.includes('/mathjs/')).length,
  };
}

describe('edges', () => {
  it('what a page needs before anyone types a unit comes without mathjs, in a few kB', async () => {
    const names = 'formatQuantity, formatParts, formatNumber, unitChoices, fieldUnit, nearWords, QuantityError';
    const { gzip, mathjs } = await bundled(names);
    expect(mathjs).toBe(0);
    expect(gzip).toBeLessThanOrEqual(6 * 1024);
  });

  it('reading quantities takes a third of what mathjs takes for its own unit function', async () => {
    const { gzip, mathjs } = await bundled('parseQuantity, parseSize');
    expect(mathjs).toBeGreaterThan(0);
    expect(gzip).toBeLessThanOrEqual(23 * 1024);
  });

  it('formulas are loaded only by those who ask for them', async () => {
    const { gzip } = await bundled('math');
    expect(gzip).toBeGreaterThan(35 * 1024);
    expect(gzip).toBeLessThanOrEqual(56 * 1024);
  });
});
