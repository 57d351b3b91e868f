/** Steps that a studio can measure: upper bound, then step below it. */
const CM3 = [
  [1, 0.05],
  [10, 0.1],
  [100, 0.5],
  [Number.POSITIVE_INFINITY, 1],
] as const;
const GRAMS = [
  [1, 0.01],
  [100, 0.1],
  [Number.POSITIVE_INFINITY, 1],
] as const;
type Steps = typeof CM3 | typeof GRAMS;

/** Absorbs binary rounding errors: 7.1 stays 7.1. */
const SLACK = 1e-9;

function rounded(value: number, steps: Steps, by: 'ceil' | 'floor'): number {
  const step = steps.find(([bound]) => value < bound)?.[1] ?? 1;
  const count = by === 'ceil' ? Math.ceil(value / step - SLACK) : Math.floor(value / step + SLACK);
  return Number((count * step).toFixed(2));
}

/** Round paint up: never below the need. */
export const cm3Up = (cm3: number): number => rounded(cm3, CM3, 'ceil');
export const gramsUp = (grams: number): number => rounded(grams, GRAMS, 'ceil');
/** Round oil down: too much wrinkles and yellows. */
export const oilDown = (grams: number): number => rounded(grams, GRAMS, 'floor');
export const oilCm3Down = (cm3: number): number => rounded(cm3, CM3, 'floor');
