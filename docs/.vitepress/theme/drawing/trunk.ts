import type { EndSign, StrandKind, Trunk, TrunkEnd } from '../../data/sandpiper-trunk';
import { pathData, type Point, twistedPair, type Way } from './path';

/** How a trunk is laid on a sheet. */
export interface SheetForm {
  /** Whether the nose points to the left or to the top of the sheet. */
  readonly nose: 'left' | 'top';
  readonly pxPerM: number;
  /** Room for labels in px: before the nose, behind the tail, and on either side. */
  readonly room: { readonly nose: number; readonly tail: number; readonly side: number };
  /** Scale of strands and signs. */
  readonly pen: number;
  readonly textPx: number;
}

/** Where on the sheet: px from the nose along the vehicle, px from its centre line to its right. */
interface Spot {
  readonly a: number;
  readonly c: number;
}

type Put = (spot: Spot) => Point;

interface Strand {
  readonly end: TrunkEnd;
  readonly kind: StrandKind;
  /** Distance of the lane from the middle of the spine, to the right of the vehicle, in px. */
  readonly lane: number;
}

interface Plan {
  readonly trunk: Trunk;
  readonly form: SheetForm;
  readonly put: Put;
  readonly strands: readonly Strand[];
  /** Half of the width of the bundle where it is widest. */
  readonly half: number;
}

const WIDTH: Readonly<Record<StrandKind, number>> = { feed: 1.7, heavy: 3.8, signal: 1.6, bus: 5.4 };
const GAP = 2.3;
const BEND = 7;

const n1 = (value: number): string => String(Math.round(value * 10) / 10);

/** A plan of the trunk as SVG: every strand in a lane of its own, none crossing another. */
export function drawTrunk(trunk: Trunk, form: SheetForm): string {
  const { pxPerM: s, room, pen } = form;
  const long = trunk.lengthM * s + room.nose + room.tail;
  const broad = trunk.widthM * s + 2 * room.side;
  const put: Put =
    form.nose === 'left'
      ? ({ a, c }) => ({ x: room.nose + a, y: broad / 2 - c })
      : ({ a, c }) => ({ x: broad / 2 + c, y: room.nose + a });
  const strands = [...lanes(trunk, -1, pen), ...lanes(trunk, 1, pen)];
  const half = Math.max(...strands.map(({ lane, kind }) => Math.abs(lane) + (WIDTH[kind] * pen) / 2));
  const plan: Plan = { trunk, form, put, strands, half };
  const [width, height] = form.nose === 'left' ? [long, broad] : [broad, long];
  return [
    `<svg viewBox="0 0 ${n1(width)} ${n1(height)}" width="${n1(width)}" height="${n1(height)}" aria-hidden="true">`,
    vehicle(plan),
    ...strands.map((strand) => drawStrand(plan, strand)),
    box(plan),
    ...trunk.ends.map((end) => drawEnd(plan, end)),
    scaleBar(plan),
    '</svg>',
  ].join('');
}

/** The run of a strand in m, along the spine and its branch, with square corners. */
export function runM(trunk: Trunk, end: TrunkEnd): number {
  const jog = end.x > trunk.jogX ? Math.abs(trunk.jogY - trunk.spineY) : 0;
  return Math.abs(end.x - trunk.boxX) + jog + Math.abs(end.y - spineAt(trunk, end.x));
}

function spineAt(trunk: Trunk, x: number): number {
  return x > trunk.jogX ? trunk.jogY : trunk.spineY;
}

/** To which side an end's branch leaves the spine; 0 where the spine itself ends there. */
function sideOf(trunk: Trunk, end: TrunkEnd): number {
  return Math.sign(end.y - spineAt(trunk, end.x));
}

/**
 * Lanes of the spine towards the nose (−1) or the tail (+1). Who leaves first lies outermost on the side to which it
 * leaves, and who runs to the end lies in the middle: so no strand crosses another.
 */
