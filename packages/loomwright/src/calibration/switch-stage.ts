import { goesOn, moved, type SwitchProcess, timeBetween } from './switch-process.js';
import { readV, type SensorEnd, type TalkBack, trueOf, valueOf, voltsOf } from './switch-sensor.js';

/** One load, or one speed of it: where it goes on, and what it does to its own sensor. */
export interface SwitchStage extends TalkBack {
  /** Reading at which it goes on. */
  readonly onValue: number;
  /** Reading at which it goes off, where that is set already. */
  readonly offValue?: number;
  /** How what is measured moves; null where nothing is known: then nothing is said of times. */
  readonly process: SwitchProcess | null;
}

/** What the least band is made of. */
export interface BandPart {
  readonly name: 'talk-back' | 'process' | 'noise' | 'converter';
  readonly partV: number;
  /** The same in the sensor's unit, by its slope where the load goes on. */
  readonly partValue: number;
}

export interface SwitchStageResult {
  /** Thresholds as the controller holds them: reading, volts, count. */
  readonly onValue: number;
  readonly offValue: number;
  readonly onV: number;
  readonly offV: number;
  readonly onCount: number;
  readonly offCount: number;
  readonly bandValue: number;
  readonly bandV: number;
  /** The least band with which the load does not switch itself, and its parts, which add up to it in volts. */
  readonly leastBandV: number;
  readonly leastBandValue: number;
  readonly parts: readonly BandPart[];
  /** Which moment asks for it: just after the load went on, or just after it went off. */
  readonly moment: 'after-on' | 'after-off';
  /** Room of the band over the least, as a fraction of the least. */
  readonly marginFraction: number;
  /** What one volt more means where it goes on. */
  readonly valuePerV: number;
  /** By how much the reading jumps when the load goes on there: below 0 where it falls. */
  readonly jumpV: number;
  readonly jumpValue: number;
  /** How far it really goes on either side, with noise, converter and delay against it; null without a process. */
  readonly highestValue: number | null;
  readonly lowestValue: number | null;
  /** Time on, time off, and how often it starts; null without a process, and where one never ends. */
  readonly onTimeS: number | null;
  readonly offTimeS: number | null;
  readonly cyclesPerH: number | null;
  /** Why there are no cycles: nothing known, never switched on, never off again, or a band that does not hold. */
  readonly noCycle: 'no-process' | 'never-on' | 'never-off' | 'no-band' | null;
}

/** What all stages share. */
export interface StageCommon extends SensorEnd {
  readonly acts: 'lowers' | 'raises';
  readonly noiseV: number;
  readonly stepV: number;
  readonly countMost: number;
  readonly delayS: number;
  readonly marginFraction: number;
}

/** A load at the moment that it goes on. */
interface Turn {
  readonly common: StageCommon;
  readonly stage: SwitchStage;
  /** What its sensor suffers before. */
  readonly before: TalkBack;
  /** 1 where volts rise towards going on, −1 where they fall; and the same for the reading. */
  readonly dir: number;
  readonly way: number;
  readonly onV: number;
}

interface Need {
  readonly offV: number;
  readonly talkV: number;
  readonly processV: number;
}

/** A threshold on a whole count, without the dust of binary fractions. */
function countOf(volts: number, stepV: number, way: 'floor' | 'ceil'): number {
  const steps = volts / stepV;
  const whole = Math.round(steps);
  return Math.abs(steps - whole) < 1e-9 * Math.max(1, Math.abs(steps)) ? whole : Math[way](steps);
}

/** One stage; null where a threshold or what is read beyond it lies off the sensor or the converter. */
export function stageOf(common: StageCommon, stage: SwitchStage, before: TalkBack): SwitchStageResult | null {
  const { acts, noiseV, stepV, countMost, marginFraction } = common;
  const way = acts === 'lowers' ? 1 : -1;
  const wantedV = voltsOf(common, stage.onValue);
  const around = wantedV === null ? null : slopeAt(common, stage.onValue, wantedV);
  if (wantedV === null || around === null) return null;
  const dir = way * Math.sign(around);
  // The load goes on at the earlier count, and off at the further one.
  const onCount = countOf(wantedV, stepV, dir > 0 ? 'floor' : 'ceil');
  const onV = onCount * stepV;
  const onValue = valueOf(common, onV);
  const turn: Turn = { common, stage, before, dir, way, onV };
  const afterOn = needAfterOn(turn);
  const afterOff = needAfterOff(turn);
  if (onValue === null || afterOn === null || afterOff === null) return null;
  const moment = dir * (afterOff.offV - afterOn.offV) < 0 ? 'after-off' : 'after-on';
  const need = moment === 'after-on' ? afterOn : afterOff;
  const leastBandV = need.talkV + need.processV + 2 * noiseV + stepV;
  const givenV = stage.offValue === undefined ? null : voltsOf(common, stage.offValue);
  if (stage.offValue !== undefined && givenV === null) return null;
  const offCount =
    givenV === null
      ? onCount - dir * countOf(leastBandV * (1 + marginFraction), stepV, 'ceil')
      : countOf(givenV, stepV, dir > 0 ? 'floor' : 'ceil');
  const offV = offCount * stepV;
  const offValue = valueOf(common, offV);
  const leastAt = valueOf(common, onV - dir * leastBandV);
  if (offValue === null || leastAt === null || Math.min(onCount, offCount) < 0) return null;
  if (Math.max(onCount, offCount) > countMost) return null;
  const bandV = dir * (onCount - offCount) * stepV;
  const valuePerV = slopeAt(common, onValue, onV) ?? around;
  const jumpedV = readV(common, trueOf(common, onV, before) ?? NaN, stage);
  if (jumpedV === null) return null;
  const part = (name: BandPart['name'], partV: number): BandPart => {
    return { name, partV, partValue: partV * Math.abs(valuePerV) };
  };
  return {
    onValue,
    offValue,
    onV,
    offV,
    onCount,
    offCount,
    bandValue: way * (onValue - offValue),
    bandV,
    leastBandV,
    leastBandValue: way * (onValue - leastAt),
    parts: [
      part('talk-back', need.talkV),
      part('process', need.processV),
      part('noise', 2 * noiseV),
      part('converter', stepV),
    ],
    moment,
    marginFraction: bandV / leastBandV - 1,
    valuePerV,
    jumpV: jumpedV - onV,
    jumpValue: (jumpedV - onV) * valuePerV,
    ...timesOf(turn, offV),
  };
}

