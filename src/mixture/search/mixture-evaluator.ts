import { BANDS } from '../../colour/grid.ts';
import { labF } from '../../colour/lab.ts';
import { type CompiledShelf, MOST_PIGMENTS } from './compiled-shelf.ts';

const EPSILON = 216 / 24389;
const KAPPA = 24389 / 27;
/** Slope of {@link labF}; f is its value at t. */
const slope = (t: number, f: number): number => (t > EPSILON ? f / (3 * t) : KAPPA / 116);

/** Floor of √(q² + 2q), which is 0 without absorption, where the slope of R is infinite. */
const LEAST_ROOT = 1e-9;

/**
 * Evaluator of one mixture: pigments, logarithmic effective amounts, colour and its derivatives.
 * One object is reused for all mixtures of a search (about a million), so it never allocates.
 */
export class MixtureEvaluator {
  /** Pigments as indices in the stock; the first `n` are used. */
  readonly members = new Int32Array(MOST_PIGMENTS);
  n = 0;
  /** Natural logarithms of the effective amounts. */
  readonly x = new Float64Array(MOST_PIGMENTS);
  /** CIELAB (D65) of the last evaluation. */
  L = 0;
  a = 0;
  b = 0;
  /** ∂L, ∂a, ∂b by x: entries 3i, 3i + 1, 3i + 2 for member i. */
  readonly J = new Float64Array(3 * MOST_PIGMENTS);

  private readonly stock: CompiledShelf;
  private readonly k = new Float64Array(BANDS);
  private readonly s = new Float64Array(BANDS);
  /** The derivative of the seen reflectance by the amount of paint i is h·(s·Kᵢ − k·Sᵢ). */
  private readonly h = new Float64Array(BANDS);
  private readonly weighed = new Float64Array(BANDS);
  private slopeX = 0;
  private slopeY = 0;
  private slopeZ = 0;

  constructor(stock: CompiledShelf) {
    this.stock = stock;
  }

  /** Computes the colour only. */
  evaluateColour(): void {
    this.sum();
    const { X, Y, Z, lead, gain, k2 } = this.stock;
    const { k: ks, s: ss } = this;
    const out = 1 - k2;
    let x = 0;
    let y = 0;
    let z = 0;
    for (let b = 0; b < BANDS; b++) {
      const k = ks[b]!;
      const s = ss[b]!;
      const seen = lead + (gain * s) / (out * s + k + Math.sqrt(k * (k + 2 * s)));
      x += seen * X[b]!;
      y += seen * Y[b]!;
      z += seen * Z[b]!;
    }
    this.colour(x, y, z);
  }

  /**
   * Computes the colour and its derivatives. With w = √(k² + 2ks), so that 1/R = (s + k + w) ÷ s,
   * the reflectance seen through the surface is lead + gain·s ÷ p, p = (1 − k2)·s + k + w, and its
   * derivative by the amount of paint i is −gain·(s + k + w) ÷ (p²w) · (s·Kᵢ − k·Sᵢ): one root and
   * one division per band.
   */
  evaluate(): void {
    this.sum();
    const { K, S, X, Y, Z, lead, gain, k2 } = this.stock;
    const { k: ks, s: ss, h, members, n, J } = this;
    const out = 1 - k2;
    let x = 0;
    let y = 0;
    let z = 0;
    for (let b = 0; b < BANDS; b++) {
      const k = ks[b]!;
      const s = ss[b]!;
      const w = Math.max(Math.sqrt(k * (k + 2 * s)), LEAST_ROOT * s);
      const p = out * s + k + w;
      const inverse = 1 / (p * w);
      const overP = inverse * w;
      const seen = lead + gain * s * overP;
      h[b] = -gain * (s + k + w) * inverse * overP;
      x += seen * X[b]!;
      y += seen * Y[b]!;
      z += seen * Z[b]!;
    }
    this.colour(x, y, z);
    const { slopeX, slopeY, slopeZ } = this;
    // Proportional amounts give the same colour, so the derivatives sum to 0: the last follows.
    const last = n - 1;
    let lastL = 0;
    let lastA = 0;
    let lastB = 0;
    for (let i = 0; i < last; i++) {
      const row = members[i]! * BANDS;
      let dx = 0;
      let dy = 0;
      let dz = 0;
      for (let b = 0; b < BANDS; b++) {
        const t = h[b]! * (ss[b]! * K[row + b]! - ks[b]! * S[row + b]!);
        dx += t * X[b]!;
        dy += t * Y[b]!;
        dz += t * Z[b]!;
      }
      const e = Math.exp(this.x[i]!);
      dx *= e * slopeX;
      dy *= e * slopeY;
      dz *= e * slopeZ;
      const dL = 116 * dy;
      const da = 500 * (dx - dy);
      const db = 200 * (dy - dz);
      J[3 * i] = dL;
      J[3 * i + 1] = da;
      J[3 * i + 2] = db;
      lastL -= dL;
      lastA -= da;
      lastB -= db;
    }
    J[3 * last] = lastL;
    J[3 * last + 1] = lastA;
    J[3 * last + 2] = lastB;
  }