function lanes(trunk: Trunk, towards: 1 | -1, pen: number): Strand[] {
  const ends = trunk.ends.filter((end) => (end.x - trunk.boxX) * towards > 0);
  const first = (p: TrunkEnd, q: TrunkEnd): number => (p.x - q.x) * towards;
  const on = (side: number): TrunkEnd[] => ends.filter((end) => sideOf(trunk, end) === side);
  const order = [...on(-1).sort(first), ...on(0), ...on(1).sort((p, q) => first(q, p))];
  const widths = order.flatMap((end) => end.strands.map((kind) => WIDTH[kind] * pen));
  const total = widths.reduce((sum, width) => sum + width + GAP * pen, -GAP * pen);
  let edge = -total / 2;
  return order.flatMap((end) =>
    end.strands.map((kind) => {
      const lane = edge + (WIDTH[kind] * pen) / 2;
      edge += (WIDTH[kind] + GAP) * pen;
      return { end, kind, lane };
    }),
  );
}

/** The way of a strand from the box to its end. At a bend the inner strands turn first, so that bends are nested. */
function wayOf({ trunk, form, put, strands, half }: Plan, { end, lane }: Strand): Way {
  const { pxPerM: s, pen } = form;
  const towards = end.x > trunk.boxX ? 1 : -1;
  const side = sideOf(trunk, end);
  const c1 = trunk.spineY * s + lane;
  const c2 = spineAt(trunk, end.x) * s + lane;
  const spots: Spot[] = [{ a: trunk.boxX * s, c: c1 }];
  const radii: number[] = [];
  if (end.x > trunk.jogX) {
    const turn = Math.sign(trunk.jogY - trunk.spineY);
    const radius = Math.min(half + 6 * pen, (Math.abs(trunk.jogY - trunk.spineY) * s) / 2);
    const a = trunk.jogX * s - turn * lane;
    spots.push({ a, c: c1 }, { a, c: c2 });
    radii.push(radius - turn * lane, radius + turn * lane);
  }
  if (side === 0) {
    spots.push({ a: end.x * s, c: c2 });
  } else {
    const mates = strands.filter((strand) => strand.end === end).map((strand) => strand.lane * side);
    const behind = Math.max(...mates) - lane * side;
    const middle = (Math.max(...mates) - Math.min(...mates)) / 2;
    const a = end.x * s + towards * (behind - middle);
    spots.push({ a, c: c2 }, { a, c: end.y * s });
    radii.push(Math.min(BEND * pen + behind, Math.abs(end.y * s - c2)));
  }
  return { points: spots.map(put), radii };
}

function drawStrand(plan: Plan, strand: Strand): string {
  const way = wayOf(plan, strand);
  const { pen } = plan.form;
  if (strand.kind === 'bus') {
    return twistedPair(way, 2.1 * pen, 8 * pen)
      .map((d, i) => `<path class="bus bus-${i + 1}" d="${d}" stroke-width="${n1(1.5 * pen)}"/>`)
      .join('');
  }
  const dash = strand.kind === 'signal' ? ` stroke-dasharray="${n1(4.5 * pen)} ${n1(2.2 * pen)}"` : '';
  return `<path class="${strand.kind}" d="${pathData(way)}" stroke-width="${n1(WIDTH[strand.kind] * pen)}"${dash}/>`;
}