/** What one volt more means at a place, from a step of a hundred-thousandth of the supply to either side. */
function slopeAt(end: SensorEnd, value: number, inputV: number): number | null {
  const step = 1e-5 * end.supplyV;
  const above = valueOf(end, inputV + step);
  const below = valueOf(end, inputV - step);
  if (above !== null && below !== null) return (above - below) / (2 * step);
  if (above !== null) return (above - value) / step;
  return below === null ? null : (value - below) / step;
}

/** Just after the load went on: its reading, moved on for the delay, must not be taken for the one that ends it. */
function needAfterOn({ common, stage, before, dir, way, onV }: Turn): Need | null {
  const { process } = stage;
  const here = trueOf(common, onV, before);
  if (here === null) return null;
  const runs = process !== null && goesOn(process, way, true, here);
  const later = runs ? moved(process, way, true, here, common.delayS) : here;
  const jumped = readV(common, here, stage);
  const settled = readV(common, later, stage);
  if (jumped === null || settled === null) return null;
  const talkV = Math.max(0, dir * (onV - jumped));
  const processV = Math.max(0, dir * (jumped - settled));
  return { talkV, processV, offV: onV - dir * (talkV + processV + 2 * common.noiseV + common.stepV) };
}

/** Just after it went off: the reading jumps back, moves on for the delay, and must not start it again. */
function needAfterOff({ common, stage, before, dir, way, onV }: Turn): Need | null {
  const { process } = stage;
  const settledV = onV - dir * (2 * common.noiseV + common.stepV);
  const later = trueOf(common, settledV, before);
  if (later === null) return null;
  const runs = process !== null && goesOn(process, way, false, later);
  const here = runs ? moved(process, way, false, later, -common.delayS) : later;
  const backV = readV(common, here, before);
  const withV = readV(common, here, stage);
  if (backV === null || withV === null) return null;
  const processV = Math.max(0, dir * (settledV - backV));
  const talkV = Math.max(0, dir * (backV - withV));
  return { talkV, processV, offV: settledV - dir * (processV + talkV) };
}

type Times = Pick<
  SwitchStageResult,
  'highestValue' | 'lowestValue' | 'onTimeS' | 'offTimeS' | 'cyclesPerH' | 'noCycle'
>;

function timesOf({ common, stage, before, dir, way, onV }: Turn, offV: number): Times {
  const none = { highestValue: null, lowestValue: null, onTimeS: null, offTimeS: null, cyclesPerH: null };
  const { process } = stage;
  if (process === null) return { ...none, noCycle: 'no-process' };
  const { noiseV, stepV, delayS } = common;
  const starts = trueOf(common, onV, before);
  const ends = trueOf(common, offV, stage);
  const latest = trueOf(common, onV + dir * (noiseV + stepV), before);
  const last = trueOf(common, offV - dir * (noiseV + stepV), stage);
  const stops = (on: boolean, from: number | null): number | null => {
    if (from === null) return null;
    if (goesOn(process, way, on, from)) return moved(process, way, on, from, delayS);
    // It settles before that place, and never gets there.
    return process.kind === 'rates' ? from : on ? process.withValue : process.withoutValue;
  };
  const [far, near] = [stops(false, latest), stops(true, last)];
  const [highestValue, lowestValue] = way > 0 ? [far, near] : [near, far];
  const reach = { ...none, highestValue, lowestValue };
  if (starts === null || ends === null || !(way * (starts - ends) > 0)) return { ...reach, noCycle: 'no-band' };
  if (!goesOn(process, way, false, starts)) return { ...reach, noCycle: 'never-on' };
  if (!goesOn(process, way, true, ends)) return { ...reach, noCycle: 'never-off' };
  const top = moved(process, way, false, starts, delayS);
  const bottom = moved(process, way, true, ends, delayS);
  const onTimeS = timeBetween(process, true, top, bottom);
  const offTimeS = timeBetween(process, false, bottom, top);
  if (!Number.isFinite(onTimeS + offTimeS)) return { ...reach, noCycle: 'no-band' };
  return { ...reach, onTimeS, offTimeS, cyclesPerH: 3600 / (onTimeS + offTimeS), noCycle: null };
}
