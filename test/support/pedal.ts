// Pedals at random, and the same circuit told twice more: as a netlist for the simulator, and as a plain solver that
// shares no code with the library.
import fc from 'fast-check';
import type { DualTrackInput, PedalFault, PedalTrack } from 'loomwright';

type Cause = Pick<PedalFault, 'kind' | 'at'> | null;
type Part = readonly [from: string, to: string, ohm: number];

/** A part list with every node that is held; a node that is not named in a part is not there. */
interface Circuit {
  readonly parts: readonly Part[];
  readonly held: Readonly<Record<string, number>>;
}

/** The circuit of a pedal at one place with one fault, wire by wire. `shares` replaces the nominal ones. */
export function circuitOf(
  input: DualTrackInput,
  cause: Cause,
  travel: number,
  feedV = input.supplyV,
  shares?: readonly [number, number],
): Circuit {
  const parts: Part[] = [];
  const held: Record<string, number> = { zero: 0, rail: input.supplyV };
  const hit = (kind: PedalFault['kind'], t: 1 | 2): boolean =>
    cause?.kind === kind && (cause.at === 'both' || cause.at === (t === 1 ? 'first' : 'second'));
  ([1, 2] as const).forEach((t) => {
    const track = t === 1 ? input.first : input.second;
    const wire = input.wiring === 'shared' ? 1 : t;
    const [supply, ground] = [`s${wire}`, `g${wire}`];
    const pin = cause?.kind === 'signals-together' ? 'p1' : `p${t}`;
    const noSupply = hit('supply-open', t);
    const noGround = hit('ground-open', t);
    if (!noSupply) held[supply] = hit('supply-sags', t) ? input.sagSupplyV : feedV;
    if (!noGround) held[ground] = hit('ground-raised', t) ? input.raisedGroundV : 0;
    const share = shares?.[t - 1] ?? (track.releasedV * (1 - travel) + track.pressedV * travel) / input.supplyV;
    if (track.kind === 'potentiometer') {
      parts.push([supply, `w${t}`, Math.max(track.resistanceOhm * (1 - share), 1e-3)]);
      parts.push([`w${t}`, ground, Math.max(track.resistanceOhm * share, 1e-3)]);
      if (!hit('signal-open', t)) parts.push([`w${t}`, pin, track.seriesOhm]);
    } else if (!hit('signal-open', t)) {
      if (!noSupply && !noGround) {
        held[`w${t}`] = (held[ground] as number) * (1 - share) + (held[supply] as number) * share;
        parts.push([`w${t}`, pin, track.seriesOhm]);
      } else if (noGround && !noSupply && track.lostGround === 'to-supply') parts.push([supply, pin, track.seriesOhm]);
      else if (noSupply && !noGround && track.lostSupply === 'to-ground') parts.push([ground, pin, track.seriesOhm]);
    }
    if (track.pullUpOhm !== null) parts.push([pin, 'rail', track.pullUpOhm]);
    if (track.pullDownOhm !== null) parts.push([pin, 'zero', track.pullDownOhm]);
    if (track.inputOhm !== null) parts.push([pin, 'zero', track.inputOhm]);
    if (hit('signal-to-ground', t)) held[pin] = 0;
    if (hit('signal-to-supply', t)) held[pin] = input.supplyV;
    if (hit('signal-to-battery', t)) held[pin] = input.batteryV;
  });
  return { parts, held };
}

/** The circuit as lines of a netlist, each node with a word of its own behind it. */
export function netlistOf({ parts, held }: Circuit, word: string): string[] {
  return [
    ...Object.entries(held).map(([node, v]) => `v${node}${word} ${node}${word} 0 ${v}`),
    ...parts.map(([a, b, ohm], i) => `r${i}${word} ${a}${word} ${b}${word} ${ohm}`),
  ];
}

