import { describe, expect, it } from 'vitest';
import {
  bendAtTerminals,
  bendCoaxBundle,
  bendH05vk,
  bendMultiConductor,
  bendPolyimide,
  bendRadius,
  bendSingleWire,
  bendThinWall,
  bendWelding,
  type BendRule,
} from 'loomwright';
import { expectInputError } from '../support/edge.js';
import { transcribed, type Citation } from '../support/published.js';

describe('published', () => {
  const rows: readonly (readonly [BendRule, number, number, Citation])[] = [
    [bendSingleWire, 10, 10, { source: 'army-tm-1-1500-204-23-4', place: 'bend radius of wires', status: 'published' }],
    [bendAtTerminals, 3, 3, { source: 'ac-43-13-1b-dressing', place: 'bend radius with support', status: 'memory' }],
    [bendMultiConductor, 6, 10, { source: 'nasa-std-8739-4', place: '7.3.21', status: 'published' }],
    [bendPolyimide, 10, 15, { source: 'nasa-std-8739-4', place: '7.3.21', status: 'published' }],
    [bendThinWall, 5, 5, { source: 'common-practice', place: '3 to 5 diameters, the larger', status: 'memory' }],
    [bendH05vk, 4, 4, { source: 'cable-bend-data', place: 'H05V-K, fixed', status: 'published' }],
    [bendWelding, 6, 6, { source: 'cable-bend-data', place: 'welding cable, flexed', status: 'published' }],
    [bendCoaxBundle, 10, 10, { source: 'ac-43-13-1b-dressing', place: 'bundles with coaxial cable', status: 'memory' }],
  ];
  for (const [rule, once, long, cite] of rows) {
    transcribed(`${rule.title}: ${once} and ${long} diameters`, cite, () =>
      expect(bendRadius({ rule, outerDiameterMm: 2 })).toEqual({
        bendRadiusMm: 2 * once,
        longTermRadiusMm: 2 * long,
        source: cite.source,
        sourceStatus: cite.status,
      }),
    );
  }
});

describe('laws', () => {
  it('a bend that stays is never tighter than one for a while', () => {
    for (const rule of [bendSingleWire, bendMultiConductor, bendPolyimide, bendThinWall, bendWelding]) {
      const { bendRadiusMm, longTermRadiusMm } = bendRadius({ rule, outerDiameterMm: 7.3 });
      expect(longTermRadiusMm).toBeGreaterThanOrEqual(bendRadiusMm);
    }
  });
});

describe('edges', () => {
  it('refuses nonsense with the field that is at fault', () => {
    expectInputError(() => bendRadius(undefined as never), 'input', 'object');
    expectInputError(() => bendRadius({ outerDiameterMm: 2 } as never), 'rule', 'missing');
    expectInputError(() => bendRadius({ rule: '10 D' as never, outerDiameterMm: 2 }), 'rule', 'object');
    for (const value of [0, -1, NaN, Infinity, 'abc', undefined]) {
      expectInputError(() => bendRadius({ rule: bendWelding, outerDiameterMm: value as number }), 'outerDiameterMm');
    }
  });
});