/** Outline, wheels, bonnet, bulkhead with its grommet, windscreen, back of the cab, bed. */
function vehicle({ trunk, form, put, half }: Plan): string {
  const s = form.pxPerM;
  const path = (metres: readonly (readonly [x: number, y: number])[], radiiM: readonly number[] = []): string =>
    pathData({ points: metres.map(([x, y]) => put({ a: x * s, c: y * s })), radii: radiiM.map((r) => r * s) });
  const w = trunk.widthM / 2;
  const l = trunk.lengthM;
  const back = trunk.cabBackX;
  const loop = (x0: number, x1: number, y0: number, y1: number, r: number): string => {
    const x = (x0 + x1) / 2;
    return path(
      [
        [x, y0],
        [x1, y0],
        [x1, y1],
        [x0, y1],
        [x0, y0],
        [x, y0],
      ],
      [r, r, r, r],
    );
  };
  const wheels = trunk.axlesX.flatMap((x) =>
    [-1, 1].map((side) => loop(x - 0.36, x + 0.36, side * (w - 0.24), side * (w + 0.03), 0.07)),
  );
  const body = path(
    [
      [l, 0],
      [l, w],
      [0, w],
      [0, -w],
      [l, -w],
      [l, 0],
    ],
    [0.05, 0.34, 0.34, 0.05],
  );
  const screen = [
    [1.84, -w + 0.12],
    [1.6, 0],
    [1.84, w - 0.12],
  ].map(([x = 0, y = 0]) => put({ a: x * s, c: y * s }));
  const [from, crest, to] = screen.map(({ x, y }) => `${n1(x)} ${n1(y)}`);
  const hair = [
    ...wheels,
    path([
      [0.16, -w + 0.2],
      [trunk.bulkheadX, -w + 0.1],
    ]),
    path([
      [0.16, w - 0.2],
      [trunk.bulkheadX, w - 0.1],
    ]),
    `M${from}Q${crest} ${to}`,
    path([
      [back, -w],
      [back, w],
    ]),
    loop(back + 0.07, l - 0.07, -w + 0.07, w - 0.07, 0.03),
  ];
  const gap = (half + 5 * form.pen) / s;
  const y = trunk.spineY;
  const x = trunk.bulkheadX;
  const bulkhead =
    path([
      [x, -w],
      [x, y - gap],
    ]) +
    path([
      [x, y + gap],
      [x, w],
    ]);
  const lip = [y - gap, y + gap]
    .map((at) =>
      path([
        [x - 0.035, at],
        [x + 0.035, at],
      ]),
    )
    .join('');
  return `<path class="hair" d="${hair.join('')}"/><path class="body" d="${body}"/><path class="ink" d="${bulkhead}"/><path class="lip" d="${lip}" stroke-width="${n1(3 * form.pen)}"/>`;
}

/** The box from which the strands start. */
function box({ trunk, form, put, half }: Plan): string {
  const { pxPerM: s, pen, textPx } = form;
  const mid = { a: trunk.boxX * s, c: trunk.spineY * s };
  const [deep, wide] = [Math.max(11 * pen, textPx * 0.75), Math.max(half + 7 * pen, textPx * 2.5)];
  const p = put({ a: mid.a - deep, c: mid.c - wide });
  const q = put({ a: mid.a + deep, c: mid.c + wide });
  const m = put(mid);
  const turned = form.nose === 'left' ? ` transform="rotate(-90 ${n1(m.x)} ${n1(m.y)})"` : '';
  return (
    `<rect class="sign" x="${n1(Math.min(p.x, q.x))}" y="${n1(Math.min(p.y, q.y))}" width="${n1(Math.abs(q.x - p.x))}" height="${n1(Math.abs(q.y - p.y))}"/>` +
    `<text class="name" x="${n1(m.x)}" y="${n1(m.y)}" dy="0.34em" text-anchor="middle" font-size="${n1(textPx * 0.9)}"${turned}>power box</text>`
  );
}

/** The sign at the end of a branch, and its label outside of the vehicle. */
function drawEnd(plan: Plan, end: TrunkEnd): string {
  const { trunk, form, put, strands } = plan;
  const { pxPerM: s, pen, textPx } = form;
  const side = sideOf(trunk, end);
  const own = strands.filter((strand) => strand.end === end);
  const lane = side === 0 ? own.reduce((sum, strand) => sum + strand.lane, 0) / own.length : 0;
  const spot = { a: end.x * s, c: side === 0 ? spineAt(trunk, end.x) * s + lane : end.y * s };
  const at = put(spot);
  const r = Math.max(7.5, 9.5 * pen);
  const edge = (trunk.widthM / 2) * s + (form.nose === 'left' ? 12 : 7);
  const label =
    side === 0
      ? put({ a: spot.a + (end.x < trunk.boxX ? -1 : 1) * (r + 7), c: spot.c })
      : put({ a: spot.a, c: side * (edge + 6) });
  const leader = side === 0 ? '' : leaderOf(at, put({ a: spot.a, c: side * edge }), r);
  return leader + sign(end.sign, at, r) + labelOf(end, label, form, side, end.x < trunk.boxX, textPx);
}

