import { needEarthly, needMoreThan } from '../error/bounded.js';
import { needObject, needOneOf } from '../error/guard.js';

/** How what is measured moves, without the load and with it. */
export type SwitchProcess =
  | {
      /** By so much a second away without the load, and back with it: both above 0. */
      readonly kind: 'rates';
      readonly awayPerS: number;
      readonly backPerS: number;
    }
  | {
      /** Towards one value without the load and another with it, by 63 % of what is left in each time constant. */
      readonly kind: 'first-order';
      readonly withoutValue: number;
      readonly withValue: number;
      /** Time constant in s, above 0. */
      readonly timeConstantS: number;
    };

export function needProcess(fn: string, field: string, process: SwitchProcess): void {
  needObject(fn, field, process);
  needOneOf(fn, `${field}.kind`, process.kind, ['rates', 'first-order']);
  if (process.kind === 'rates') {
    needMoreThan(fn, `${field}.awayPerS`, process.awayPerS);
    needMoreThan(fn, `${field}.backPerS`, process.backPerS);
    return;
  }
  needEarthly(fn, `${field}.withoutValue`, process.withoutValue);
  needEarthly(fn, `${field}.withValue`, process.withValue);
  needMoreThan(fn, `${field}.timeConstantS`, process.timeConstantS);
}

/** Where a process is after a time, ahead or back; `way` is 1 where the load is switched on by what rises, else −1. */
export function moved(process: SwitchProcess, way: number, on: boolean, from: number, timeS: number): number {
  if (process.kind === 'rates') return from + way * (on ? -process.backPerS : process.awayPerS) * timeS;
  const goal = on ? process.withValue : process.withoutValue;
  return goal + (from - goal) * Math.exp(-timeS / process.timeConstantS);
}

/** Whether it goes where it should from here: back with the load on, away with it off. */
export function goesOn(process: SwitchProcess, way: number, on: boolean, from: number): boolean {
  if (process.kind === 'rates') return true;
  return on ? way * (from - process.withValue) > 0 : way * (process.withoutValue - from) > 0;
}

/** How long it takes from one place to another, which must lie before its goal. */
export function timeBetween(process: SwitchProcess, on: boolean, from: number, to: number): number {
  if (process.kind === 'rates') return Math.abs(to - from) / (on ? process.backPerS : process.awayPerS);
  const goal = on ? process.withValue : process.withoutValue;
  return process.timeConstantS * Math.log((from - goal) / (to - goal));
}
