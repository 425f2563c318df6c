// Row 8: the table of 16 cells with the least worst error from N points. Bisection on the error with a cone sweep,
// against full dynamic programming over all lines between two points.
import { calibrationTable, ntcCoolant2500, thermistorInput } from 'loomwright';

const CELLS = 16;

/** A coolant sensor at a pin, volts to °C, with the unevenness of a real measurement: a slow wave and a little noise. */
function pointsOf(n) {
  let state = 7;
  return Array.from({ length: n }, (_, i) => {
    const tempC = 120 - (140 * i) / (n - 1);
    const at = { curve: ntcCoolant2500, side: 'sensor-to-ground', supplyV: 5, pullOhm: 2490, tempC };
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    const noise = (state / 2 ** 32 - 0.5) * 0.2;
    return { inValue: thermistorInput(at).inputV, outValue: tempC + 0.3 * Math.sin(i / 9) + noise };
  });
}

/** Least worst error by dynamic programming: the miss of every line first, then the best way to each point by legs. */
function byDynamicProgramming(points, cells) {
  const n = points.length;
  const x = Float64Array.from(points, (p) => p.inValue);
  const y = Float64Array.from(points, (p) => p.outValue);
  const miss = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = i + 2; j < n; j++) {
      const slope = (y[j] - y[i]) / (x[j] - x[i]);
      let worst = 0;
      for (let k = i + 1; k < j; k++) {
        const off = Math.abs(y[k] - y[i] - slope * (x[k] - x[i]));
        if (off > worst) worst = off;
      }
      miss[i * n + j] = worst;
    }
  }
  let best = Float64Array.from({ length: n }, (_, j) => miss[j]);
  for (let leg = 2; leg < cells; leg++) {
    const next = Float64Array.from(best);
    for (let j = 1; j < n; j++) {
      for (let i = 1; i < j; i++) {
        const worst = Math.max(best[i], miss[i * n + j]);
        if (worst < next[j]) next[j] = worst;
      }
    }
    best = next;
  }
  return best[n - 1];
}

const ours = (points) =>
  calibrationTable({ points, cellCount: CELLS, inStepValue: null, outStepValue: null }).worstErrorValue;

export default {
  question: 'What does the best table of 16 cells cost, from 200, 1000 and 2000 points?',
  how: { rounds: 9, targetMs: 200 },
  ratios: [
    {
      name: 'dynamic programming against us, 200 points',
      of: 'dynamic programming, 200',
      to: 'loomwright, 200',
      goal: 20,
      atMost: false,
    },
    {
      name: 'dynamic programming against us, 1000 points',
      of: 'dynamic programming, 1000',
      to: 'loomwright, 1000',
      goal: 20,
      atMost: false,
    },
  ],
  prepare(quick) {
    const sizes = quick ? [60, 120, 200] : [200, 1000, 2000];
    const [small, middle, large] = sizes.map(pointsOf);
    for (const points of [small, middle]) {
      const wanted = byDynamicProgramming(points, CELLS);
      const found = ours(points);
      if (Math.abs(found - wanted) > 1e-9) throw new Error(`${points.length} points: ${found}, not ${wanted}`);
    }
    return {
      count: 1,
      note: `worst error: ${[small, middle, large].map((points) => ours(points).toFixed(3)).join(', ')} °C; goals: 1, 25 and 100 ms`,
      ways: {
        'loomwright, 200': () => ours(small),
        'loomwright, 1000': () => ours(middle),
        'loomwright, 2000': () => ours(large),
        'dynamic programming, 200': () => byDynamicProgramming(small, CELLS),
        'dynamic programming, 1000': () => byDynamicProgramming(middle, CELLS),
      },
    };
  },
};
