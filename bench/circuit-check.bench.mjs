// The whole check of one circuit: a size for the feed with the heat of its wire, the fuse with its pulses and what it
// lets through, the relay that switches it; against one solve of the temperature of one wire.
import {
  bladeFuse,
  checkFuse,
  chooseFuse,
  conductorTemperature,
  heatingByBalance,
  iso19642,
  iso19642ThinWall,
  relayPickup,
  sizeFeed,
} from 'loomwright';

const wireInAir = {
  resistanceOhmPerM: 0.0076,
  ratedTempC: 20,
  conductorDiameterMm: 2.2,
  outerDiameterMm: 3,
  insulationConductivityWPerMK: 0.17,
  ambientTempC: 50,
  altitudeM: 0,
};

const feed = (currentA) =>
  sizeFeed({
    supplyV: 13.8,
    outParts: [
      { name: 'fuse', fuse: 'chosen' },
      { name: 'relay', kind: 'relay', resistanceOhm: 0.005 },
      { name: 'terminals', kind: 'terminal', resistanceOhm: 0.008 },
      { name: 'wire out', lengthM: 5.2 },
    ],
    returnParts: [{ name: 'wire back', lengthM: 0.6 }],
    load: { kind: 'constant-current', currentA },
    resistanceBasis: iso19642,
    limits: { dropV: 0.5 },
    judgedAtV: [9, 14.4],
    heating: {
      by: heatingByBalance,
      wireTable: iso19642ThinWall,
      insulationTempC: 105,
      ambientTempC: 50,
      altitudeM: 0,
      insulationConductivityWPerMK: 0.17,
      bundleFactor: 1,
    },
    leastAreaMm2: 0.75,
    protection: {
      kind: 'fuse',
      by: chooseFuse,
      family: bladeFuse,
      continuousFraction: 0.75,
      overloadRule: 'iec-60364-4-43',
      fuseTempC: 40,
      shortSupplyV: 12,
      sourceResistanceOhm: 0.012,
      clearWithinS: 0.5,
    },
  });

/** The fuse of a sized feed, all that can be judged of it. */
const fuseOf = (sized, currentA) => ({
  family: bladeFuse,
  continuousA: currentA,
  continuousFraction: 0.75,
  ambientTempC: 40,
  ampacityA: sized.ampacityA,
  overloadRule: 'iec-60364-4-43',
  farShortA: sized.farShortA,
  clearWithinS: 0.5,
  pulses: [{ name: 'start', shape: 'exponential', peakA: 4 * currentA, durationS: 0.05, count: 10000, restS: 20 }],
  wire: { areaMm2: sized.areaMm2, ambientTempC: 50, maxConductorTempC: 105, overloadTempC: 130, shortTempC: 250 },
  prospectiveA: 600,
  systemV: 15,
  upstream: { name: 'main', family: bladeFuse, ratingA: 40 },
});

const relay = () =>
  relayPickup({
    ratedPickUpV: 7.2,
    ratedDropOutV: 1.6,
    ratedTempC: 20,
    coilResistanceOhm: 90,
    coilTempC: 105,
    supplyV: 11,
    driverDropV: 0.3,
    wireResistanceOhm: 0.2,
  });

export default {
  question: 'What does the whole check of one circuit cost: feed, wire, fuse and relay?',
  how: { targetMs: 60, rounds: 15 },
  ratios: [
    {
      name: 'a whole circuit against one solve of a wire (0.3 ms at 1.2 µs)',
      of: 'a whole circuit',
      to: 'one temperature of a wire',
      goal: 250,
    },
    { name: 'the fuse alone against one solve', of: 'the fuse alone', to: 'one temperature of a wire', goal: 25 },
  ],
  prepare(quick) {
    const currents = Array.from({ length: quick ? 8 : 32 }, (_, i) => 3 + (i % 8));
    for (const currentA of currents) {
      const sized = feed(currentA);
      if (!sized.possible) throw new Error(`no size at ${currentA} A: ${sized.because}`);
      const circuit = fuseOf(sized, currentA);
      const chosen = chooseFuse({ ...circuit, upstream: undefined });
      const first = bladeFuse.ratingsA.find((ratingA) => checkFuse({ ...circuit, upstream: undefined, ratingA }).ok);
      if ((chosen.possible ? chosen.ratingA : undefined) !== first) throw new Error(`two fuses at ${currentA} A`);
    }
    const sizedOf = new Map(currents.map((currentA) => [currentA, feed(currentA)]));
    const each = (run) => () => {
      let sum = 0;
      for (const currentA of currents) sum += run(currentA);
      return sum;
    };
    return {
      count: currents.length,
      ways: {
        'one temperature of a wire': each(
          (currentA) => conductorTemperature({ ...wireInAir, currentA }).conductorTempC,
        ),
        'the fuse alone': each(
          (currentA) => checkFuse({ ...fuseOf(sizedOf.get(currentA), currentA), ratingA: 15 }).farShortRatio,
        ),
        'a whole circuit': each((currentA) => {
          const sized = feed(currentA);
          const fuse = checkFuse({ ...fuseOf(sized, currentA), ratingA: sized.fuse.ratingA });
          return sized.areaMm2 + fuse.farShortRatio + relay().checks.length;
        }),
      },
    };
  },
};
