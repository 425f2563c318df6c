import type * as PlotModule from '@observablehq/plot';
import { formatNumber } from '../quantity/index.js';
import { ink } from '../draw/index.js';

/** The parts of Observable Plot that a chart needs: the module itself, or an object with these names alone. */
export type PlotParts = Pick<
  typeof PlotModule,
  'areaY' | 'axisX' | 'axisY' | 'dot' | 'gridX' | 'gridY' | 'line' | 'plot' | 'rect' | 'ruleX' | 'ruleY' | 'text'
>;

/** One axis of a chart. */
export interface ChartAxis {
  /** What it shows, without the unit. */
  readonly label: string;
  /** Unit, '' for a pure number. */
  readonly unit: string;
  readonly log?: boolean;
  /** Ends, where the data should not decide. */
  readonly domain?: readonly [number, number];
  /** Values that get a tick, such as the stock sizes; chosen by the chart where left out. */
  readonly ticks?: readonly number[];
}

/** A line or a row of dots. Each has a dash and a direct label besides its colour. */
export interface ChartSeries {
  readonly name: string;
  readonly points: readonly (readonly [x: number, y: number])[];
  readonly colour: 'copper' | 'verdigris' | 'blue' | 'text' | 'soft' | 'red' | 'amber';
  /** `line`, `dots`, or both; `both` unless given. */
  readonly as?: 'line' | 'dots' | 'both';
  readonly dash?: string;
  /** Which point carries the label, counted from 0, below and to the right of it; above the last one where left out. */
  readonly labelAt?: number;
  /**
   * Side of that point: below to its right unless given. Above to its right and below to its left are free beside a
   * line that falls.
   */
  readonly labelSide?: 'below' | 'above' | 'left';
  /** False where the name is for the table alone. */
  readonly labelled?: false;
}

/** A limit drawn as a line across, named, with the side that fails shaded. */
export interface ChartLimit {
  readonly axis: 'x' | 'y';
  readonly value: number;
  readonly name: string;
  /** The side that does not meet it. */
  readonly fails: 'above' | 'below';
}

/** A band between two curves, such as the shortest and the longest time of a fuse. */
export interface ChartBand {
  readonly name: string;
  readonly points: readonly (readonly [x: number, low: number, high: number])[];
  readonly colour: ChartSeries['colour'];
}

/** A chart as data: what is drawn, and what stands in the table beside it. */
export interface ChartSpec {
  readonly title: string;
  readonly x: ChartAxis;
  readonly y: ChartAxis;
  readonly series: readonly ChartSeries[];
  readonly bands?: readonly ChartBand[];
  readonly limits?: readonly ChartLimit[];
  /** The point that was chosen: drawn in copper with its value beside it. */
  readonly chosen?: { readonly x: number; readonly y: number; readonly label: string };
}

/** Where and how wide a chart is drawn. */
export interface ChartPlace {
  readonly width: number;
  readonly height?: number;
  /** The document to draw in; the browser's own where left out. On a server give one of linkedom's. */
  readonly document?: Document;
}

const DASHES = ['', '6 3', '2 3', '8 3 2 3'];

/**
 * Draws a chart with Observable Plot, which the caller hands in: whoever draws nothing does not load it.
 *
 * @param Plot the module `@observablehq/plot`, or the parts of it that are used
 * @param spec what to draw
 * @param place width, height, document
 * @returns an SVG element; Plot's own labels on parts are taken off and the whole is labelled as one image
 */
