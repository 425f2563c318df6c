import {
  type AlternatorPoint,
  bladeFuse,
  type BudgetLoad,
  type BudgetState,
  type DischargeStage,
  type FuseFamily,
  largeBladeFuse,
  miniFuse,
  type RestDrain,
  type RestFuse,
  type SensePart,
} from 'loomwright';
import { signedEntriesOf, unread } from '../entries.js';

/** `80 A for 6 min; 8 A for 2 h`: discharges one after the other. */
export function stageList(fn: string, field: string, text: string): DischargeStage[] {
  return signedEntriesOf(text).map((entry) => {
    const match = /^(\d*\.?\d+)\s*A\s+(?:for\s+)?(\d*\.?\d+)\s*(min|h)$/.exec(entry);
    if (match === null) throw unread(fn, field, entry, '80 A for 6 min');
    const time = Number(match[2]);
    return { currentA: Number(match[1]), runTimeH: match[3] === 'min' ? time / 60 : time };
  });
}

const NUMBER = String.raw`(\d*\.?\d+)`;

/** `radio 4 mA on F7; tracker 120 mA 5 % on F8; clock 3 mA`: what draws with everything off. */
export function drainList(fn: string, field: string, text: string): RestDrain[] {
  return signedEntriesOf(text).map((entry) => {
    const pattern = new RegExp(`^(.+?)\\s+${NUMBER}\\s*(µA|uA|mA|A)(?:\\s+${NUMBER}\\s*%)?(?:\\s+on\\s+(\\S+))?$`);
    const match = pattern.exec(entry);
    if (match === null) throw unread(fn, field, entry, 'tracker 120 mA 5 % on F8');
    const [, name = '', amount, unit, percent, fuse] = match;
    const scale = unit === 'A' ? 1 : unit === 'mA' ? 1e-3 : 1e-6;
    return {
      name,
      currentA: Number(amount) * scale,
      dutyFraction: percent === undefined ? 1 : Number(percent) / 100,
      fuse: fuse ?? null,
    };
  });
}

const FAMILIES: Readonly<Record<string, FuseFamily>> = { blade: bladeFuse, mini: miniFuse, large: largeBladeFuse };

/** `F7 blade 10 A; F8 mini 5 A reads 0.8 mV`: fuses that stay live at rest. */
export function restFuseList(fn: string, field: string, text: string): RestFuse[] {
  return signedEntriesOf(text).map((entry) => {
    const pattern = new RegExp(`^(\\S+)\\s+(blade|mini|large)\\s+${NUMBER}\\s*A(?:\\s+reads\\s+${NUMBER}\\s*mV)?$`);
    const match = pattern.exec(entry);
    if (match === null) throw unread(fn, field, entry, 'F7 blade 10 A reads 0.1 mV');
    const [, name = '', kind = '', rating, reading] = match;
    const fuse = { name, family: FAMILIES[kind] as FuseFamily, ratingA: Number(rating) };
    return reading === undefined ? fuse : { ...fuse, measuredMv: Number(reading) };
  });
}

/** `1100 rpm 0 A; 1500 rpm 28 A`: the curve of an alternator. */
export function curveList(fn: string, field: string, text: string): AlternatorPoint[] {
  return signedEntriesOf(text).map((entry) => {
    const match = new RegExp(`^${NUMBER}\\s*rpm\\s+${NUMBER}\\s*A$`).exec(entry);
    if (match === null) throw unread(fn, field, entry, '1500 rpm 28 A');
    return { rotorRpm: Number(match[1]), currentA: Number(match[2]) };
  });
}

/** `idle 800 rpm; hot idle 800 rpm 80 %; parked 0 rpm wants 3 h`: ways in which a vehicle is used. */
export function stateList(fn: string, field: string, text: string): BudgetState[] {
  return signedEntriesOf(text).map((entry) => {
    const pattern = new RegExp(`^(.+?)\\s+${NUMBER}\\s*rpm(?:\\s+${NUMBER}\\s*%)?(?:\\s+wants\\s+${NUMBER}\\s*h)?$`);
    const match = pattern.exec(entry);
    if (match === null) throw unread(fn, field, entry, 'hot idle 800 rpm 80 %');
    const [, name = '', rpm, percent, wanted] = match;
    const outputFactor = percent === undefined ? 1 : Number(percent) / 100;
    const state = { name, engineRpm: Number(rpm), outputFactor };
    return wanted === undefined ? state : { ...state, wantedTimeH: Number(wanted) };
  });
}

/** `fan 20 A #1: idle 40 %, cruise 10 %; engine 12 A: idle, cruise`: loads, their importance, when they are on. */
export function budgetLoadList(fn: string, field: string, text: string): BudgetLoad[] {
  const like = 'fan 20 A #1: idle 40 %, cruise 10 %';
  return signedEntriesOf(text).map((entry) => {
    const match = new RegExp(`^(.+?)\\s+${NUMBER}\\s*(A|W)(?:\\s+#(\\d+))?\\s*:(.*)$`).exec(entry);
    if (match === null) throw unread(fn, field, entry, like);
    const [, name = '', amount, unit, priority, duties = ''] = match;
    const dutyByState = Object.fromEntries(
      duties
        .split(',')
        .map((duty) => duty.trim())
        .filter((duty) => duty !== '')
        .map((duty): [string, number] => {
          const part = new RegExp(`^(.+?)(?:\\s+${NUMBER}\\s*%)?$`).exec(duty);
          if (part === null) throw unread(fn, field, entry, like);
          return [part[1] as string, part[2] === undefined ? 1 : Number(part[2]) / 100];
        }),
    );
    const rest = { priority: priority === undefined ? null : Number(priority), dutyByState };
    return unit === 'A' ? { name, currentA: Number(amount), ...rest } : { name, powerW: Number(amount), ...rest };
  });
}

/** `charge cable + 4 mΩ 60 A; ignition feed + 30 mΩ 10 A back`: what lies between sense points and battery. */
export function sensePartList(fn: string, field: string, text: string): SensePart[] {
  return signedEntriesOf(text).map((entry) => {
    const pattern = new RegExp(`^(.+?)\\s+([+-])\\s*${NUMBER}\\s*(m?)(?:Ω|ohm)\\s+${NUMBER}\\s*A(\\s+back)?$`);
    const match = pattern.exec(entry);
    if (match === null) throw unread(fn, field, entry, 'charge cable + 4 mΩ 60 A');
    const [, name = '', sign, ohm, milli, amps, back] = match;
    return {
      name,
      side: sign === '+' ? 'positive' : 'negative',
      resistanceOhm: Number(ohm) * (milli === 'm' ? 1e-3 : 1),
      currentA: Number(amps),
      flow: back === undefined ? 'charging' : 'discharging',
    };
  });
}
