import type { PackedWire } from 'loomwright';
import { drawing, element, ink, label } from './svg.js';

export interface BundleSectionInput {
  /** Every wire in its place, as `packBundle` gives them. */
  readonly circles: readonly PackedWire[];
  /** What is written beside each entry of the list of wires, such as '9 × 1.9 mm'. */
  readonly names: readonly string[];
  /** Diameter of the circle around them in mm. */
  readonly packedDiameterMm: number;
  /** Diameter to reckon with in mm: what hands need. Drawn broken where it is wider. */
  readonly diameterMm: number;
  /** Bore of a sleeve, grommet or hole around it in mm; none unless given. */
  readonly boreMm?: number;
  /** Whether it fits that bore. */
  readonly fits?: boolean;
  /** Width in px: 360 on a phone, 640 or more on a desk. */
  readonly width: number;
  /** Writes a diameter. */
  readonly format: (diameterMm: number, round: 'up' | 'down' | 'nearest') => string;
}

const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';

/**
 * A bundle cut across: each wire with its copper, a letter for each size, the circle that geometry allows, the one that
 * hands need, and the bore that it is to go through.
 */
export function bundleSection(input: BundleSectionInput): string {
  const { circles, names, packedDiameterMm, diameterMm, boreMm, fits, format } = input;
  const width = Math.max(input.width, 240);
  const narrow = width < 480;
  const side = Math.min(narrow ? width - 16 : width * 0.52, 360);
  const scale = side / Math.max(packedDiameterMm, diameterMm, boreMm ?? 0);
  const middle = 8 + side / 2;
  const ring = (of: number, colour: string, dash?: string, weight = 1.25): string =>
    element('circle', {
      cx: middle,
      cy: middle,
      r: (of / 2) * scale,
      fill: 'none',
      stroke: colour,
      'stroke-width': weight,
      'stroke-dasharray': dash,
    });
  const bore = fits === false ? ink.red : ink.verdigris;
  const shapes = [
    ...(boreMm === undefined ? [] : [ring(boreMm, bore, undefined, 2)]),
    ring(diameterMm, ink.text, '5 3'),
    ...(packedDiameterMm < diameterMm * 0.999 ? [ring(packedDiameterMm, ink.soft, '1 3')] : []),
    ...circles.map((wire) => drawWire(wire, middle, scale)),
  ];
  const lines: { text: string; colour: string; dash?: string; letter?: string }[] = [
    ...names.map((text, i) => ({ text, colour: ink.copper, letter: LETTERS[i] ?? '·' })),
    { text: `${format(diameterMm, 'up')} to reckon with`, colour: ink.text, dash: '5 3' },
  ];
  if (packedDiameterMm < diameterMm * 0.999) {
    lines.push({ text: `${format(packedDiameterMm, 'nearest')} packed as drawn`, colour: ink.soft, dash: '1 3' });
  }
  if (boreMm !== undefined) {
    const verdict = fits === undefined ? '' : fits ? ': fits' : ': does not fit';
    lines.push({ text: `${format(boreMm, 'down')} bore${verdict}`, colour: bore });
  }
  const left = narrow ? 8 : side + 40;
  const top = narrow ? side + 36 : middle - (lines.length - 1) * 13;
  lines.forEach(({ text, colour, dash, letter }, i) => {
    const y = top + 26 * i;
    shapes.push(
      letter === undefined
        ? element('line', {
            x1: left,
            x2: left + 22,
            y1: y,
            y2: y,
            stroke: colour,
            'stroke-width': 2,
            'stroke-dasharray': dash,
          })
        : label(left + 11, y + 5, letter, { 'text-anchor': 'middle', 'font-weight': 600 }),
      label(left + 34, y + 5, text, { fill: letter === undefined ? colour : ink.text }),
    );
  });
  const height = narrow ? top + 26 * lines.length - 4 : Math.max(side + 16, top + 26 * lines.length);
  const parts = `${names.join(', ')}; ${format(diameterMm, 'up')} to reckon with`;
  const through = boreMm === undefined ? '' : `, through a bore of ${format(boreMm, 'down')}`;
  return drawing(width, height, 'Bundle cut across', `${parts}${through}`, ...shapes);
}

function drawWire({ xMm, yMm, outerDiameterMm, wireIndex }: PackedWire, middle: number, scale: number): string {
  const x = middle + xMm * scale;
  const y = middle - yMm * scale;
  const r = (outerDiameterMm / 2) * scale;
  const insulation = element('circle', {
    cx: x,
    cy: y,
    r: Math.max(r - 0.75, 0.5),
    fill: ink.ground,
    stroke: ink.text,
    'stroke-width': 1,
  });
  const copper = element('circle', {
    cx: x,
    cy: y,
    r: r * 0.68,
    fill: ink.copper,
    'fill-opacity': r < 9 ? 0.75 : 0.22,
  });
  const letter = label(x, y + 4.5, LETTERS[wireIndex] ?? '·', {
    'text-anchor': 'middle',
    'font-size': r < 13 ? 11 : 13,
  });
  return insulation + copper + (r < 9 ? '' : letter);
}
