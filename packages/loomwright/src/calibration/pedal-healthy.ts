import { type BandEdges, type ExpectedLine, secondLimits } from './pedal-band.js';
import { pinVolts } from './pedal-pins.js';
import { goodWires, type PedalModel, shareAt } from './pedal-state.js';
import type { PedalTrack } from './pedal-track.js';

/** Lowest and highest volts of both inputs, tolerances and converter at their worst, while the supply is one value. */
export interface HealthyCorner {
  readonly travelFraction: number;
  readonly first: readonly [number, number];
  readonly second: readonly [number, number];
}

const PLACES = 201;

/**
 * Both inputs of a healthy pedal at 201 places. With one supply wire both tracks have the same supply, so its two ends
 * are kept apart; with two they may be at different ends.
 */
export function healthyCorners(model: PedalModel, supplyToleranceFraction: number): readonly HealthyCorner[] {
  const supplies = [model.supplyV * (1 - supplyToleranceFraction), model.supplyV * (1 + supplyToleranceFraction)];
  const groups = model.wiring === 'shared' ? supplies.map((v) => [v]) : [supplies];
  return Array.from({ length: PLACES }, (_, i) => i / (PLACES - 1)).flatMap((travelFraction) =>
    groups.map((group): HealthyCorner => {
      const found = group.flatMap((supplyV) => cornersAt(model, supplyV, travelFraction));
      const range = (t: 0 | 1): readonly [number, number] => {
        const off = model.tracks[t].converterErrorV;
        const volts = found.map((pins) => pins[t]);
        return [Math.min(...volts) - off, Math.max(...volts) + off];
      };
      return { travelFraction, first: range(0), second: range(1) };
    }),
  );
}

/** Both tracks with their tolerance down and up, each with its pulls drawing down and drawing up. */
function cornersAt(model: PedalModel, feedV: number, travel: number): readonly (readonly [number, number])[] {
  const { tracks, supplyV, wiring } = model;
  const wires = goodWires({ supplyV: feedV, wiring });
  return [-1, 1].flatMap((side) =>
    [-1, 1].map((pull): readonly [number, number] => {
      const shares = tracks.map((track) => {
        const share = shareAt(track, supplyV, travel) + (side * track.toleranceV) / supplyV;
        return Math.min(1, Math.max(0, share));
      }) as [number, number];
      const pulled = tracks.map((track): PedalTrack => {
        const { pullUpOhm, pullDownOhm, pullToleranceFraction: off } = track;
        return {
          ...track,
          pullUpOhm: pullUpOhm === null ? null : pullUpOhm * (1 - pull * off),
          pullDownOhm: pullDownOhm === null ? null : pullDownOhm * (1 + pull * off),
        };
      }) as [PedalTrack, PedalTrack];
      return pinVolts(pulled, shares, supplyV, wires) as readonly [number, number];
    }),
  );
}

/** Least room of a healthy pedal in a band, and where. */
export function roomInBand(
  edges: BandEdges,
  corners: readonly HealthyCorner[],
): { readonly roomV: number; readonly atFraction: number } {
  let best = { roomV: Infinity, atFraction: 0 };
  for (const { travelFraction, first, second } of corners) {
    const bends = edges.lowest.map(({ inValue }) => inValue).filter((v) => v > first[0] && v < first[1]);
    for (const firstV of [...first, ...bends]) {
      const [least, most] = secondLimits(edges, firstV);
      const roomV = Math.min(second[0] - least, most - second[1]);
      if (roomV < best.roomV) best = { roomV, atFraction: travelFraction };
    }
  }
  return best;
}

/** Most that a healthy second input is off what the first makes expected. */
export function worstDisagreement({ ratio, offsetV }: ExpectedLine, corners: readonly HealthyCorner[]): number {
  return Math.max(
    ...corners.flatMap(({ first, second }) =>
      first.flatMap((firstV) => second.map((secondV) => Math.abs(secondV - ratio * firstV - offsetV))),
    ),
  );
}
