import { join, relative } from 'node:path';
import { ESLint } from 'eslint';
import { describe, expect, it } from 'vitest';
import { houseConfig } from '../lint/eslint.mjs';
import { isUnitName } from '../lint/names.mjs';
import { root } from '../support/root.js';

const bad = join(root, 'test/gates/bad/lint');

describe('the linter bites', () => {
  it('finds each fault of the bad samples, and none in the good one', async () => {
    const eslint = new ESLint({ cwd: bad, overrideConfigFile: true, overrideConfig: houseConfig(bad) });
    const found: Record<string, string[]> = {};
    for (const { filePath, messages } of await eslint.lintFiles(['.'])) {
      const name = relative(bad, filePath).replace('packages/loomwright/src/conductor/', '');
      found[name] = messages.map(({ ruleId, line }) => `${line} ${ruleId}`).sort();
    }
    expect(found).toEqual({
      'good.ts': [],
      'index.ts': [],
      'arguments.ts': ['1 house/one-object', '5 house/one-object', '9 house/one-object'],
      'chance.ts': ['2 no-restricted-properties'],
      'class.ts': ['1 no-restricted-syntax'],
      'console.ts': ['2 no-console'],
      'default.ts': ['1 no-restricted-syntax'],
      'load.ts': ['2 no-restricted-syntax', '2 no-restricted-syntax'],
      'state.ts': ['1 no-restricted-syntax'],
      'unit.ts': [2, 3, 4, 5, 6].map((line) => `${line} house/unit-suffix`),
      'untyped.ts': [
        '2 @typescript-eslint/no-explicit-any',
        '2 @typescript-eslint/no-unsafe-assignment',
        '3 @typescript-eslint/no-unsafe-member-access',
        '3 @typescript-eslint/no-unsafe-return',
      ],
      'world.ts': Array.from({ length: 6 }, () => '2 no-restricted-globals'),
      'writable.ts': ['2 house/readonly-fields'],
      'test/skipped.ts': [10, 11, 12, 14].map((line) => `${line} no-restricted-syntax`),
    });
  });
});

describe('unit names', () => {
  it.each(['currentA', 'outLengthM', 'areaMm2', 'resistanceOhmPerM', 'i2tA2s', 'resistivity20OhmMm2PerM', 'tempRiseK'])(
    'takes %s',
    (name) => {
      expect(isUnitName(name)).toBe(true);
    },
  );
  it.each(['dropFraction', 'temperatureFactor', 'steps', 'wireCount', 'ratio'])(
    'takes %s, without a dimension',
    (name) => {
      expect(isUnitName(name)).toBe(true);
    },
  );
  it.each(['length', 'current', 'A', 'area', 'lengthMetres', 'amps', 'FACTOR', 'spectrum', 'media'])(
    'refuses %s',
    (name) => {
      expect(isUnitName(name)).toBe(false);
    },
  );
});
