import { formatQuantity } from '@loomwright/worked/quantity';
import { type Attributes, drawing, element, escapeText, ink, label } from '@loomwright/worked/draw';
import type { LoomPlan, PlannedBundle } from '../loom/plan-type.js';
import { legend } from './legend.js';
import { type Area, around, freeArea, type Spot, type Stroke } from './placing.js';
import { layOut, LINE, placeLabel, type SheetPlan, TEXT, textWidth } from './sheet-plan.js';
import { heatScale, type Judged, type Scale, type Shade, voltScale } from './shade.js';

/** How a loom is drawn. */
export interface DrawLoomOptions {
  /** Width in px: 360 on a phone, 640 or more on a desk. */
  readonly width: number;
  /** `volts`: volts lost of what may be lost. `heat`: temperature of the hottest copper. */
  readonly colourBy: 'volts' | 'heat';
}

/** A trunk as drawn. */
interface Trunk {
  readonly bundle: PlannedBundle;
  readonly worst: Judged | null;
  readonly stroke: Stroke;
}

/**
 * The loom of a planned vehicle from above, to scale: trunks as straight lines between their places, as wide as their
 * bundles are thick (enlarged), coloured by the worst circuit in each. Colour, dash and mark say the same. The nose
 * points to the left, on a narrow sheet to the top.
 *
 * @param plan what `planLoom` answered
 * @param options width in px, and what the trunks are coloured by
 * @returns the drawing as SVG, in the inks of the house
 * @throws nothing: a width below 240 px is taken as 240
 * @source the plan's own
 */
export function drawLoom(plan: LoomPlan, options: DrawLoomOptions): string {
  const width = Math.max(options.width, 240);
  const scale = options.colourBy === 'volts' ? voltScale() : heatScale(plan);
  const names = Object.keys(plan.loom.places).sort();
  const sheet = layOut(plan, names, width);
  const trunks = trunksOf(plan, scale, sheet);
  const strokes = trunks.map(({ stroke }) => stroke);
  const dots = names.map((name) => dotArea(sheet.put(name)));
  const taken: Area[] = [...dots];
  const { frame } = sheet;
  const missing: string[] = [];
  const placeLabels = names.map((name) => {
    const below = width < 560 ? '' : scale.placeText(plan, name);
    const area = freeArea(
      { frame, strokes, taken },
      around(sheet.put(name), textWidth([name, below]), below === '' ? LINE : 2 * LINE, [11, 20, 32, 46, 64]),
    );
    if (area === null) {
      missing.push(name);
      return '';
    }
    taken.push(area);
    return placeLabel(sheet.put(name), area, name, below);
  });
  const keyed = missing.map((name, i) => {
    const text = String(i + 1);
    const area = freeArea({ frame, strokes, taken }, around(sheet.put(name), textWidth([text]), LINE, [9, 14, 20, 30]));
    if (area !== null) taken.push(area);
    const { x, y } = area ?? { x: sheet.put(name).x + 9, y: sheet.put(name).y - LINE / 2 };
    return label(x, y + 12, text, { 'font-size': TEXT, 'font-weight': 600 });
  });
  const values = [...trunks]
    .sort((a, b) => (b.worst?.rank ?? -Infinity) - (a.worst?.rank ?? -Infinity))
    .map((trunk) => valueLabel(trunk, scale, frame, strokes, taken));
  const key = legend({
    title: scale.title,
    shades: scale.shades,
    missing: missing.map((name, i) => `${i + 1} ${name}`),
    thickestMm: Math.max(0, ...plan.bundles.map(({ diameterMm }) => diameterMm ?? 0)),
    thickestPx: sheet.thickestPx,
    width,
    top: frame.y + frame.height + 12,
  });
  const worst = trunks.reduce<Trunk | null>((found, trunk) => {
    if (trunk.worst === null) return found;
    return trunk.worst.rank > (found?.worst?.rank ?? -Infinity) ? trunk : found;
  }, null);
  return drawing(
    width,
    key.bottom,
    `Loom of ${plan.vehicle.name} from above`,
    `${trunks.length} trunks between ${names.length} places. ${scale.title}.${worst === null ? '' : ` Worst: ${hint(worst, scale)}.`}`,
    ...sheet.lines,
    ...trunks.map((trunk) => drawTrunk(trunk, scale)),
    ...names.map((name) => dot(plan, name, sheet.put(name))),
    ...placeLabels,
    ...keyed,
    ...values,
    ...key.shapes,
  );
}

