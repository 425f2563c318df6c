import type { SplitCharge } from 'loomwright';
import type { ChartSpec } from '@loomwright/worked/plot';

/** Charge of both batteries over the drive, with the charge that is wanted. */
export function chargeOverDrive(found: SplitCharge, wantedChargeFraction: number): ChartSpec {
  const line = (of: (point: SplitCharge['fill'][number]) => number): [number, number][] =>
    found.fill.map((point) => [point.driveTimeH, 100 * of(point)]);
  return {
    title: 'Charge over the drive',
    x: { label: 'Driving', unit: 'h' },
    y: { label: 'Charge', unit: '%' },
    series: [
      {
        name: 'starter battery',
        points: line(({ starterChargeFraction }) => starterChargeFraction),
        colour: 'verdigris',
        as: 'line',
        labelAt: 3,
      },
      {
        name: 'service battery',
        points: line(({ serviceChargeFraction }) => serviceChargeFraction),
        colour: 'copper',
        as: 'line',
        labelAt: 14,
      },
    ],
    limits: [{ axis: 'y', value: 100 * wantedChargeFraction, name: 'wanted', fails: 'below' }],
  };
}

/** Current into the service battery over the drive. */
export function currentOverDrive(found: SplitCharge): ChartSpec {
  return {
    title: 'Current into the service battery over the drive',
    x: { label: 'Driving', unit: 'h' },
    y: { label: 'Into the service battery', unit: 'A' },
    series: [
      {
        name: 'service battery',
        points: found.fill.map(({ driveTimeH, serviceA }): [number, number] => [driveTimeH, serviceA]),
        colour: 'copper',
        as: 'line',
        labelAt: 16,
        labelSide: 'above',
      },
    ],
  };
}
