const floats = new Float32Array(1);
const bits = new Int32Array(floats.buffer);

/** Range of the table of initial values: 2⁻²⁴ … 2⁸, 128 entries per octave. */
const LEAST = 2 ** -24;
const MOST = 2 ** 8;
const FIRST = bitsOf(LEAST) >> 16;
const starts = Float64Array.from({ length: (bitsOf(MOST) >> 16) - FIRST }, (_, i) => {
  bits[0] = ((i + FIRST) << 16) + 0x8000;
  return precise(floats[0]!);
});

/**
 * Cube root by one Halley step from a table of initial values. It uses only +, −, × and ÷, so every
 * engine returns the same digits (`Math.cbrt` may differ in the last one); it is also faster in a
 * loop.
 * Relative error under 1e-8 from 2⁻²⁴ to 2⁸, under 3e-7 elsewhere in 1e-30…1e30; odd; 0 below
 * 1e-30.
 */
export function cubeRoot(x: number): number {
  if (!(x >= LEAST && x < MOST)) return rare(x);
  floats[0] = x;
  const t = starts[(bits[0]! >> 16) - FIRST]!;
  const t3 = t * t * t;
  // Halley's step triples the number of correct digits.
  return (t * (t3 + 2 * x)) / (2 * t3 + x);
}

/** Arguments outside the table, which light values do not reach. */
function rare(x: number): number {
  return x < 0 ? -cubeRoot(-x) : precise(x);
}

/**
 * For x ≥ 0: two Halley steps from an estimate that divides the exponent by three.
 * @see the initial value of S. M. Sun in FDLIBM's s_cbrt.c (the idea, from memory)
 */
function precise(x: number): number {
  if (x < 1e-30) return 0;
  floats[0] = x;
  bits[0] = ((bits[0]! / 3) | 0) + 709921077;
  let t = floats[0]!;
  for (let step = 0; step < 2; step++) {
    const t3 = t * t * t;
    t *= (t3 + 2 * x) / (2 * t3 + x);
  }
  return t;
}

function bitsOf(x: number): number {
  floats[0] = x;
  return bits[0]!;
}
