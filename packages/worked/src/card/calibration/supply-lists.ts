import type { SupplyDevice, SupplyDraw, SupplyLimiter, SupplyPin } from 'loomwright';
import { entriesOf, unread } from '../entries.js';

// Pins and what hangs on them as people write them: entries parted by semicolons, each with its name first.

const FACTOR: Readonly<Record<string, number>> = { '': 1, k: 1e3, M: 1e6, m: 1e-3, µ: 1e-6, u: 1e-6 };
const NUMBER = String.raw`(\d+\.?\d*(?:e[+-]?\d+)?|\.\d+)`;
const AMPS = String.raw`${NUMBER}\s*(m?)A`;
const OHMS = String.raw`${NUMBER}\s*([kMm]?)(?:Ω|ohm)`;
const VOLTS = String.raw`${NUMBER}\s*V`;

/** A number and its prefix. */
const times = (text: string | undefined, prefix: string | undefined): number =>
  Number(text) * (FACTOR[prefix ?? ''] as number);

/** `holds 100 mA`, `folds 100 mA to 30 mA`, `trips 100 mA`; null for anything else. */
function limiterOf(text: string): SupplyLimiter | null {
  const holds = new RegExp(`^holds\\s+${AMPS}$`).exec(text);
  if (holds !== null) return { kind: 'constant', mostA: times(holds[1], holds[2]) };
  const trips = new RegExp(`^trips\\s+${AMPS}$`).exec(text);
  if (trips !== null) return { kind: 'off', tripA: times(trips[1], trips[2]) };
  const folds = new RegExp(`^folds\\s+${AMPS}\\s+to\\s+${AMPS}$`).exec(text);
  if (folds === null) return null;
  return { kind: 'foldback', kneeA: times(folds[1], folds[2]), shortA: times(folds[3], folds[4]) };
}

/** `holds 300 mA`: what a regulator does beyond its limit. */
export function limiterText(fn: string, field: string, text: string): SupplyLimiter {
  const limiter = limiterOf(text.trim());
  if (limiter === null) throw unread(fn, field, text, 'holds 300 mA', 'or folds 300 mA to 80 mA, or trips 300 mA');
  return limiter;
}

/**
 * `VREF1: 60 mA, holds 120 mA, blocks; VREF2: 60 mA, rail, back 0 V`: what a pin may carry, what it does beyond, and
 * whether volts from outside come back into the rail.
 */
export function supplyPinsText(fn: string, field: string, text: string): SupplyPin[] {
  return entriesOf(text).map((entry) => {
    const bad = (): Error => unread(fn, field, entry, 'VREF1: 60 mA, holds 120 mA, blocks');
    const match = new RegExp(`^([^:]+):\\s*${AMPS}\\s*,([^,]+),([^,]+)$`).exec(entry);
    if (match === null) throw bad();
    const [, name = '', amps, prefix, beyond = '', back = ''] = match;
    const limiter = beyond.trim() === 'rail' ? null : limiterOf(beyond.trim());
    if (limiter === null && beyond.trim() !== 'rail') throw bad();
    const behind = new RegExp(`^back\\s+${VOLTS}$`).exec(back.trim());
    if (behind === null && back.trim() !== 'blocks') throw bad();
    const backDropV = behind === null ? null : Number(behind[1]);
    return { name: name.trim(), limitA: times(amps, prefix), limiter, backDropV };
  });
}

/** `12 mA from 4.5 V`, `track 2 kΩ`, `pull-up 1 kΩ over 50 Ω`, `LED 150 Ω at 2 V`. */
function drawOf(text: string): SupplyDraw | null {
  const current = new RegExp(`^${AMPS}\\s+from\\s+${VOLTS}$`).exec(text);
  if (current !== null) {
    return { kind: 'current', currentA: times(current[1], current[2]), worksFromV: Number(current[3]) };
  }
  const track = new RegExp(`^track\\s+${OHMS}$`).exec(text);
  if (track !== null) return { kind: 'resistance', resistanceOhm: times(track[1], track[2]) };
  const pull = new RegExp(`^pull-up\\s+${OHMS}\\s+over\\s+${OHMS}$`).exec(text);
  if (pull !== null) {
    return { kind: 'pull-up', pullOhm: times(pull[1], pull[2]), leastSensorOhm: times(pull[3], pull[4]) };
  }
  const led = new RegExp(`^LED\\s+${OHMS}\\s+at\\s+${VOLTS}$`).exec(text);
  if (led === null) return null;
  return { kind: 'led', resistanceOhm: times(led[1], led[2]), forwardV: Number(led[3]) };
}

/** One clause after pin, draw and tolerance; null where it is none. */
function clauseOf(text: string): Partial<SupplyDevice> | null {
  if (text === 'fixed') return { fixed: true };
  const share = new RegExp(`^gives\\s+${NUMBER}\\s*%$`).exec(text);
  if (share !== null) return { output: { kind: 'share', outFraction: Number(share[1]) / 100 } };
  const volts = new RegExp(`^gives\\s+${VOLTS}$`).exec(text);
  if (volts !== null) return { output: { kind: 'volts', outV: Number(volts[1]) } };
  const stands = new RegExp(`^stands\\s+${VOLTS}$`).exec(text);
  if (stands !== null) return { standsV: Number(stands[1]) };
  const days = new RegExp(`^cold\\s+${NUMBER}\\s+hot\\s+${NUMBER}$`).exec(text);
  if (days !== null) return { coldFactor: Number(days[1]), hotFactor: Number(days[2]) };
  const tracks = /^one of\s+(.+)$/.exec(text);
  return tracks === null ? null : { trackOf: tracks[1] as string };
}

/**
 * `pedal 1: VREF1, track 2 kΩ, 20 %, one of pedal, gives 18 %; boost: VREF2, 12 mA from 4.5 V, 10 %, stands 6.5 V`:
 * pin, draw, tolerance, and what else is known: what it gives now, what it stands, cold and hot, `fixed`.
 */
export function supplyDevicesText(fn: string, field: string, text: string): SupplyDevice[] {
  return entriesOf(text).map((entry) => {
    const bad = (): Error => unread(fn, field, entry, 'boost: VREF2, 12 mA from 4.5 V, 10 %, gives 45 %, stands 6.5 V');
    const match = new RegExp(`^([^:]+):([^,]+),([^,]+),\\s*${NUMBER}\\s*%((?:,[^,]+)*)$`).exec(entry);
    if (match === null) throw bad();
    const [, name = '', pin = '', drawn = '', percent, rest = ''] = match;
    const draw = drawOf(drawn.trim());
    if (draw === null) throw bad();
    const clauses = rest
      .split(',')
      .slice(1)
      .map((clause) => clauseOf(clause.trim()));
    if (clauses.includes(null)) throw bad();
    const base: SupplyDevice = {
      name: name.trim(),
      pin: pin.trim(),
      draw,
      toleranceFraction: Number(percent) / 100,
      standsV: null,
    };
    return Object.assign(base, ...clauses) as SupplyDevice;
  });
}
