/** Parses a finite number with a decimal point or comma; null for anything else. */
export function readNumber(text: string): number | null {
  const plain = text.trim().replace(/^([-+]?\d*),(\d+(?:e[-+]?\d+)?)$/i, '$1.$2');
  if (!/^[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?$/i.test(plain)) return null;
  const value = Number(plain);
  return Number.isFinite(value) ? value : null;
}
