import { formatQuantity } from '@loomwright/worked/quantity';
import {
  drawing,
  element,
  escapeText,
  groundAmps,
  groundLine,
  groundPoint,
  groundShade,
  groundShades,
  groundVolts,
  ink,
  label,
} from '@loomwright/worked/draw';
import type { LoomPlan, PlannedState, PlannedWay } from '../loom/plan-type.js';
import { wrapped } from './legend.js';
import { type Area, around, freeArea, type Spot, type Stroke } from './placing.js';
import { layOut, LINE, placeLabel, TEXT, textWidth } from './sheet-plan.js';

/** How the grounds are drawn. */
export interface DrawGroundsOptions {
  /** Width in px: 360 on a phone, 640 or more on a desk. */
  readonly width: number;
  /** Name of the state whose volts and currents stand in the map; that with the most millivolts unless given. */
  readonly state?: string;
  /** Whether the millivolts of all states stand below; unless told otherwise, from 620 px on. */
  readonly table?: boolean;
}

const ROW = 21;
/** Least width for a table of all states below the map. */
const TABLE_FROM = 620;

/**
 * The grounds of a planned vehicle from above: points with their millivolts in one state, ways between them with their
 * milliohms and amperes, and below, where there is room, the millivolts of each point in all states. Colour and mark
 * say the same. Wires of controllers are left out; they are on the sheet.
 *
 * @param plan what `planLoom` answered
 * @param options width in px, the state, and whether all states stand below
 * @returns the drawing as SVG, in the inks of the house
 * @throws nothing: a width below 240 px is taken as 240, an unknown state as none given
 * @source the plan's own
 */
export function drawGrounds(plan: LoomPlan, options: DrawGroundsOptions): string {
  const width = Math.max(options.width, 240);
  const points = pointsOf(plan);
  const state = plan.states.find(({ name }) => name === options.state) ?? worstState(plan, points);
  const spots = spread(plan, points, width);
  const { frame, lines: vehicle, words } = layOut(plan, Object.keys(plan.loom.places).sort(), width);
  const at = (node: string): Spot => spots.get(node) ?? { x: 0, y: 0 };
  const ways = plan.ways.filter(({ kind, from, to }) => kind !== 'wire' && kind !== 'joint' && own(from) !== own(to));
  const strokes: Stroke[] = [];
  const drawn = ways.map((way) => {
    const [from, to] = [at(own(way.from)), at(own(way.to))];
    const currentA = state.currents[way.name] ?? 0;
    const over = way.bearsA !== null && Math.abs(currentA) > way.bearsA;
    const kind = way.kind === 'stray' ? 'stray' : way.kind === 'body' ? 'body' : 'strap';
    const line = groundLine({ x1: from.x, y1: from.y, x2: to.x, y2: to.y, kind, currentA, over, gone: false });
    strokes.push({ from, to, widthPx: line.widthPx });
    const hint = element('title', {}, escapeText(wayText(way, currentA, over)));
    return { way, currentA, over, line, from, to, svg: element('g', {}, hint, line.svg) };
  });
  const taken: Area[] = points.map((name) => ({ x: at(name).x - 11, y: at(name).y - 11, width: 22, height: 22 }));
  taken.push(words);
  const labels = points.map((name) => {
    const shade = groundShade(state.nodes[name] ?? null, false);
    const below = `${shade.mark} ${groundVolts(state.nodes[name] ?? null)}`.trim();
    const text = short(name);
    const wanted = around(at(name), textWidth([text, below]), 2 * LINE, [13, 22, 34, 48, 66, 88]);
    const area = freeArea({ frame, strokes, taken }, wanted, 2) ?? freeArea({ frame, strokes, taken }, wanted, 9);
    if (area === null) return '';
    taken.push(area);
    return placeLabel(at(name), area, text, below);
  });
  const values = [...drawn]
    .sort((a, b) => Math.abs(b.currentA) - Math.abs(a.currentA))
    .map(({ way, currentA, over, line, from, to }) => {
      const lead = over ? '! ' : '';
      const gap = line.widthPx / 2 + 4;
      const placed = (text: string): Area[] =>
        [0.5, 0.36, 0.64, 0.25, 0.75].flatMap((t) =>
          around(
            { x: from.x + (to.x - from.x) * t, y: from.y + (to.y - from.y) * t },
            textWidth([text]) * 0.92,
            LINE - 2,
            [gap, gap + 8],
          ),
        );
      // Ohms and amperes where there is room, else one of both; what carries too much is said in any case.
      const [whole, less] = wayValues(way, currentA).map((text) => lead + text) as [string, string];
      const free = (text: string, crossed: number): Area | null =>
        freeArea({ frame, strokes, taken }, placed(text), crossed);
      const both = free(whole, 0);
      const text = both === null ? less : whole;
      const area = both ?? free(less, 0) ?? free(less, 1) ?? (over ? placed(less)[0] : undefined);
      if (area === undefined) return '';
      taken.push(area);
      return label(area.x, area.y + 11, text, {
        'font-size': 12,
        'font-weight': over ? 700 : 400,
        fill: line.colour,
        stroke: ink.ground,
        'stroke-width': 3,
        'paint-order': 'stroke',
      });
    });
  const root = `ground ${plan.grounds.find(({ by }) => by === 'root')?.name ?? ''}`;
  const key = keyOf(plan, state, width, frame.y + frame.height + 10);
  const table = !(options.table ?? width >= TABLE_FROM)
    ? { shapes: [], bottom: key.bottom }
    : tableOf(plan, points, width, key.bottom + 8);
  const said = points.map((name) => `${short(name)} ${groundVolts(state.nodes[name] ?? null)}`);
  return drawing(
    width,
    table.bottom,
    `Grounds of ${plan.vehicle.name} from above`,
    `State ${state.name}: ${said.join('; ')}`,
    ...vehicle,
    ...drawn.map(({ svg }) => svg),
    ...points.flatMap((name) => groundPoint(at(name).x, at(name).y, groundShade(state.nodes[name] ?? null, false))),
    rootDot(at(root), ink.text),
    ...labels,
    ...values,
    ...key.shapes,
    ...table.shapes,
  );
}

