import type { FurtherReading } from './diagnosis-type.js';
import type { Cause, Fit } from './fit.js';
import { meterErrorV } from './meter.js';
import type { NetPoint } from './net.js';
import type { MeterPoints } from './points.js';
import { sigmaOf } from './fit.js';

/** Causes that are parted from one another. */
const MOST_CAUSES = 12;
/** Circuits along which a reading is looked for. */
const MOST_CIRCUITS = 8;
const PARTED_SIGMA = 3;

interface Probe {
  readonly red: NetPoint;
  readonly black: NetPoint;
  readonly circuit: string | null;
}

/** A cause as one of its members: a part, or a load. */
export interface Single {
  readonly cause: Cause;
  readonly member: number;
}

/** The reading that parts most pairs of the causes, and of those the one with the largest difference. */
export function furtherReading(fit: Fit, points: MeterPoints, all: readonly Single[]): FurtherReading | null {
  const singles = all.slice(0, MOST_CAUSES);
  if (singles.length < 2) return null;
  const { net } = fit;
  const probes = probesOf(fit, points, singles);
  const pairCount = (singles.length * (singles.length - 1)) / 2;
  let best: (FurtherReading & { readonly apartSigma: number }) | null = null;
  for (const state of fit.states) {
    const solved = singles.map(({ cause }) => fit.solved(cause, cause.at, state));
    for (const { red, black, circuit } of probes) {
      const predictedV = singles.map(({ cause, member }, i) => {
        const part = cause.kind === 'part' ? member : -1;
        const at = (point: NetPoint): number =>
          net.voltsAt(point, solved[i] as (typeof solved)[number], part, cause.kind === 'part' ? cause.at : 0);
        return at(red) - at(black);
      });
      const spreadV = spreadBetween(fit, red, black, state);
      const sigma = predictedV.map((volts) => Math.hypot(meterErrorV(volts) / Math.sqrt(3), spreadV));
      let partedCount = 0;
      let apartSigma = 0;
      predictedV.forEach((a, i) => {
        for (let j = i + 1; j < predictedV.length; j++) {
          const apart = Math.abs(a - (predictedV[j] as number)) / Math.hypot(sigma[i] as number, sigma[j] as number);
          if (apart >= PARTED_SIGMA) partedCount++;
          apartSigma = Math.max(apartSigma, apart);
        }
      });
      if (partedCount === 0) continue;
      const better =
        best === null ||
        partedCount > best.partedCount ||
        (partedCount === best.partedCount && apartSigma > best.apartSigma);
      if (better)
        best = { state, red: red.name, black: black.name, circuit, predictedV, partedCount, pairCount, apartSigma };
    }
  }
  if (best === null) return null;
  const { apartSigma: _, ...found } = best;
  return found;
}

/** Along the paths of all causes: from the beginning to each place, over each part, and the posts of the batteries. */
function probesOf({ net }: Fit, points: MeterPoints, singles: readonly Single[]): Probe[] {
  const circuits = [
    ...new Set(
      singles.map(({ cause, member }) =>
        cause.kind === 'part'
          ? (net.parts[member]?.circuit ?? '')
          : (net.drafts[net.network.wiring.loads[member]?.draft ?? -1]?.name ?? ''),
      ),
    ),
  ].slice(0, MOST_CIRCUITS);
  const probes: Probe[] = [];
  for (const circuit of circuits) {
    const along = points.along(net.plan.circuits.findIndex(({ name }) => name === circuit));
    along.forEach((point, i) => {
      const [first, before] = [along[0], along[i - 1]];
      if (first === undefined || before === undefined) return;
      probes.push({ red: before, black: point, circuit });
      if (before !== first) probes.push({ red: first, black: point, circuit });
    });
  }
  for (const { cause, member } of singles) {
    if (cause.kind !== 'part' || net.plan.circuits.some(({ name }) => name === net.parts[member]?.circuit)) continue;
    const [red, black] = points.around(member);
    probes.push({ red, black, circuit: null });
  }
  return probes;
}

/** What healthy parts between two points leave open, in V: those of a path that lie between, and a load. */
function spreadBetween({ net }: Fit, red: NetPoint, black: NetPoint, state: string): number {
  const { branchA } = net.healthy(state);
  const apart = [
    ...red.parts.filter((p) => !black.parts.includes(p)),
    ...black.parts.filter((p) => !red.parts.includes(p)),
  ];
  const parts = Math.hypot(
    ...apart.map((p) => sigmaOf(net, p) * Math.abs(branchA[net.parts[p]?.branch ?? -1] ?? 0)),
    0,
  );
  // Between nodes of their own lie other circuits, and a load.
  return red.node === black.node ? parts : Math.hypot(parts, 0.05);
}
