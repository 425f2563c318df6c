/** A ratio may be this much worse than the stored one before it is flagged. */
export const ALLOWANCE = 1.3;

/** Lines for every ratio that is worse than the stored one by more than the allowance, or is missing. */
export function worse(stored, now) {
  return stored.flatMap(({ name, ratio, atMost }) => {
    const found = now.find((other) => other.name === name);
    if (found === undefined) return [`'${name}' was not measured`];
    const times = atMost ? found.ratio / ratio : ratio / found.ratio;
    return times > ALLOWANCE
      ? [`'${name}' is ${found.ratio.toFixed(2)}, stored ${ratio.toFixed(2)}: ${times.toFixed(2)} times worse`]
      : [];
  });
}