/** The point that all others are counted from has a dot in its ring. */
function rootDot({ x, y }: Spot, fill: string): string {
  return element('circle', { cx: x, cy: y, r: 3.2, fill });
}

/** Points that are drawn: the ground points, and the negative posts of the batteries. */
function pointsOf({ loom }: LoomPlan): readonly string[] {
  return [
    ...Object.keys(loom.grounds).map((name) => `ground ${name}`),
    ...Object.keys(loom.supply.batteries).map((name) => `battery ${name} −`),
  ].sort();
}

/** The point that a node is drawn at: metal behind a stud stands with the stud. */
function own(node: string): string {
  return node.startsWith('metal at ') ? `ground ${node.slice(9)}` : node;
}

function short(node: string): string {
  return node.replace(/^ground /, '').replace(/^battery (.*) −$/, '$1 −');
}

function worstState(plan: LoomPlan, points: readonly string[]): PlannedState {
  const most = ({ nodes }: PlannedState): number => Math.max(0, ...points.map((name) => Math.abs(nodes[name] ?? 0)));
  const none: PlannedState = {
    name: '',
    batteries: [],
    nodes: {},
    currents: {},
    loads: [],
    starved: [],
    unsettled: [],
  };
  return plan.states.reduce((worst, state) => (most(state) > most(worst) ? state : worst), plan.states[0] ?? none);
}

/** Where each point lies; those of one place stand around it. */
function spread(plan: LoomPlan, points: readonly string[], width: number): ReadonlyMap<string, Spot> {
  const { loom } = plan;
  const sheet = layOut(plan, Object.keys(loom.places).sort(), width);
  const byPlace = new Map<string, string[]>();
  for (const name of points) {
    const place = name.startsWith('ground ')
      ? loom.grounds[name.slice(7)]?.place
      : loom.supply.batteries[name.slice(8, -2)]?.place;
    const list = byPlace.get(place ?? '');
    if (list === undefined) byPlace.set(place ?? '', [name]);
    else list.push(name);
  }
  const radius = width < 560 ? 24 : 34;
  return new Map(
    [...byPlace].flatMap(([place, names]) => {
      const { x, y } = sheet.put(place);
      return names.map((name, i): [string, Spot] => {
        if (names.length === 1) return [name, { x, y }];
        const angle = (2 * Math.PI * i) / names.length + Math.PI / 6;
        return [name, { x: x + radius * Math.cos(angle), y: y + radius * Math.sin(angle) }];
      });
    }),
  );
}

function ohms(resistanceOhm: number): string {
  return formatQuantity(resistanceOhm, 'Ω', { digits: 2, prefix: 'natural' });
}

/** Ohms and amperes of a way, and in short. */
function wayValues({ resistanceOhm }: PlannedWay, currentA: number): readonly [string, string] {
  const own = ohms(resistanceOhm);
  if (Math.abs(currentA) < 0.05) return [own, own];
  return [`${own} · ${groundAmps(currentA)}`, groundAmps(currentA)];
}

