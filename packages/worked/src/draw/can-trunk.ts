import type { CanStub } from 'loomwright';
import { drawing, element, ink, label } from './svg.js';

export interface CanTrunkInput {
  readonly trunkM: number;
  readonly terminatorPlacesM: readonly number[];
  readonly stubs: readonly CanStub[];
  /** Most length of a stub in m, or null where no rule names one. */
  readonly mostStubM: number | null;
  /** Width in px. */
  readonly width: number;
}

const LEFT = 16;
const TRUNK_Y = 70;
/** A stub is drawn to the trunk's scale where it can be, and shrunk with all others where it would leave the picture. */
const DEEPEST = 70;
const ROW = 18;
/** Text on a line keeps the line off its letters. */
const halo = { stroke: ink.ground, 'stroke-width': 4, 'paint-order': 'stroke' } as const;

/**
 * A CAN line to scale: the trunk, its terminators, each stub at its place and of its length. A stub that is longer
 * than the rule allows is dashed, red and says so.
 *
 * @param input trunk, terminators, stubs, the longest stub allowed, width
 * @returns SVG
 */
export function canTrunk(input: CanTrunkInput): string {
  const { trunkM, terminatorPlacesM, stubs, mostStubM, width } = input;
  const scale = trunkM > 0 ? (width - 2 * LEFT) / trunkM : 0;
  const x = (placeM: number): number => (trunkM > 0 ? LEFT + placeM * scale : width / 2);
  const longest = Math.max(0.001, ...stubs.map(({ lengthM }) => lengthM));
  const stubScale = Math.min(scale > 0 ? scale : DEEPEST / longest, DEEPEST / longest);
  const ordered = [...stubs].sort((a, b) => a.positionM - b.positionM);
  const depth = longest * stubScale;
  const lines: string[] = [];
  const names = ordered.map(({ name, positionM, lengthM }, i) => {
    const tooLong = mostStubM !== null && lengthM > mostStubM;
    const colour = tooLong ? ink.red : ink.copper;
    const end = TRUNK_Y + Math.max(lengthM * stubScale, 2);
    const textY = TRUNK_Y + depth + 30 + (i % 3) * ROW;
    const anchor = x(positionM) > width * 0.75 ? 'end' : x(positionM) < width * 0.25 ? 'start' : 'middle';
    const words = `${name}, ${Math.round(lengthM * 100)}\u202fcm${tooLong ? ': too long' : ''}`;
    lines.push(
      element('line', {
        x1: x(positionM),
        y1: TRUNK_Y,
        x2: x(positionM),
        y2: end,
        stroke: colour,
        'stroke-width': 3,
        'stroke-dasharray': tooLong ? '6 4' : undefined,
      }),
      element('line', { x1: x(positionM), y1: end, x2: x(positionM), y2: textY - 13, stroke: ink.rule }),
      element('circle', { cx: x(positionM), cy: TRUNK_Y, r: 4, fill: ink.text }),
    );
    return label(x(positionM), textY, words, { 'text-anchor': anchor, fill: tooLong ? ink.red : ink.text, ...halo });
  });
  const ends = terminatorPlacesM.map((placeM) =>
    [
      element('rect', {
        x: x(placeM) - 7,
        y: TRUNK_Y - 30,
        width: 14,
        height: 26,
        fill: ink.ground,
        stroke: ink.verdigris,
        'stroke-width': 2,
      }),
      label(x(placeM), TRUNK_Y - 38, 'terminator', {
        'text-anchor': placeM > trunkM / 2 ? 'end' : 'start',
        dx: placeM > trunkM / 2 ? 8 : -8,
        fill: ink.verdigris,
      }),
    ].join(''),
  );
  const trunk = element('line', {
    x1: x(0),
    y1: TRUNK_Y,
    x2: x(trunkM),
    y2: TRUNK_Y,
    stroke: ink.text,
    'stroke-width': 4,
  });
  const scaleText = stubScale < scale ? 'Trunk and stubs each to a scale of their own' : 'To scale';
  return drawing(
    width,
    TRUNK_Y + depth + 30 + 3 * ROW,
    'CAN line',
    `${trunkM} m of trunk, ${terminatorPlacesM.length} terminators, stubs: ${ordered.map(({ name, lengthM }) => `${name} ${lengthM} m`).join(', ') || 'none'}`,
    trunk,
    ...ends,
    ...lines,
    ...names,
    label(width / 2, 20, `${trunkM}\u202fm of trunk. ${scaleText}`, { 'text-anchor': 'middle', fill: ink.soft }),
  );
}
