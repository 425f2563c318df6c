import { drawing, element, ink, label, number } from './svg.js';

/** One wire of the cross-section. */
export interface SectionWire {
  readonly xMm: number;
  readonly yMm: number;
  readonly outerDiameterMm: number;
  readonly conductorDiameterMm: number;
  readonly tempC: number;
}

export interface HeatSectionInput {
  readonly wires: readonly SectionWire[];
  readonly bundleDiameterMm: number;
  /** Temperature of the bundle's surface in °C. */
  readonly surfaceTempC: number;
  /** Temperature of the air in °C. */
  readonly ambientTempC: number;
  /** Width in px: 360 on a phone, 640 or more on a desk. */
  readonly width: number;
  /** Writes a temperature; a hot one is rounded up. */
  readonly format: (tempC: number) => string;
}

/**
 * A bundle cut across, its copper the deeper in colour the hotter it is, from the surface to the hottest wire. The
 * temperature stands in every wire that has room for it, and the hottest one is named.
 */
export function heatSection(input: HeatSectionInput): string {
  const { wires, bundleDiameterMm, surfaceTempC, ambientTempC, width, format } = input;
  const narrow = width < 480;
  const side = Math.min(narrow ? width - 16 : width * 0.56, 380);
  const scale = side / bundleDiameterMm;
  const cx = 8 + side / 2;
  const cy = 8 + side / 2;
  const hottest = wires.reduce((a, b) => (b.tempC > a.tempC ? b : a));
  const span = Math.max(hottest.tempC - surfaceTempC, 1e-9);
  const place = (wire: SectionWire): { x: number; y: number; r: number } => ({
    x: cx + wire.xMm * scale,
    y: cy - wire.yMm * scale,
    r: (wire.outerDiameterMm / 2) * scale,
  });
  const left = side + 32;
  const end = place(hottest);
  const shapes = narrow
    ? []
    : [
        element('path', {
          d: `M${number(end.x)} ${number(end.y)}L${number(left - 8)} ${number(cy - 24)}`,
          stroke: ink.copper,
          'stroke-width': 1,
          fill: 'none',
        }),
      ];
  shapes.push(
    element('circle', {
      cx,
      cy,
      r: side / 2,
      fill: 'none',
      stroke: ink.soft,
      'stroke-width': 1,
      'stroke-dasharray': '4 3',
    }),
  );
  for (const wire of wires) {
    const { x, y, r } = place(wire);
    const top = wire === hottest;
    shapes.push(
      element('circle', {
        cx: x,
        cy: y,
        r: Math.max(r - 1, 1),
        fill: ink.ground,
        stroke: top ? ink.copper : ink.soft,
        'stroke-width': top ? 2.5 : 1,
      }),
      element('circle', {
        cx: x,
        cy: y,
        r: Math.max((wire.conductorDiameterMm / 2) * scale - 1, 1),
        fill: ink.copper,
        'fill-opacity': 0.08 + 0.5 * Math.max(0, (wire.tempC - surfaceTempC) / span),
      }),
    );
    if (r >= 17) {
      shapes.push(
        label(x, y + 5, String(Math.ceil(wire.tempC)), {
          'text-anchor': 'middle',
          'font-weight': top ? 700 : 400,
          'font-size': r >= 24 ? 14 : 12,
        }),
      );
    }
  }
  const lines: readonly [string, string][] = [
    [`hottest wire ${format(hottest.tempC)}`, ink.copper],
    [`surface ${format(surfaceTempC)}`, ink.text],
    [`air ${format(ambientTempC)}`, ink.soft],
  ];
  const bottom = 16 + side;
  if (narrow) {
    lines.forEach(([text, fill], i) => shapes.push(label(8, bottom + 18 + 20 * i, text, { fill })));
  } else {
    lines.forEach(([text, fill], i) =>
      shapes.push(label(left, cy - 20 + 24 * i, text, { fill, ...(i === 0 ? { 'font-weight': 600 } : {}) })),
    );
  }
  return drawing(
    width,
    narrow ? bottom + 66 : bottom,
    'Bundle cut across, by temperature',
    `${wires.length} wires in a bundle; the hottest is at ${format(hottest.tempC)}, the surface at ${format(surfaceTempC)}, the air at ${format(ambientTempC)}`,
    ...shapes,
  );
}