function wayText({ name, resistanceOhm, bearsA }: PlannedWay, currentA: number, over: boolean): string {
  const bears = bearsA === null ? '' : `, bears ${groundAmps(bearsA)}${over ? ': too much' : ''}`;
  return `${name}: ${ohms(resistanceOhm)}, ${groundAmps(currentA)}${bears}`;
}

/** The key: which state, what the lines are, what the marks of the points mean. */
function keyOf(
  plan: LoomPlan,
  state: PlannedState,
  width: number,
  top: number,
): { readonly shapes: readonly string[]; readonly bottom: number } {
  const root = short(`ground ${plan.grounds.find(({ by }) => by === 'root')?.name ?? ''}`);
  const title = wrapped(
    `State ${state.name}: volts against ${root}, ohms and amperes of each way`,
    Math.floor((width - 8) / 7.6),
  );
  const shapes = title.map((text, i) => label(4, top + 14 + i * 17, text, { 'font-size': 13, 'font-weight': 600 }));
  let y = top + title.length * 17 + 8;
  let x = 4;
  const put = (room: number, draw: (x: number, y: number) => readonly string[]): void => {
    if (x > 4 && x + room > width) [x, y] = [4, y + ROW];
    shapes.push(...draw(x, y + 8));
    x += room + 14;
  };
  const strays = plan.ways.some(({ kind }) => kind === 'stray');
  for (const [kind, words] of [
    ['strap', 'strap or cable'],
    ['body', 'body'],
    ...(strays ? [['stray', 'not laid for current'] as const] : []),
  ] as const) {
    put(46 + words.length * 6.6, (at, row) => [
      groundLine({ x1: at + 4, y1: row, x2: at + 32, y2: row, kind, currentA: 20, over: false, gone: false }).svg,
      label(at + 40, row + 4.5, words, { 'font-size': 12.5 }),
    ]);
  }
  [x, y] = [4, y + ROW];
  for (const shade of groundShades.slice(0, 3)) {
    put(24 + shade.words.length * 6.8, (at, row) => [
      ...groundPoint(at + 9, row, shade),
      label(at + 23, row + 4.5, shade.words, { 'font-size': 12.5, fill: shade.colour }),
    ]);
  }
  put(150, (at, row) => [
    ...groundPoint(at + 9, row, groundShades[0]),
    rootDot({ x: at + 9, y: row }, ink.text),
    label(at + 23, row + 4.5, 'counted from here', { 'font-size': 12.5 }),
  ]);
  return { shapes, bottom: y + ROW + 4 };
}

/** Millivolts of each point in all states, with the marks of their classes. */
function tableOf(
  plan: LoomPlan,
  points: readonly string[],
  width: number,
  top: number,
): { readonly shapes: readonly string[]; readonly bottom: number } {
  const first = 118;
  const step = (width - first - 8) / Math.max(1, plan.states.length);
  if (step < 46) return { shapes: [], bottom: top };
  const shapes: string[] = [];
  const heads = plan.states.map(({ name }) => wrapped(name, Math.floor(step / 6.2)));
  const lines = Math.max(1, ...heads.map(({ length }) => length));
  heads.forEach((head, s) => {
    head.forEach((text, i) => {
      const y = top + 13 + (lines - head.length + i) * 14;
      const x = first + (s + 1) * step - 4;
      shapes.push(label(x, y, text, { 'text-anchor': 'end', 'font-size': 12, fill: ink.soft }));
    });
  });
  shapes.push(label(4, top + 13 + (lines - 1) * 14, 'mV in each state', { 'font-size': 12, fill: ink.soft }));
  let y = top + lines * 14 + 6;
  for (const name of points) {
    shapes.push(
      element('line', { x1: 4, x2: width - 4, y1: y, y2: y, stroke: ink.rule, 'stroke-width': 1 }),
      label(4, y + 14, short(name), { 'font-size': TEXT, 'font-weight': 600 }),
      ...plan.states.map(({ nodes }, s) => {
        const volts = nodes[name] ?? 0;
        const { colour, mark } = groundShade(volts, false);
        const text = `${mark} ${formatQuantity(volts * 1000, '', { decimals: 1 })}`.trim();
        const x = first + (s + 1) * step - 4;
        return label(x, y + 14, text, { 'text-anchor': 'end', 'font-size': 12.5, fill: colour });
      }),
    );
    y += ROW;
  }
  return { shapes, bottom: y + 4 };
}