function trunksOf(plan: LoomPlan, scale: Scale, sheet: SheetPlan): Trunk[] {
  const circuitOf = new Map(plan.wires.map(({ name, circuit }) => [name, circuit]));
  const judged = new Map(plan.circuits.map((circuit) => [circuit.name, scale.of(circuit)]));
  const thickest = Math.max(1e-9, ...plan.bundles.map(({ diameterMm }) => diameterMm ?? 0));
  return plan.bundles.map((bundle) => {
    const found = new Set(bundle.wires.map((wire) => circuitOf.get(wire) ?? ''));
    const worst = [...found].reduce<Judged | null>((most, name) => {
      const one = judged.get(name) ?? null;
      return one !== null && (most === null || one.rank > most.rank) ? one : most;
    }, null);
    const widthPx = Math.max(1.6, (sheet.thickestPx * (bundle.diameterMm ?? 0)) / thickest);
    return { bundle, worst, stroke: { from: sheet.put(bundle.from), to: sheet.put(bundle.to), widthPx } };
  });
}

function drawTrunk(trunk: Trunk, scale: Scale): string {
  const { from, to, widthPx } = trunk.stroke;
  const shade = trunk.worst === null ? null : scale.shades[trunk.worst.index];
  const line = (rest: Attributes): string =>
    element('line', { x1: from.x, y1: from.y, x2: to.x, y2: to.y, 'stroke-width': widthPx, ...rest });
  const title = element('title', {}, escapeText(hint(trunk, scale)));
  if (shade === null) return element('g', {}, title, line({ stroke: ink.soft, 'stroke-dasharray': '1 3' }));
  const dash = dashes(shade, widthPx);
  const whole = dash === undefined ? '' : line({ stroke: shade.colour, 'stroke-opacity': 0.3 });
  return element('g', {}, title, line({ stroke: shade.colour, 'stroke-dasharray': dash }), whole);
}

/** Dash and gap grow with the line, but a thin line keeps dashes that can be seen. */
function dashes({ dash }: Shade, widthPx: number): string | undefined {
  if (dash === null) return undefined;
  const unit = Math.max(widthPx, 5);
  return dash.map((part) => (part * unit).toFixed(1)).join(' ');
}

function hint({ bundle, worst }: Trunk, scale: Scale): string {
  const wires = bundle.wireCount === 1 ? '1 wire' : `${bundle.wireCount} wires`;
  const thick = bundle.diameterMm === null ? '' : `, ${formatQuantity(bundle.diameterMm, 'mm', { round: 'up' })} thick`;
  const shade = worst === null ? null : scale.shades[worst.index];
  const verdict =
    worst === null || shade === null ? '' : `; ${worst.circuit.name} ${scale.format(worst.value)}, ${shade.words}`;
  return `${bundle.route}: ${wires}${thick}${verdict}`;
}

/** The value of a trunk beside its middle, where there is room. */
function valueLabel(trunk: Trunk, scale: Scale, frame: Area, strokes: readonly Stroke[], taken: Area[]): string {
  if (trunk.worst === null) return '';
  const { stroke } = trunk;
  const shade = scale.shades[trunk.worst.index];
  const text = `${shade.mark} ${scale.format(trunk.worst.value)}`;
  const gap = stroke.widthPx / 2 + 5;
  const spots = [0.5, 0.36, 0.64, 0.25, 0.75].map((t) => ({
    x: stroke.from.x + (stroke.to.x - stroke.from.x) * t,
    y: stroke.from.y + (stroke.to.y - stroke.from.y) * t,
  }));
  const area = freeArea(
    { frame, strokes, taken },
    spots.flatMap((spot) => around(spot, textWidth([text]), LINE - 2, [gap, gap + 7])),
    0,
  );
  if (area === null) return '';
  taken.push(area);
  return label(area.x, area.y + 11, text, {
    'font-size': 12,
    'font-weight': trunk.worst.index === 3 ? 700 : 400,
    fill: shade.colour,
    stroke: ink.ground,
    'stroke-width': 3,
    'paint-order': 'stroke',
  });
}

/** The sign of a place: a full square with a battery, an open one with a box or controller, else a ring. */
function dot({ loom }: LoomPlan, name: string, { x, y }: Spot): string {
  const at = (things: Readonly<Record<string, { readonly place: string }>>): boolean =>
    Object.values(things).some(({ place }) => place === name);
  const battery = at(loom.supply.batteries);
  const shape = { fill: battery ? ink.text : ink.ground, stroke: ink.text, 'stroke-width': 1.5 };
  if (battery || at(loom.fuseBoxes) || at(loom.controllers)) {
    return element('rect', { x: x - 6, y: y - 6, width: 12, height: 12, ...shape });
  }
  return element('circle', { cx: x, cy: y, r: 5, ...shape });
}

function dotArea({ x, y }: Spot): Area {
  return { x: x - 7, y: y - 7, width: 14, height: 14 };
}