/** Volts at both inputs, by Gauss and Jordan over every node; null where nothing holds an input. */
export function naivePins(circuit: Circuit, together: boolean): readonly [number | null, number | null] {
  const { parts, held } = circuit;
  const nodes = [...new Set(parts.flatMap(([a, b]) => [a, b]))].filter((node) => !(node in held));
  const rows = nodes.map((node) => {
    const row = new Array<number>(nodes.length + 1).fill(0);
    for (const [a, b, ohm] of parts) {
      if (a !== node && b !== node) continue;
      const other = a === node ? b : a;
      row[nodes.indexOf(node)]! += 1 / ohm;
      if (other in held) row[nodes.length]! += held[other]! / ohm;
      else row[nodes.indexOf(other)]! -= 1 / ohm;
    }
    return row;
  });
  for (let k = 0; k < nodes.length; k++) {
    const best = rows.slice(k).reduce((a, b) => (Math.abs(b[k]!) > Math.abs(a[k]!) ? b : a));
    rows.splice(rows.indexOf(best), 1);
    rows.splice(k, 0, best);
    for (const row of rows) {
      if (row === best) continue;
      const f = row[k]! / best[k]!;
      for (let j = k; j < row.length; j++) row[j]! -= f * best[j]!;
    }
  }
  const of = (node: string): number | null => {
    if (node in held) return held[node]!;
    const k = nodes.indexOf(node);
    return k < 0 ? null : rows[k]![nodes.length]! / rows[k]![k]!;
  };
  return [of('p1'), of(together ? 'p1' : 'p2')];
}

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const ohm = (low: number, high: number) => between(Math.log(low), Math.log(high)).map((x) => Math.exp(x));

const trackAt = (releasedV: number, pressedV: number): fc.Arbitrary<PedalTrack> =>
  fc
    .record({
      active: fc.boolean(),
      resistanceOhm: ohm(500, 20_000),
      seriesOhm: ohm(10, 2000),
      pull: fc.constantFrom('up', 'down', 'both', 'none'),
      pullUpOhm: ohm(5000, 1e6),
      pullDownOhm: ohm(5000, 1e6),
      inputOhm: fc.option(ohm(1e5, 1e7)),
      lostSupply: fc.constantFrom('floats' as const, 'to-ground' as const),
      lostGround: fc.constantFrom('floats' as const, 'to-supply' as const),
      toleranceV: between(0, 0.05),
      lowLimitV: between(0.05, 0.4),
      highLimitV: between(4.6, 4.95),
    })
    .map(({ active, resistanceOhm, pull, pullUpOhm, pullDownOhm, lostSupply, lostGround, ...rest }) => ({
      ...rest,
      ...(active
        ? { kind: 'active' as const, lostSupply, lostGround }
        : { kind: 'potentiometer' as const, resistanceOhm }),
      pullUpOhm: pull === 'up' || pull === 'both' ? pullUpOhm : null,
      pullDownOhm: pull === 'down' || pull === 'both' ? pullDownOhm : null,
      pullToleranceFraction: 0.05,
      converterErrorV: 0.005,
      releasedV,
      pressedV,
    }));

/** Pedals of every kind: half slope, shifted, mirrored; tracks of either kind, with and without pulls; three bands. */
export const anyPedal: fc.Arbitrary<DualTrackInput> = fc
  .record({
    released: between(0.5, 1.2),
    pressed: between(3, 4.4),
    shape: fc.constantFrom('half', 'shifted', 'mirrored', 'mirrored-half'),
    wiring: fc.constantFrom('own' as const, 'shared' as const),
    shows: fc.constantFrom('first' as const, 'lowest' as const, 'mean' as const),
    by: fc.constantFrom('volts', 'travel', 'rows'),
    bandV: between(0.05, 0.4),
    sagSupplyV: between(3, 4.9),
    raisedGroundV: between(0.02, 1.5),
  })
  .chain(({ released, pressed, shape, by, bandV, ...rest }) => {
    const line = {
      half: { ratio: 0.5, offsetV: 0 },
      shifted: { ratio: 0.8, offsetV: 0.4 },
      mirrored: { ratio: -1, offsetV: 5 },
      'mirrored-half': { ratio: -0.5, offsetV: 3 },
    }[shape];
    const second = (v: number): number => line.ratio * v + line.offsetV;
    const row = (firstV: number, by_: number) => ({
      firstV,
      lowestSecondV: Math.max(0, second(firstV) - by_),
      highestSecondV: second(firstV) + by_,
    });
    const band: DualTrackInput['band'] =
      by === 'volts'
        ? { by: 'volts', bandV }
        : by === 'travel'
          ? { by: 'travel', bandFraction: bandV / 3 }
          : { by: 'rows', rows: [row(0.4, bandV), row(2, bandV * 0.7), row(4.6, bandV * 1.3)] };
    return fc
      .tuple(trackAt(released, pressed), trackAt(second(released), second(pressed)))
      .map(([a, b]): DualTrackInput => ({
        ...rest,
        ...line,
        supplyV: 5,
        supplyToleranceFraction: 0.01,
        first: a,
        second: b,
        band,
        disagreeS: 0.3,
        rangeS: 0.1,
        sampleS: 0.01,
        batteryV: 14.4,
        guardV: 0,
        allowedErrorFraction: 0.05,
      }));
  });
