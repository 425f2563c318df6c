// Row 2: a million voltage drops over typed arrays, against the raw loop and, where python3 has it, plain numpy.
import { spawnSync } from 'node:child_process';
import { voltageDropEach } from 'loomwright';

const NUMPY = `
import sys, time, json
try:
    import numpy as np
except ImportError:
    print("null"); sys.exit()
n = int(sys.argv[1]); k = np.arange(n)
I = 1.0 + k % 37; L = 0.5 + k % 11; T = 20.0 + k % 80
def work():
    R = 0.0076 * (L + 1.0) * ((234.5 + T) / 254.5); U = I * R
    return U, U / 13.8, 13.8 - U, R, U * I
work(); t = []
for _ in range(9):
    s = time.perf_counter(); r = work(); t.append(time.perf_counter() - s)
print(json.dumps({"ns": sorted(t)[4] / n * 1e9, "sum": float(r[0].sum())}))
`;

export default {
  question: 'What do a million validated voltage drops over typed arrays cost, a piece?',
  how: { targetMs: 60, rounds: 15 },
  ratios: [{ name: 'validated batch against the raw loop', of: 'loomwright batch', to: 'raw loop', goal: 2.5 }],
  prepare(quick) {
    const n = quick ? 20_000 : 1_000_000;
    const I = Float64Array.from({ length: n }, (_, i) => 1 + (i % 37));
    const L = Float64Array.from({ length: n }, (_, i) => 0.5 + (i % 11));
    const T = Float64Array.from({ length: n }, (_, i) => 20 + (i % 80));
    const ours = () =>
      voltageDropEach({
        count: n,
        supplyV: 13.8,
        currentA: I,
        outLengthM: L,
        returnLengthM: 1,
        resistanceOhmPerM: 0.0076,
        ratedTempC: 20,
        conductorTempC: T,
      });
    const raw = () => {
      const out = [0, 1, 2, 3, 4].map(() => new Float64Array(n));
      const [u, f, v, r, w] = out;
      for (let k = 0; k < n; k++) {
        r[k] = 0.0076 * (L[k] + 1) * ((234.5 + T[k]) / 254.5);
        u[k] = I[k] * r[k];
        f[k] = u[k] / 13.8;
        v[k] = 13.8 - u[k];
        w[k] = u[k] * I[k];
      }
      return out;
    };
    const [want] = raw();
    const { dropV } = ours();
    for (let k = 0; k < n; k++)
      if (Math.abs(dropV[k] - want[k]) > 1e-12 * want[k]) throw new Error(`results disagree at ${k}`);
    let note = 'numpy: not on this machine';
    const python = spawnSync('python3', ['-c', NUMPY, String(n)], { encoding: 'utf8' });
    const found = python.status === 0 ? JSON.parse(python.stdout) : null;
    if (found !== null) {
      const sum = want.reduce((a, b) => a + b, 0);
      if (Math.abs(found.sum - sum) > 1e-9 * sum) throw new Error('numpy disagrees');
      note = `plain numpy in the same run: ${found.ns.toFixed(2)} ns a piece (goal: ours at least 2.5 times faster)`;
    }
    return {
      count: n,
      note,
      ways: { 'raw loop': () => raw()[0][n - 1], 'loomwright batch': () => ours().dropV[n - 1] },
    };
  },
};
