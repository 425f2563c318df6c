// Five second tracks beside one first track: the invented pedal of the page, each with the smallest band that its own
// healthy pedal never trips.
import { dualTrack, type DualTrackInput, type DualTrackResult } from 'loomwright';
import { dualTrackCard, exampleValues, inputOf } from '@loomwright/worked/card';

export interface PedalShape {
  readonly name: string;
  readonly bandV: number;
  readonly output: DualTrackResult;
}

/** The pedal of the card's example. */
export const examplePedal: DualTrackInput = inputOf(dualTrackCard, exampleValues(dualTrackCard));

const seconds = [
  { name: 'half of the first', releasedV: 0.4, pressedV: 2, ratio: 0.5, offsetV: 0 },
  { name: 'the same as the first', releasedV: 0.8, pressedV: 4, ratio: 1, offsetV: 0 },
  { name: 'half, and 0.8 V higher', releasedV: 1.2, pressedV: 2.8, ratio: 0.5, offsetV: 0.8 },
  { name: 'mirrored, the same slope', releasedV: 4.2, pressedV: 1, ratio: -1, offsetV: 5 },
  { name: 'mirrored, half the slope', releasedV: 2.6, pressedV: 1, ratio: -0.5, offsetV: 3 },
];

/** The five pedals with their answers. */
export function pedalShapes(): readonly PedalShape[] {
  return seconds.map(({ name, releasedV, pressedV, ratio, offsetV }) => {
    const second = {
      ...examplePedal.second,
      releasedV,
      pressedV,
      lowLimitV: Math.min(releasedV, pressedV) - 0.2,
      highLimitV: Math.max(releasedV, pressedV) + 0.3,
    };
    const input: DualTrackInput = { ...examplePedal, second, ratio, offsetV, band: { by: 'volts', bandV: 1 } };
    const bandV = dualTrack(input).leastBandV;
    return { name, bandV, output: dualTrack({ ...input, band: { by: 'volts', bandV } }) };
  });
}
