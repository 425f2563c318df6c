// Row 10: the temperature of a wire at a current, and the current at a temperature. One root in the surface temperature
// against the way that it is usually written: a search for the copper with a search for the surface inside, plain powers.
// Where this machine has scipy, its brentq on the same balance is noted beside it.
import { spawnSync } from 'node:child_process';
import { ampacity, conductorTemperature } from 'loomwright';

const G = 9.80665;
const SIGMA = 5.670374419e-8;

/** Heat given off by a metre of surface in W, in plain powers. */
function surfaceW(surfaceK, ambientK, d, emissivity) {
  const t = (surfaceK + ambientK) / 2;
  const rho = 351.99 / t + 344.84 / t ** 2;
  const mu = (1.4592e-6 * t ** 1.5) / (109.1 + t);
  const k = (2.334e-3 * t ** 1.5) / (164.54 + t);
  const cp = 1030.5 - 0.19975 * t + 3.9734e-4 * t ** 2;
  const rise = surfaceK - ambientK;
  const ra = (G * rise * d ** 3 * rho ** 2 * cp) / (t * mu * k);
  const nu = (0.6 + (0.387 * ra ** (1 / 6)) / (1 + ((0.559 * k) / (cp * mu)) ** (9 / 16)) ** (8 / 27)) ** 2;
  return Math.PI * k * nu * rise + Math.PI * d * emissivity * SIGMA * (surfaceK ** 4 - ambientK ** 4);
}

function bisect(f, low, high, width) {
  while (high - low > width) {
    const mid = (low + high) / 2;
    if (f(mid) > 0) high = mid;
    else low = mid;
  }
  return (low + high) / 2;
}

/** Surface temperature in K under a conductor temperature. */
function surfaceUnder(conductorK, w, width) {
  const inside = Math.log(w.outerDiameterMm / w.conductorDiameterMm) / (2 * Math.PI * w.insulationConductivityWPerMK);
  const ambientK = w.ambientTempC + 273.15;
  const d = w.outerDiameterMm / 1000;
  return bisect((s) => s + surfaceW(s, ambientK, d, 0.9) * inside - conductorK, ambientK, conductorK, width);
}

function nestedTemperatureC(w, width) {
  const ambientK = w.ambientTempC + 273.15;
  const d = w.outerDiameterMm / 1000;
  return (
    bisect(
      (c) => {
        const out = surfaceW(surfaceUnder(c, w, width), ambientK, d, 0.9);
        return out - (w.currentA ** 2 * w.resistanceOhmPerM * (c - 38.65)) / 254.5;
      },
      ambientK,
      ambientK + 250,
      width,
    ) - 273.15
  );
}

function nestedAmpacityA(w, width) {
  return bisect((currentA) => nestedTemperatureC({ ...w, currentA }, width) - w.maxConductorTempC, 0, 60, width);
}

const SCIPY = `
import sys, time, json
try:
    from scipy.optimize import brentq
except ImportError:
    print("null"); sys.exit()
from math import pi, log
wires = json.loads(sys.argv[1])
def out(s, a, d):
    t = (s + a) / 2
    rho = 351.99 / t + 344.84 / t**2
    mu = 1.4592e-6 * t**1.5 / (109.1 + t)
    k = 2.334e-3 * t**1.5 / (164.54 + t)
    cp = 1030.5 - 0.19975 * t + 3.9734e-4 * t**2
    ra = 9.80665 * (s - a) * d**3 * rho**2 * cp / (t * mu * k)
    nu = (0.6 + 0.387 * ra ** (1 / 6) / (1 + (0.559 * k / (cp * mu)) ** (9 / 16)) ** (8 / 27)) ** 2
    return pi * k * nu * (s - a) + pi * d * 0.9 * 5.670374419e-8 * (s**4 - a**4)
def hot(w):
    a = w["ambientTempC"] + 273.15; d = w["outerDiameterMm"] / 1000
    inside = log(w["outerDiameterMm"] / w["conductorDiameterMm"]) / (2 * pi * w["insulationConductivityWPerMK"])
    m = w["currentA"] ** 2 * w["resistanceOhmPerM"] / 254.5
    s = brentq(lambda s: out(s, a, d) * (1 - m * inside) - m * (s - 38.65), a, a + 250, xtol=1e-7)
    return s + out(s, a, d) * inside - 273.15
first = [hot(w) for w in wires]; t = []
for _ in range(5):
    s = time.perf_counter()
    for w in wires: hot(w)
    t.append((time.perf_counter() - s) / len(wires))
print(json.dumps({"us": sorted(t)[2] * 1e6, "tempC": first}))
`;

export default {
  question: 'What does the temperature of a wire at a current cost, and the current that it bears?',
  how: { targetMs: 60, rounds: 15 },
  ratios: [
    {
      name: 'nested bisection against the temperature',
      of: 'nested bisection to 0.001 K',
      to: 'loomwright, temperature',
      goal: 44,
      atMost: false,
    },
    {
      name: 'temperature against one look at the balance',
      of: 'loomwright, temperature',
      to: 'one look at the balance',
      goal: 5,
    },
    { name: 'ampacity against the temperature', of: 'loomwright, ampacity', to: 'loomwright, temperature', goal: 1.33 },
  ],
  prepare(quick) {
    const n = quick ? 64 : 512;
    const wires = Array.from({ length: n }, (_, i) => ({
      currentA: 3 + ((i * 37) % n) * (22 / n),
      maxConductorTempC: 70 + ((i * 53) % n) * (120 / n),
      resistanceOhmPerM: 0.0076,
      ratedTempC: 20,
      conductorDiameterMm: 2.2,
      outerDiameterMm: 3 + ((i * 11) % n) / n,
      insulationConductivityWPerMK: 0.17,
      ambientTempC: 20 + ((i * 29) % n) * (45 / n),
      altitudeM: 0,
    }));
    const temperature = (w) => conductorTemperature(w).conductorTempC;
    for (const w of wires) {
      const off = Math.abs(temperature(w) - nestedTemperatureC(w, 1e-7));
      if (!(off < 2e-6)) throw new Error(`the temperatures disagree by ${off} K at ${w.currentA} A`);
    }
    for (const w of wires.slice(0, 8)) {
      const off = Math.abs(ampacity(w).currentA - nestedAmpacityA(w, 1e-7));
      if (!(off < 2e-6)) throw new Error(`the ampacities disagree by ${off} A at ${w.maxConductorTempC} °C`);
    }
    const python = spawnSync('python3', ['-c', SCIPY, JSON.stringify(wires.slice(0, 64))], { encoding: 'utf8' });
    const found = python.status === 0 ? JSON.parse(python.stdout) : null;
    let note = 'scipy: not on this machine';
    if (found !== null) {
      found.tempC.forEach((tempC, i) => {
        if (Math.abs(tempC - temperature(wires[i])) > 2e-6) throw new Error('scipy disagrees');
      });
      note = `scipy's brentq on the same balance in the same run: ${found.us.toFixed(1)} µs`;
    }
    const each = (run) => () => {
      let sum = 0;
      for (const w of wires) sum += run(w);
      return sum;
    };
    return {
      count: n,
      note,
      ways: {
        'one look at the balance': each((w) =>
          surfaceW(w.ambientTempC + 273.15 + w.currentA, w.ambientTempC + 273.15, w.outerDiameterMm / 1000, 0.9),
        ),
        'loomwright, temperature': each(temperature),
        'loomwright, ampacity': each((w) => ampacity(w).currentA),
        'nested bisection to 0.001 K': each((w) => nestedTemperatureC(w, 1e-3)),
      },
    };
  },
};