export function chart(Plot: PlotParts, spec: ChartSpec, place: ChartPlace): Element {
  const { x, y, series, limits = [], bands = [], chosen } = spec;
  const { width } = place;
  const narrow = width < 480;
  const axisOptions = (axis: ChartAxis): PlotModule.ScaleOptions => ({
    type: axis.log === true ? 'log' : 'linear',
    ...(axis.domain === undefined ? {} : { domain: axis.domain }),
    label: axis.unit === '' ? axis.label : `${axis.label} (${axis.unit})`,
  });
  const ends = (axis: 'x' | 'y'): readonly [number, number] => {
    const own = spec[axis].domain;
    if (own !== undefined) return own;
    const values = series.flatMap((s) => s.points.map((p) => p[axis === 'x' ? 0 : 1]));
    return [Math.min(...values), Math.max(...values)];
  };
  const marks: PlotModule.Markish[] = [
    ...ticks(Plot, 'x', x, narrow),
    ...ticks(Plot, 'y', y, narrow),
    ...limits.flatMap((limit) => limitMarks(Plot, limit, ends('x'), ends('y'))),
    ...bands.map((band) =>
      Plot.areaY(band.points, {
        x: '0',
        y1: '1',
        y2: '2',
        fill: ink[band.colour],
        fillOpacity: 0.16,
        stroke: ink[band.colour],
        strokeWidth: 0.75,
      }),
    ),
    ...bands.map((band) => {
      const at = band.points[Math.floor(band.points.length / 2)] ?? [0, 0, 0];
      return Plot.text([[at[0], Math.sqrt(Math.max(at[1], 1e-300) * Math.max(at[2], 1e-300))]], {
        text: () => band.name,
        fill: ink[band.colour],
        stroke: ink.ground,
        strokeWidth: 4,
      });
    }),
  ];
  series.forEach((s, i) => {
    const colour = ink[s.colour];
    const as = s.as ?? 'both';
    if (as !== 'dots')
      marks.push(
        Plot.line(s.points, {
          stroke: colour,
          strokeWidth: 1.75,
          strokeDasharray: s.dash ?? DASHES[i % DASHES.length] ?? '',
        }),
      );
    if (as !== 'line') marks.push(Plot.dot(s.points, { r: 3, fill: ink.ground, stroke: colour, strokeWidth: 1.5 }));
    const at = s.labelAt === undefined ? s.points.at(-1) : s.points[s.labelAt];
    if (at !== undefined && s.name !== '' && s.labelled !== false) {
      const place =
        s.labelAt === undefined ? ({ textAnchor: 'end', dy: -12 } as const) : besideLine(s, at, x, ends('x'));
      marks.push(
        Plot.text([at], {
          text: () => s.name,
          fill: colour,
          stroke: ink.ground,
          strokeWidth: 4,
          fontWeight: 600,
          ...place,
        }),
      );
    }
  });
  if (chosen !== undefined) {
    marks.push(
      Plot.dot([[chosen.x, chosen.y]], { r: 5.5, fill: ink.copper, stroke: ink.ground, strokeWidth: 1.5 }),
      Plot.text([[chosen.x, chosen.y]], {
        text: () => chosen.label,
        fill: ink.copper,
        stroke: ink.ground,
        strokeWidth: 4,
        fontWeight: 700,
        ...beside(chosen, x, ends('x'), series),
      }),
    );
  }
  const svg = Plot.plot({
    width,
    height: place.height ?? Math.round(Math.max(260, Math.min(420, width * 0.6))),
    marginLeft: narrow ? 44 : 56,
    marginBottom: 44,
    marginTop: 26,
    marginRight: narrow ? 10 : 20,
    style: {
      background: 'none',
      color: ink.text,
      fontFamily: "var(--lw-sans, 'IBM Plex Sans Condensed', sans-serif)",
      fontSize: '13px',
      overflow: 'visible',
    },
    x: axisOptions(x),
    y: axisOptions(y),
    marks,
    ...(place.document === undefined ? {} : { document: place.document }),
  });
  for (const which of ['x', 'y'] as const) if (spec[which].log !== true) alignTicks(svg, which);
  // Plot labels groups and shapes, which an image must not hold: the wrapper says what the whole is.
  for (const part of Array.from(svg.querySelectorAll('[aria-label]'))) part.removeAttribute('aria-label');
  for (const part of Array.from(svg.querySelectorAll('[aria-hidden]'))) part.removeAttribute('aria-hidden');
  svg.setAttribute('role', 'img');
  svg.setAttribute('aria-label', spec.title);
  return svg;
}

/** Gives all numbers of a straight axis as many decimals as the one that has most: 9.9, 10.0, 10.1. */
function alignTicks(svg: Element, which: 'x' | 'y'): void {
  const texts = Array.from(svg.querySelectorAll(`[aria-label="${which}-axis tick label"] text`));
  const decimals = texts.map(({ textContent }) => /\.(\d+)$/.exec(textContent ?? '')?.[1]?.length ?? 0);
  const most = Math.max(0, ...decimals);
  texts.forEach((text, i) => {
    const missing = most - (decimals[i] as number);
    const said = text.textContent ?? '';
    if (missing === 0 || said === '0' || !/\d$/.test(said)) return;
    text.textContent = `${said}${decimals[i] === 0 ? '.' : ''}${'0'.repeat(missing)}`;
  });
}

/** How far along its axis a value lies, 0 to 1. */
function shareOf(value: number, axis: ChartAxis, [low, high]: readonly [number, number]): number {
  return axis.log === true ? Math.log(value / low) / Math.log(high / low) : (value - low) / (high - low);
}

type LabelPlace = { readonly textAnchor: 'start' | 'end'; readonly dx: number; readonly dy: number };

/** Where the name of a line stands beside one of its points: on the side asked for, unless the chart ends there. */
function besideLine(
  { labelSide, points, as }: ChartSeries,
  [x, y]: readonly [number, number],
  axis: ChartAxis,
  ends: readonly [number, number],
): LabelPlace {
  if (labelSide === 'left') return { textAnchor: 'end', dx: -8, dy: 12 };
  if (as !== 'dots' && shareOf(x, axis, ends) > 0.8) {
    return { textAnchor: 'end', dx: -8, dy: falls({ x, y }, [{ points }]) ? 12 : -9 };
  }
  return { textAnchor: 'start', dx: 8, dy: labelSide === 'above' ? -9 : 12 };
}

