// Row 1: one validated call of a formula with five result fields, against the raw arithmetic and against mathjs.
import { create, all } from 'mathjs';
import { voltageDrop } from 'loomwright';

const math = create(all, {});
const N = 1000;

export default {
  question: 'What does one validated formula call cost (voltage drop at temperature, five results)?',
  ratios: [
    { name: 'used at once, against the raw loop', of: 'loomwright, used', to: 'raw loop', goal: 2.5 },
    {
      name: 'kept, mathjs compiled numbers against ours',
      of: 'mathjs numbers, kept',
      to: 'loomwright, kept',
      goal: 3,
      atMost: false,
    },
    {
      name: 'kept, unit objects against ours',
      of: 'mathjs units, kept',
      to: 'loomwright, kept',
      goal: 90,
      atMost: false,
    },
    {
      name: 'used, unit objects against ours',
      of: 'mathjs units, used',
      to: 'loomwright, used',
      goal: 2500,
      atMost: false,
    },
  ],
  prepare() {
    const data = Array.from({ length: N }, (_, i) => ({
      currentA: 1 + (i % 37),
      out: 0.5 + (i % 11),
      temp: 20 + (i % 80),
    }));
    const I = Float64Array.from(data, (d) => d.currentA);
    const L = Float64Array.from(data, (d) => d.out);
    const T = Float64Array.from(data, (d) => d.temp);
    const raw = (k) => 0.0076 * (L[k] + 1) * ((234.5 + T[k]) / 254.5) * I[k];
    const ours = (k) =>
      voltageDrop({
        supplyV: 13.8,
        currentA: I[k],
        outLengthM: L[k],
        returnLengthM: 1,
        resistanceOhmPerM: 0.0076,
        ratedTempC: 20,
        conductorTempC: T[k],
      });
    const code = math.compile('R = r * (lo + lb) * (234.5 + T) / 254.5; U = I * R; [U, U / V, V - U, R, U * I]');
    const numbers = (k) =>
      code.evaluate({ r: 0.0076, lo: L[k], lb: 1, T: T[k], I: I[k], V: 13.8 }).entries[0].toArray();
    const amp = math.unit('A');
    const units = (k) => {
      const r = math.multiply(
        math.multiply(math.unit(0.0076, 'ohm/m'), math.unit(L[k] + 1, 'm')),
        (234.5 + T[k]) / 254.5,
      );
      const u = math.multiply(math.multiply(amp, I[k]), r);
      const v = math.unit(13.8, 'V');
      return [u, math.divide(u, v), math.subtract(v, u), r, math.multiply(u, math.multiply(amp, I[k]))];
    };
    for (let k = 0; k < N; k += 97) {
      const want = raw(k);
      const got = [ours(k).dropV, numbers(k)[0], units(k)[0].toNumber('V')];
      for (const value of got)
        if (Math.abs(value - want) > 1e-12 * want) throw new Error(`results disagree at ${k}: ${value} and ${want}`);
    }
    const loop = (one) => () => {
      let sum = 0;
      for (let k = 0; k < N; k++) sum += one(k);
      return sum;
    };
    const keep = (one) => () => {
      const kept = new Array(N);
      for (let k = 0; k < N; k++) kept[k] = one(k);
      return kept.length;
    };
    return {
      count: N,
      ways: {
        // Each of the quick ones has a loop of its own. A loop shared by several ways calls each through one place,
        // which the engine then cannot put in line: that call cost more than the work.
        'raw loop': () => {
          let sum = 0;
          for (let k = 0; k < N; k++) {
            const r = 0.0076 * (L[k] + 1) * ((234.5 + T[k]) / 254.5);
            const u = I[k] * r;
            sum += u + u / 13.8 + (13.8 - u) + r + u * I[k];
          }
          return sum;
        },
        'loomwright, used': () => {
          let sum = 0;
          for (let k = 0; k < N; k++) {
            const { dropV, dropFraction, loadV, resistanceOhm, lossW } = ours(k);
            sum += dropV + dropFraction + loadV + resistanceOhm + lossW;
          }
          return sum;
        },
        'loomwright, kept': keep(ours),
        'mathjs numbers, kept': keep(numbers),
        'mathjs units, used': loop((k) => units(k)[0].value),
        'mathjs units, kept': keep(units),
      },
    };
  },
};
