import type { Lab } from './lab.ts';

/**
 * Parses CIELAB as typed by a user: three numbers separated by spaces, semicolons or commas with a
 * space, with a decimal point or comma. Null unless L* is 0…100 and a*, b* are −160…160.
 */
export function parseLab(text: string): Lab | null {
  const numbers = text
    .trim()
    .split(/[\s;]+|,\s+/)
    .map((one) => Number(one.replace(',', '.').replace('−', '-')));
  const [L, a, b] = numbers;
  if (numbers.length !== 3 || !numbers.every(Number.isFinite)) return null;
  if (!(L! >= 0 && L! <= 100 && Math.abs(a!) <= 160 && Math.abs(b!) <= 160)) return null;
  return [L!, a!, b!];
}