  /**
   * Derivative of a function of the colour by the share of effective amount of each paint of the
   * stock, after {@link evaluate}.
   * @param gL,ga,gb derivatives of the function by L, a and b
   * @param out one value per paint, overwritten; about 0 for a member at its optimum
   */
  additionSlopes(gL: number, ga: number, gb: number, out: Float64Array): void {
    const { K, S, X, Y, Z, count } = this.stock;
    const { k: ks, s: ss, h, weighed } = this;
    const gx = 500 * ga * this.slopeX;
    const gy = (116 * gL - 500 * ga + 200 * gb) * this.slopeY;
    const gz = -200 * gb * this.slopeZ;
    for (let b = 0; b < BANDS; b++) weighed[b] = h[b]! * (gx * X[b]! + gy * Y[b]! + gz * Z[b]!);
    let total = 0;
    for (let i = 0; i < this.n; i++) total += Math.exp(this.x[i]!);
    for (let j = 0; j < count; j++) {
      const row = j * BANDS;
      let sum = 0;
      for (let b = 0; b < BANDS; b++)
        sum += weighed[b]! * (ss[b]! * K[row + b]! - ks[b]! * S[row + b]!);
      out[j] = sum * total;
    }
  }

  private colour(x: number, y: number, z: number): void {
    const fx = labF(x);
    const fy = labF(y);
    const fz = labF(z);
    this.L = 116 * fy - 16;
    this.a = 500 * (fx - fy);
    this.b = 200 * (fy - fz);
    this.slopeX = slope(x, fx);
    this.slopeY = slope(y, fy);
    this.slopeZ = slope(z, fz);
  }

  /** K and S of the mixture; unrolled for up to four paints, nearly all cases of a search. */
  private sum(): void {
    const { K, S } = this.stock;
    const { k, s, members, n, x } = this;
    const e0 = Math.exp(x[0]!);
    const r0 = members[0]! * BANDS;
    if (n === 1) {
      for (let b = 0; b < BANDS; b++) {
        k[b] = e0 * K[r0 + b]!;
        s[b] = e0 * S[r0 + b]!;
      }
      return;
    }
    const e1 = Math.exp(x[1]!);
    const r1 = members[1]! * BANDS;
    if (n === 2) {
      for (let b = 0; b < BANDS; b++) {
        k[b] = e0 * K[r0 + b]! + e1 * K[r1 + b]!;
        s[b] = e0 * S[r0 + b]! + e1 * S[r1 + b]!;
      }
      return;
    }
    const e2 = Math.exp(x[2]!);
    const r2 = members[2]! * BANDS;
    if (n === 3) {
      for (let b = 0; b < BANDS; b++) {
        k[b] = e0 * K[r0 + b]! + e1 * K[r1 + b]! + e2 * K[r2 + b]!;
        s[b] = e0 * S[r0 + b]! + e1 * S[r1 + b]! + e2 * S[r2 + b]!;
      }
      return;
    }
    const e3 = Math.exp(x[3]!);
    const r3 = members[3]! * BANDS;
    for (let b = 0; b < BANDS; b++) {
      k[b] = e0 * K[r0 + b]! + e1 * K[r1 + b]! + e2 * K[r2 + b]! + e3 * K[r3 + b]!;
      s[b] = e0 * S[r0 + b]! + e1 * S[r1 + b]! + e2 * S[r2 + b]! + e3 * S[r3 + b]!;
    }
    for (let i = 4; i < n; i++) {
      const e = Math.exp(x[i]!);
      const row = members[i]! * BANDS;
      for (let b = 0; b < BANDS; b++) {
        k[b]! += e * K[row + b]!;
        s[b]! += e * S[row + b]!;
      }
    }
  }
}
