// Row 3: a million thermistor readings into °C, five different sensors alive in the process. Exact against the same
// formula as a bare loop; a table of pieces with a proven bound against it too.
import { spawnSync } from 'node:child_process';
import {
  ntc100k,
  ntc10k3mcd1,
  thermistorResistance,
  thermistorTable,
  thermistorTableEach,
  thermistorTemperatureEach,
} from 'loomwright';

const BOUND_K = 0.003;

/** Five sensors with different letters: three of published coefficients, two by three points of a printed table. */
const SENSORS = [
  ntc10k3mcd1,
  ntc100k,
  { kind: 'steinhart-hart', a: 1.4051e-3, b: 2.369e-4, c: 1.019e-7 },
  { kind: 'steinhart-hart', a: 1.473264438e-3, b: 2.372094987e-4, c: 1.074363115e-7 },
  { kind: 'steinhart-hart', a: 1.029194767e-3, b: 2.391275184e-4, c: 1.56627715e-7 },
];

const NUMPY = `
import sys, time, json
try:
    import numpy as np
except ImportError:
    print("null"); sys.exit()
n = int(sys.argv[1]); a, b, c, low, high = map(float, sys.argv[2:])
k = np.arange(n); R = low * (high / low) ** (((k * 7919) % n) / n)
def work():
    L = np.log(R); return 1.0 / (a + b * L + c * L**3) - 273.15
work(); t = []
for _ in range(9):
    s = time.perf_counter(); r = work(); t.append(time.perf_counter() - s)
print(json.dumps({"ns": sorted(t)[4] / n * 1e9, "mean": float(r.mean())}))
`;

function rawLoop(resistanceOhm, into, a, b, c) {
  for (let i = 0; i < resistanceOhm.length; i++) {
    const l = Math.log(resistanceOhm[i]);
    into[i] = 1 / (a + l * (b + c * l * l)) - 273.15;
  }
  return into;
}

export default {
  question: 'What does a thermistor reading into °C cost, a million at a time, with five different sensors?',
  how: { targetMs: 150, rounds: 15 },
  ratios: [
    { name: 'exact and checked against the bare loop', of: 'loomwright, exact', to: 'raw loop', goal: 1.15 },
    { name: 'bare loop against the table', of: 'raw loop', to: 'loomwright, table', goal: 4, atMost: false },
  ],
  prepare(quick) {
    const n = quick ? 20_000 : 1_000_000;
    const into = new Float64Array(n);
    const sensors = SENSORS.map((curve) => {
      const low = thermistorResistance({ curve, tempC: 130 }).resistanceOhm;
      const high = thermistorResistance({ curve, tempC: -30 }).resistanceOhm;
      // Readings in no order, so that no branch and no cache line is guessed.
      const resistanceOhm = Float64Array.from({ length: n }, (_, k) => low * (high / low) ** (((k * 7919) % n) / n));
      const table = thermistorTable({ curve, lowestOhm: low * 0.999, highestOhm: high, maxErrorK: BOUND_K });
      return { curve, low, high, resistanceOhm, table };
    });
    for (const { curve, resistanceOhm, table } of sensors) {
      const want = rawLoop(resistanceOhm, new Float64Array(n), curve.a, curve.b, curve.c);
      const { tempC: exact } = thermistorTemperatureEach({ curve, resistanceOhm });
      const { tempC: looked } = thermistorTableEach({ table, resistanceOhm });
      for (let i = 0; i < n; i++) {
        if (Math.abs(exact[i] - want[i]) > 1e-9) throw new Error(`exact disagrees at ${resistanceOhm[i]} Ω`);
        if (Math.abs(looked[i] - want[i]) > table.boundK) throw new Error(`the bound fails at ${resistanceOhm[i]} Ω`);
      }
    }
    const [{ curve, low, high, resistanceOhm }] = sensors;
    let note = `pieces: ${sensors.map(({ table }) => table.pieces.length / 2).join(', ')}; proven: ${sensors.map(({ table }) => table.boundK.toFixed(5)).join(', ')} K`;
    const python = spawnSync('python3', ['-c', NUMPY, ...[n, curve.a, curve.b, curve.c, low, high].map(String)], {
      encoding: 'utf8',
    });
    const found = python.status === 0 ? JSON.parse(python.stdout) : null;
    if (found === null) note += '; numpy: not on this machine';
    else {
      const mean = thermistorTemperatureEach({ curve, resistanceOhm }).tempC.reduce((sum, t) => sum + t, 0) / n;
      if (Math.abs(found.mean - mean) > 1e-6) throw new Error('numpy disagrees');
      note += `; plain numpy in the same run: ${found.ns.toFixed(1)} ns a piece`;
    }
    const each = (run) => () => {
      let sum = 0;
      for (const sensor of sensors) sum += run(sensor)[n - 1];
      return sum;
    };
    return {
      count: n * sensors.length,
      note,
      ways: {
        'raw loop': each((s) => rawLoop(s.resistanceOhm, into, s.curve.a, s.curve.b, s.curve.c)),
        'loomwright, exact': each(
          (s) => thermistorTemperatureEach({ curve: s.curve, resistanceOhm: s.resistanceOhm, into }).tempC,
        ),
        'loomwright, table': each(
          (s) => thermistorTableEach({ table: s.table, resistanceOhm: s.resistanceOhm, into }).tempC,
        ),
      },
    };
  },
};
