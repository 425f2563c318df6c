import type { SizeFeedInput, SizeFeedResult } from 'loomwright';

/** The numbers between the lines of a sized feed: what its working names. */
export function feedScope(input: SizeFeedInput, output: SizeFeedResult): Record<string, number | null> {
  let wireLengthM = 0;
  for (const part of [...input.outParts, ...input.returnParts]) if ('lengthM' in part) wireLengthM += part.lengthM;
  let fixedResistanceOhm = 0;
  for (const part of output.solved.parts) if (part.kind !== 'wire') fixedResistanceOhm += part.resistanceOhm;
  const { protection } = input;
  const wireResistanceOhm = output.solved.pathResistanceOhm - fixedResistanceOhm;
  // Copper alone is sized: every conductor table of the core is copper or tinned copper.
  const hot = (234.5 + output.conductorTempC) / 254.5;
  const resistanceOhmPerM = wireResistanceOhm / (wireLengthM * hot);
  const shortTempC = Math.min(400, input.heating.insulationTempC);
  // A fuse that is not listed in the path still stands in the way of a short.
  const listed = output.solved.parts.some((part) => part.kind === 'fuse');
  const seriesResistanceOhm =
    (protection.kind === 'fuse' ? protection.sourceResistanceOhm : 0) +
    fixedResistanceOhm +
    (listed ? 0 : (output.fuse?.hotOhm ?? 0));
  return {
    supplyV: input.supplyV,
    currentA: output.solved.currentA,
    wireLengthM,
    resistanceOhmPerM,
    wireResistanceOhm,
    fixedResistanceOhm,
    dropV: output.solved.dropV,
    dropFraction: output.solved.dropFraction,
    loadV: output.solved.loadV,
    lossW: output.wireDropV * output.solved.currentA,
    ampacityA: output.ampacityA,
    ambientTempC: input.heating.ambientTempC,
    insulationTempC: input.heating.insulationTempC,
    reachedTempC: output.reachedTempC,
    conductorTempC: output.conductorTempC,
    ratingA: output.fuse?.ratingA ?? null,
    farShortA: output.farShortA,
    shortTempC,
    ...(protection.kind === 'fuse'
      ? {
          shortSupplyV: protection.shortSupplyV,
          seriesResistanceOhm,
          shortResistanceOhm: seriesResistanceOhm + (resistanceOhmPerM * wireLengthM * (234.5 + shortTempC)) / 254.5,
        }
      : {}),
  };
}