function leaderOf(from: Point, to: Point, r: number): string {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const start = { x: from.x + ((to.x - from.x) * r) / length, y: from.y + ((to.y - from.y) * r) / length };
  return `<path class="leader" d="M${n1(start.x)} ${n1(start.y)}L${n1(to.x)} ${n1(to.y)}"/>`;
}

/** Signs on a grid, in the manner of IEC 60617. */
function sign(kind: EndSign, { x, y }: Point, r: number): string {
  const move = `transform="translate(${n1(x)} ${n1(y)})"`;
  const k = (value: number): string => n1(value * r);
  const circle = `<circle class="sign" r="${n1(r)}"/>`;
  const square = `<rect class="sign" x="${k(-0.95)}" y="${k(-0.95)}" width="${k(1.9)}" height="${k(1.9)}"/>`;
  const oblong = `<rect class="sign" x="${k(-1.3)}" y="${k(-0.6)}" width="${k(2.6)}" height="${k(1.2)}"/>`;
  const inner: Readonly<Record<EndSign, string>> = {
    motor: `${circle}<text class="letter" dy="0.35em" text-anchor="middle" font-size="${k(1.25)}">M</text>`,
    lamp: `${circle}<path class="ink" d="M${k(-0.7)} ${k(-0.7)}L${k(0.7)} ${k(0.7)}M${k(-0.7)} ${k(0.7)}L${k(0.7)} ${k(-0.7)}"/>`,
    unit: square,
    heater: `${oblong}<path class="ink" d="M${k(-0.65)} ${k(-0.6)}V${k(0.6)}M0 ${k(-0.6)}V${k(0.6)}M${k(0.65)} ${k(-0.6)}V${k(0.6)}"/>`,
    sensor: `${oblong}<path class="ink" d="M${k(-1.35)} ${k(1.1)}L${k(1.35)} ${k(-1.1)}M${k(0.75)} ${k(-1.05)}H${k(1.35)}V${k(-0.5)}"/>`,
    battery: `<rect class="sign" x="${k(-1.2)}" y="${k(-0.95)}" width="${k(2.4)}" height="${k(1.9)}"/><path class="ink" d="M${k(-0.75)} 0H${k(-0.2)}M${k(0.2)} 0H${k(0.75)}M${k(-0.2)} ${k(-0.6)}V${k(0.6)}"/><path class="lip" d="M${k(0.2)} ${k(-0.32)}V${k(0.32)}" stroke-width="2"/>`,
  };
  return `<g ${move}>${inner[kind]}</g>`;
}

function labelOf(
  end: TrunkEnd,
  { x, y }: Point,
  form: SheetForm,
  side: number,
  ahead: boolean,
  textPx: number,
): string {
  const lines = end.detail === undefined ? [end.name] : [end.name, end.detail];
  const across = form.nose === 'left' ? side === 0 : side !== 0;
  const before = form.nose === 'left' ? (side === 0 ? ahead : side > 0) : side === 0 ? ahead : side < 0;
  const anchor = across ? (before ? 'end' : 'start') : 'middle';
  const lead = textPx * 1.16;
  const start = across
    ? y - ((lines.length - 1) * lead) / 2
    : before
      ? y - (lines.length - 1) * lead - 3
      : y + textPx * 0.72;
  const dy = across ? ' dy="0.34em"' : '';
  return lines
    .map(
      (line, i) =>
        `<text class="${i === 0 ? 'name' : 'detail'}" x="${n1(x)}" y="${n1(start + i * lead)}"${dy} text-anchor="${anchor}" font-size="${n1(textPx)}">${line}</text>`,
    )
    .join('');
}

function scaleBar({ form, trunk }: Plan): string {
  const { pxPerM: s, room, textPx } = form;
  const [x, y] =
    form.nose === 'left'
      ? [room.nose, trunk.widthM * s + 2 * room.side - 4]
      : [room.side + (trunk.widthM * s - s) / 2, room.nose + trunk.lengthM * s + room.tail - 4];
  return `<path class="ink" d="M${n1(x)} ${n1(y - 5)}v5h${n1(s)}v-5"/><text class="detail" x="${n1(x + s / 2)}" y="${n1(y - 5)}" text-anchor="middle" font-size="${n1(textPx)}">1 m</text>`;
}
