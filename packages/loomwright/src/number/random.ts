/** Draws numbers that look random and are the same for the same seed. */
export interface RandomDraw {
  /** A number above 0 and below 1, all alike. */
  readonly uniform: () => number;
  /** A number of the normal distribution with mean 0 and standard deviation 1. */
  readonly normal: () => number;
}

/**
 * The enhanced Wichmann–Hill generator, period about 2¹²¹, and normal numbers by Box and Muller.
 * Its four states are spread from one seed, so that near seeds give unlike draws.
 *
 * @source jcgm-101, annexes C.3.2 and C.4 (generator and transformation, from memory); Wichmann and Hill,
 * Computational Statistics & Data Analysis 51 (2006) 1614–1622
 */
export function randomDraw(seed: number): RandomDraw {
  const scrambled = (salt: number): number => {
    let z = (seed + Math.imul(salt, 0x9e3779b9)) | 0;
    z = Math.imul(z ^ (z >>> 16), 0x85ebca6b);
    z = Math.imul(z ^ (z >>> 13), 0xc2b2ae35);
    return ((z ^ (z >>> 16)) >>> 1) + 1;
  };
  let x = scrambled(1) % 2147483579 || 1;
  let y = scrambled(2) % 2147483543 || 1;
  let z = scrambled(3) % 2147483423 || 1;
  let t = scrambled(4) % 2147483123 || 1;
  const uniform = (): number => {
    x = 11600 * (x % 185127) - 10379 * Math.floor(x / 185127);
    y = 47003 * (y % 45688) - 10479 * Math.floor(y / 45688);
    z = 23000 * (z % 93368) - 19423 * Math.floor(z / 93368);
    t = 33000 * (t % 65075) - 8123 * Math.floor(t / 65075);
    if (x < 0) x += 2147483579;
    if (y < 0) y += 2147483543;
    if (z < 0) z += 2147483423;
    if (t < 0) t += 2147483123;
    const w = x / 2147483579 + y / 2147483543 + z / 2147483423 + t / 2147483123;
    const u = w - Math.floor(w);
    return u > 0 ? u : Number.EPSILON;
  };
  let spare: number | null = null;
  const normal = (): number => {
    if (spare !== null) {
      const kept = spare;
      spare = null;
      return kept;
    }
    const radius = Math.sqrt(-2 * Math.log(uniform()));
    const angle = 2 * Math.PI * uniform();
    spare = radius * Math.sin(angle);
    return radius * Math.cos(angle);
  };
  return { uniform, normal };
}
