import type { Lab } from './lab.ts';

/**
 * CIELAB as a person types it: three numbers with spaces, semicolons or commas between them, decimal
 * point or comma. Null for what is not the three numbers of a surface (L* 0…100, a* and b* to ±160).
 */
export function labOfText(text: string): Lab | null {
  const numbers = text
    .trim()
    .split(/[\s;]+|,\s+/)
    .map((one) => Number(one.replace(',', '.').replace('−', '-')));
  const [L, a, b] = numbers;
  if (numbers.length !== 3 || !numbers.every(Number.isFinite)) return null;
  if (!(L! >= 0 && L! <= 100 && Math.abs(a!) <= 160 && Math.abs(b!) <= 160)) return null;
  return [L!, a!, b!];
}
