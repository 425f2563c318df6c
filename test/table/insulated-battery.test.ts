import { describe, expect, it } from 'vitest';
import {
  flexibleBatteryPvc,
  h01n2d,
  iec60228Class5,
  insulatedWire,
  weldingCable,
  weldingCableConductor,
} from 'loomwright';
import { insulatedRows } from '../support/insulated-rows.js';
import { expectPrinted, transcribed, type Citation } from '../support/published.js';
import { conductorRows, fallsRowByRow, withinBand } from '../support/table-law.js';

const sheet: Citation = {
  source: 'welding-cable-data',
  place: 'covering, diameter, mass, resistance',
  status: 'published',
};
const h01: Citation = { source: 'h01n2-d', place: 'least and largest diameters', status: 'memory' };
const pvc: Citation = { source: 'battery-cable-practice', place: 'diameters as commonly sold', status: 'memory' };

describe('published', () => {
  // The mass of 150 mm² is printed as 1360 kg/km, which is that of its copper alone: it is not in the table.
  insulatedRows(weldingCable, sheet, [
    ['16', '-', '2.0', '9.7', '215'],
    ['25', '-', '2.0', '11.2', '305'],
    ['35', '-', '2.0', '12.4', '400'],
    ['50', '-', '2.2', '14.3', '587'],
    ['70', '-', '2.4', '16.3', '775'],
    ['95', '-', '2.6', '18.6', '1040'],
    ['120', '-', '2.8', '20.3', '1256'],
    ['150', '-', '3.0', '22.6', '-'],
    ['185', '-', '3.2', '24.7', '1875'],
    ['240', '-', '3.4', '27.8', '2534'],
  ]);
  insulatedRows(h01n2d, h01, [
    ['10', '-', '-', '9.7', '-'],
    ['16', '-', '-', '11.0', '-'],
    ['25', '-', '-', '12.7', '-'],
    ['35', '-', '-', '14.2', '-'],
    ['50', '-', '-', '16.5', '-'],
    ['70', '-', '-', '19.2', '-'],
    ['95', '-', '-', '21.4', '-'],
    ['120', '-', '-', '24.0', '-'],
  ]);
  insulatedRows(flexibleBatteryPvc, pvc, [
    ['10', '-', '-', '6.5', '-'],
    ['16', '-', '-', '8.0', '-'],
    ['25', '-', '-', '10.0', '-'],
    ['35', '-', '-', '11.5', '-'],
    ['50', '-', '-', '13.2', '-'],
    ['70', '-', '-', '15.5', '-'],
    ['95', '-', '-', '17.8', '-'],
    ['120', '-', '-', '20.5', '-'],
  ]);
  for (const [size, print] of [
    ['10', '7.7'],
    ['16', '8.8'],
    ['25', '10.1'],
    ['35', '11.4'],
    ['50', '13.2'],
    ['70', '15.3'],
    ['95', '17.1'],
    ['120', '19.2'],
  ] as const) {
    transcribed(`H01N2-D ${size} mm² at least ${print} mm`, h01, () =>
      expectPrinted(insulatedWire({ wireTable: h01n2d, size }).leastOuterMm!, print, 0),
    );
  }
  for (const [size, print] of [
    ['10', '6.0'],
    ['16', '7.6'],
    ['25', '9.4'],
    ['35', '11.0'],
    ['50', '12.8'],
    ['70', '15.0'],
    ['95', '17.3'],
    ['120', '19.5'],
  ] as const) {
    transcribed(`battery cable ${size} mm² at least ${print} mm`, pvc, () =>
      expectPrinted(insulatedWire({ wireTable: flexibleBatteryPvc, size }).leastOuterMm!, print, 0),
    );
  }
  conductorRows(weldingCableConductor, sheet, [
    ['10', '1.91'],
    ['16', '1.21'],
    ['25', '0.780'],
    ['35', '0.554'],
    ['50', '0.386'],
    ['70', '0.272'],
    ['95', '0.206'],
    ['120', '0.161'],
    ['150', '0.129'],
    ['185', '0.106'],
    ['240', '0.0817'],
  ]);
});

describe('independent', () => {
  it('the sheet prints the resistances of IEC 60228 class 5', () => {
    for (const [size, printed] of iec60228Class5.rows) {
      const own = weldingCableConductor.rows.find(([name]) => name === size);
      if (own !== undefined) expect(own[1], size).toBe(printed);
    }
  });
});

describe('laws', () => {
  fallsRowByRow(weldingCableConductor);
  withinBand(weldingCableConductor, 1.1, 1.15);
  it('the sheet lies within the limits of H01N2-D', () => {
    for (const [size] of h01n2d.rows) {
      if (size === '10') continue;
      const { outerDiameterMm } = insulatedWire({ wireTable: weldingCable, size });
      const limits = insulatedWire({ wireTable: h01n2d, size });
      expect(outerDiameterMm, size).toBeGreaterThanOrEqual(limits.leastOuterMm!);
      expect(outerDiameterMm, size).toBeLessThanOrEqual(limits.outerDiameterMm);
    }
  });
  it('the copper of the cable fits within its covering', () => {
    for (const [size, , wall, outer] of weldingCable.rows) {
      const fill = Number(size) / ((Math.PI / 4) * (outer - 2 * wall!) ** 2);
      expect(fill, size).toBeGreaterThan(0.55);
      expect(fill, size).toBeLessThan(0.75);
    }
  });
});
