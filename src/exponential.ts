/**
 * eˣ for |x| < 0.6, accurate to 1e-7. It uses only +, −, × and ÷, so that every JavaScript engine
 * gives the same digits; `Math.exp` differs between engines in the last one.
 * @see H. Padé, 1892: rational approximation of third degree (reference from memory)
 */
export function portableExp(x: number): number {
  const square = x * x;
  const even = 1 + square / 10;
  const odd = x * (0.5 + square / 120);
  return (even + odd) / (even - odd);
}