/** Where the chosen point's label stands: on the side that its line leaves free, if the chart has room there. */
function beside(
  chosen: { readonly x: number; readonly y: number },
  axis: ChartAxis,
  ends: readonly [number, number],
  series: readonly ChartSeries[],
): LabelPlace {
  const share = shareOf(chosen.x, axis, ends);
  if (falls(chosen, series)) {
    return share > 0.7 ? { textAnchor: 'end', dx: -10, dy: 16 } : { textAnchor: 'start', dx: 10, dy: -12 };
  }
  return share < 0.3 ? { textAnchor: 'start', dx: 10, dy: -12 } : { textAnchor: 'end', dx: -10, dy: -12 };
}

/** Whether the line that passes nearest to a point falls there. */
function falls(
  { x, y }: { readonly x: number; readonly y: number },
  series: readonly Pick<ChartSeries, 'points' | 'as'>[],
): boolean {
  let nearest = Infinity;
  let falling = false;
  for (const { points, as } of series) {
    if (as === 'dots') continue;
    for (let i = 1; i < points.length; i++) {
      const [x1, y1] = points[i - 1] as readonly [number, number];
      const [x2, y2] = points[i] as readonly [number, number];
      if ((x - x1) * (x - x2) > 0 || x1 === x2) continue;
      const off = Math.abs(y1 + ((y2 - y1) * (x - x1)) / (x2 - x1) - y);
      if (off >= nearest) continue;
      nearest = off;
      falling = (y2 - y1) * (x2 - x1) < 0;
    }
  }
  return falling;
}

function ticks(Plot: PlotParts, which: 'x' | 'y', axis: ChartAxis, narrow: boolean): PlotModule.Markish[] {
  const common = { stroke: ink.rule, strokeOpacity: 1 };
  const format = (value: number): string => formatNumber(value, { digits: 4, trim: true });
  const given = axis.ticks === undefined ? (narrow ? { ticks: 5 } : {}) : { ticks: [...axis.ticks] };
  // On a log axis every tenth of a decade has a line, every decade a number.
  const numbered =
    axis.log === true && axis.ticks === undefined
      ? {
          tickFormat: (v: number) =>
            Number.isInteger(Math.log10(v) + 1e-9) || Math.abs(Math.log10(v) - Math.round(Math.log10(v))) < 1e-9
              ? format(v)
              : '',
        }
      : { tickFormat: format };
  return which === 'x'
    ? [Plot.gridX({ ...common, ...given }), Plot.axisX({ ...given, ...numbered, color: ink.soft, tickSize: 4 })]
    : [Plot.gridY({ ...common, ...given }), Plot.axisY({ ...given, ...numbered, color: ink.soft, tickSize: 4 })];
}

function limitMarks(
  Plot: PlotParts,
  limit: ChartLimit,
  xEnds: readonly [number, number],
  yEnds: readonly [number, number],
): PlotModule.Markish[] {
  const { axis, value, name, fails } = limit;
  const shade = { fill: ink.red, fillOpacity: 0.07 };
  const line = { stroke: ink.red, strokeWidth: 1.25, strokeDasharray: '5 3' };
  const text = { text: () => name, fill: ink.red, stroke: ink.ground, strokeWidth: 4 };
  if (axis === 'y') {
    const far = fails === 'above' ? Math.max(yEnds[1], value) : Math.min(yEnds[0], value);
    return [
      Plot.rect([0], { x1: () => xEnds[0], x2: () => xEnds[1], y1: () => value, y2: () => far, ...shade }),
      Plot.ruleY([value], line),
      Plot.text([[xEnds[1], value]], { ...text, textAnchor: 'end', dy: fails === 'above' ? 10 : -10 }),
    ];
  }
  const far = fails === 'above' ? Math.max(xEnds[1], value) : Math.min(xEnds[0], value);
  return [
    Plot.rect([0], { x1: () => value, x2: () => far, y1: () => yEnds[0], y2: () => yEnds[1], ...shade }),
    Plot.ruleX([value], line),
    Plot.text([[value, yEnds[1]]], { ...text, textAnchor: 'start', dx: 6, dy: 8 }),
  ];
}

/** The chart's numbers as a table: the first row is the head. */
export function chartTable(spec: ChartSpec): string[][] {
  const head = (axis: ChartAxis): string => (axis.unit === '' ? axis.label : `${axis.label} (${axis.unit})`);
  const xs = [...new Set(spec.series.flatMap((s) => s.points.map(([x]) => x)))].sort((a, b) => a - b);
  // What rounding leaves of a nought is shown as nought: 1e-15 beside a line of 1.
  const most = spec.series.map(({ points }) => points.reduce((top, [, y]) => Math.max(top, Math.abs(y)), 0));
  const value = (v: number | undefined, i: number): string => {
    if (v === undefined) return '';
    return formatNumber(Math.abs(v) < 1e-12 * (most[i] as number) ? 0 : v, { digits: 4 });
  };
  return [
    [
      head(spec.x),
      ...spec.series.map((s) =>
        spec.series.length === 1 ? head(spec.y) : `${s.name}${spec.y.unit === '' ? '' : ` (${spec.y.unit})`}`,
      ),
    ],
    ...xs.map((x) => [
      formatNumber(x, { digits: 4, trim: true }),
      ...spec.series.map((s, i) => value(s.points.find((p) => p[0] === x)?.[1], i)),
    ]),
  ];
}
