// A gauge that reads ohms, a sender, and three resistors between them.

/**
 * Resistors between a sender and a gauge: one in series with the sender, one across both, one in series with the gauge.
 * Every network of fixed resistors has the same effect as one of this form.
 */
export interface DialNetwork {
  /** In series with the sender, in Ω, at least 0. */
  readonly senderSideOhm: number;
  /** Across sender and first resistor, in Ω, above 0; null for none. */
  readonly acrossOhm: number | null;
  /** In series with the gauge, in Ω, at least 0. */
  readonly gaugeSideOhm: number;
}

/** Sender and gauge: Ω at equal steps from empty to full. */
export interface Dial {
  readonly senderOhm: readonly number[];
  readonly gaugeOhm: readonly number[];
}

/** Resistance that the gauge sees. */
export function seenOhm({ senderSideOhm, acrossOhm, gaugeSideOhm }: DialNetwork, senderOhm: number): number {
  const branch = senderOhm + senderSideOhm;
  return gaugeSideOhm + (acrossOhm === null ? branch : (acrossOhm * branch) / (acrossOhm + branch));
}

/** Where the pointer stands, 0 at empty to 1 at full; it stops at the ends of the dial. */
export function shownAt(gaugeOhm: readonly number[], ohm: number): number {
  const n = gaugeOhm.length - 1;
  const sign = (gaugeOhm[n] as number) > (gaugeOhm[0] as number) ? 1 : -1;
  if ((ohm - (gaugeOhm[0] as number)) * sign <= 0) return 0;
  if ((ohm - (gaugeOhm[n] as number)) * sign >= 0) return 1;
  let i = 1;
  while ((ohm - (gaugeOhm[i] as number)) * sign > 0) i++;
  const from = gaugeOhm[i - 1] as number;
  return (i - 1 + (ohm - from) / ((gaugeOhm[i] as number) - from)) / n;
}

/** Ω of the sender at a level. */
export function senderAt(senderOhm: readonly number[], levelFraction: number): number {
  const n = senderOhm.length - 1;
  const i = Math.min(n - 1, Math.floor(levelFraction * n));
  const from = senderOhm[i] as number;
  return from + ((senderOhm[i + 1] as number) - from) * (levelFraction * n - i);
}

/** The level at which the sender has a resistance; null where it has it nowhere. */
export function levelAt(senderOhm: readonly number[], ohm: number): number | null {
  const n = senderOhm.length - 1;
  for (let i = 0; i < n; i++) {
    const share = (ohm - (senderOhm[i] as number)) / ((senderOhm[i + 1] as number) - (senderOhm[i] as number));
    if (share >= 0 && share <= 1) return (i + share) / n;
  }
  return null;
}

/** Resistance of the sender at which the gauge sees a given one; null where no sender does that. */
export function senderFor({ senderSideOhm, acrossOhm, gaugeSideOhm }: DialNetwork, seen: number): number | null {
  const rest = seen - gaugeSideOhm;
  if (acrossOhm === null) return rest - senderSideOhm;
  return rest < acrossOhm ? (acrossOhm * rest) / (acrossOhm - rest) - senderSideOhm : null;
}

/** Most that is shown above the true level, and most below it, with the levels where that is. */
export interface DialError {
  readonly over: number;
  readonly overAt: number;
  readonly under: number;
  readonly underAt: number;
}

/**
 * The extremes of shown minus true, exactly: between the marks of sender and dial it is a hyperbola, whose one place
 * of no slope is known.
 */
export function dialError({ senderOhm, gaugeOhm }: Dial, network: DialNetwork): DialError {
  const n = senderOhm.length - 1;
  let over = -Infinity;
  let overAt = 0;
  let under = -Infinity;
  let underAt = 0;
  const look = (level: number, ohm: number): void => {
    const e = shownAt(gaugeOhm, seenOhm(network, ohm)) - level;
    if (e > over) {
      over = e;
      overAt = level;
    }
    if (-e > under) {
      under = -e;
      underAt = level;
    }
  };
  const marks = gaugeOhm.map((ohm) => senderFor(network, ohm));
  for (let i = 0; i < n; i++) {
    const from = senderOhm[i] as number;
    const perLevel = ((senderOhm[i + 1] as number) - from) * n;
    const visit = (ohm: number | null): void => {
      if (ohm === null) return;
      const level = i / n + (ohm - from) / perLevel;
      if (level > i / n && level < (i + 1) / n) look(level, ohm);
    };
    look(i / n, from);
    marks.forEach(visit);
    const { acrossOhm, senderSideOhm } = network;
    if (acrossOhm === null) continue;
    for (let k = 1; k < gaugeOhm.length; k++) {
      const perOhm = 1 / (((gaugeOhm[k] as number) - (gaugeOhm[k - 1] as number)) * (gaugeOhm.length - 1));
      const slope = perOhm * perLevel;
      // Where shown rises as fast as the level does; looked at even if the pointer is elsewhere by then.
      if (slope > 0) visit(acrossOhm * (Math.sqrt(slope) - 1) - senderSideOhm);
    }
  }
  look(1, senderOhm[n] as number);
  return { over: Math.max(0, over), overAt, under: Math.max(0, under), underAt };
}
