// A wire as a thermal circuit in a general circuit simulator: volts stand for °C, amperes for W/m. The surface's heat is
// written out there once more, from the published formulas.
import { describe, expect, it } from 'vitest';
import { conductorTemperature, timeToTemperature } from 'loomwright';
import { simulate } from '../support/simulator.js';

const wire = {
  areaMm2: 4,
  insulationHeatJPerCm3K: 2.4,
  resistanceOhmPerM: 0.00471,
  ratedTempC: 20,
  conductorDiameterMm: 2.75,
  outerDiameterMm: 3.7,
  insulationConductivityWPerMK: 0.28,
  ambientTempC: 50,
  altitudeM: 0,
};

/** Netlist of the chain at a current: the conductor n0, four shells, and the surface n4 with what it gives off. */
function netlist(currentA: number, startTempC: number): string {
  const x = (wire.outerDiameterMm / wire.conductorDiameterMm) ** (1 / 4);
  const p = 1 / (2 * Math.log(x)) - 1 / (x * x - 1);
  const heats = [3.45 * wire.areaMm2, 0, 0, 0, 0];
  for (let i = 0; i < 4; i++) {
    const r = (wire.conductorDiameterMm / 2) * x ** i;
    const heat = Math.PI * r * r * (x * x - 1) * wire.insulationHeatJPerCm3K;
    heats[i]! += p * heat;
    heats[i + 1]! += (1 - p) * heat;
  }
  const between = Math.log(x) / (2 * Math.PI * wire.insulationConductivityWPerMK);
  const d = wire.outerDiameterMm / 1000;
  const T = `((V(n4)+${wire.ambientTempC})/2+273.15)`;
  const rho = `(351.99/${T}+344.84/${T}^2)`;
  const mu = `(1.4592e-6*${T}^1.5/(109.1+${T}))`;
  const k = `(2.334e-3*${T}^1.5/(164.54+${T}))`;
  const cp = `(1030.5-0.19975*${T}+3.9734e-4*${T}^2)`;
  const rise = `(V(n4)-${wire.ambientTempC})`;
  const ra = `(9.80665*abs(${rise})*${d ** 3}*${rho}^2*${cp}/(${T}*${mu}*${k}))`;
  const nu = `((0.6+0.387*(${ra}+1e-12)^(1/6)/(1+(0.559*${k}/(${cp}*${mu}))^0.5625)^(8/27))^2)`;
  const out = `${Math.PI}*${nu}*${k}*${rise}+${Math.PI * d * 0.9 * 5.670374419e-8}*((V(n4)+273.15)^4-${(wire.ambientTempC + 273.15) ** 4})`;
  const s = (currentA ** 2 * wire.resistanceOhmPerM) / (234.5 + wire.ratedTempC);
  return [
    `B1 0 n0 I=${s}*(234.5+V(n0))`,
    ...heats.map((heat, i) => `C${i} n${i} 0 ${heat} IC=${startTempC}`),
    ...[0, 1, 2, 3].map((i) => `R${i} n${i} n${i + 1} ${between}`),
    `B2 n4 0 I=${out}`,
  ].join('\n');
}

describe('independent', () => {
  it('the warming agrees with a circuit simulator within 0.02 K', { timeout: 60_000 }, async () => {
    for (const [currentA, durationS] of [
      [45, 60],
      [70, 30],
      [400, 0.5],
    ] as const) {
      const found = await simulate(
        `${netlist(currentA, 50)}\n.options reltol=1e-6\n.tran ${durationS / 2000} ${durationS} 0 ${durationS / 2000} uic`,
      );
      const reached = found['v(n0)']!.at(-1)!;
      const ours = timeToTemperature({
        ...wire,
        startTempC: 50,
        limitTempC: 390,
        currentSteps: [{ currentA, durationS }],
      });
      expect(Math.abs(ours.endTempC - reached), `${currentA} A`).toBeLessThan(0.02);
      expect(reached).toBeGreaterThan(60);
    }
  });
  it('the steady temperature agrees with its operating point', { timeout: 60_000 }, async () => {
    for (const currentA of [20, 40, 55]) {
      const found = await simulate(
        `${netlist(currentA, 50)}\n.nodeset v(n0)=80 v(n1)=79 v(n2)=78 v(n3)=77 v(n4)=76\n.options reltol=1e-9\n.op`,
      );
      const { conductorTempC, surfaceTempC } = conductorTemperature({ ...wire, currentA });
      expect(Math.abs(found['v(n0)']![0]! - conductorTempC!)).toBeLessThan(1e-3);
      expect(Math.abs(found['v(n4)']![0]! - surfaceTempC!)).toBeLessThan(1e-3);
    }
  });
});
