import { BANDS } from '../colour/grid.ts';
import { labF } from '../colour/lab.ts';
import { MOST, type Stock } from './stock.ts';

const EPSILON = 216 / 24389;
const KAPPA = 24389 / 27;
/** Slope of {@link labF}; f is its value at t. */
const slope = (t: number, f: number): number => (t > EPSILON ? f / (3 * t) : KAPPA / 116);

/** √(q² + 2q) is 0 where nothing absorbs, and the slope of R there is infinite. */
const LEAST_ROOT = 1e-9;

/**
 * One mixture under trial: its pigments, their logarithmic effective amounts, its colour and the
 * slopes of the colour. Memory is reused from trial to trial: a search makes a million of them.
 */
export class Trial {
  /** Pigments in use, as indices of the stock; the first n count. */
  readonly members = new Int32Array(MOST);
  n = 0;
  /** Natural logarithms of the effective amounts. */
  readonly x = new Float64Array(MOST);
  /** CIELAB of the last evaluation. */
  L = 0;
  a = 0;
  b = 0;
  /** ∂L, ∂a, ∂b by x: entry 3i, 3i + 1, 3i + 2 for member i. */
  readonly J = new Float64Array(3 * MOST);

  private readonly stock: Stock;
  private readonly k = new Float64Array(BANDS);
  private readonly s = new Float64Array(BANDS);
  /** K/S, and the slope of the seen reflectance by K/S over S. */
  private readonly q = new Float64Array(BANDS);
  private readonly dq = new Float64Array(BANDS);
  private readonly h = new Float64Array(BANDS);
  private fx = 0;
  private fy = 0;
  private fz = 0;

  constructor(stock: Stock) {
    this.stock = stock;
  }

  /** Colour only. */
  look(): void {
    this.sum();
    const { X, Y, Z, lead, gain, k2 } = this.stock;
    const { k, s } = this;
    let x = 0;
    let y = 0;
    let z = 0;
    for (let b = 0; b < BANDS; b++) {
      const q = k[b]! / s[b]!;
      const R = 1 / (1 + q + Math.sqrt(q * q + 2 * q));
      const seen = lead + (gain * R) / (1 - k2 * R);
      x += seen * X[b]!;
      y += seen * Y[b]!;
      z += seen * Z[b]!;
    }
    const fx = labF(x);
    const fy = labF(y);
    const fz = labF(z);
    this.L = 116 * fy - 16;
    this.a = 500 * (fx - fy);
    this.b = 200 * (fy - fz);
  }

  /** Colour and slopes. */
  evaluate(): void {
    this.sum();
    const { K, S, X, Y, Z, lead, gain, k2 } = this.stock;
    const { k, s, q: qs, dq, members, n, J } = this;
    let x = 0;
    let y = 0;
    let z = 0;
    for (let b = 0; b < BANDS; b++) {
      const sb = s[b]!;
      const q = k[b]! / sb;
      const root = Math.sqrt(q * q + 2 * q);
      const R = 1 / (1 + q + root);
      const under = 1 / (1 - k2 * R);
      const seen = lead + gain * R * under;
      // dR/dq = −R ÷ √(q² + 2q); the surface's slope is gain ÷ (1 − k2·R)².
      qs[b] = q;
      dq[b] = (-R * gain * under * under) / (Math.max(root, LEAST_ROOT) * sb);
      x += seen * X[b]!;
      y += seen * Y[b]!;
      z += seen * Z[b]!;
    }
    const fx = labF(x);
    const fy = labF(y);
    const fz = labF(z);
    this.L = 116 * fy - 16;
    this.a = 500 * (fx - fy);
    this.b = 200 * (fy - fz);
    const sx = slope(x, fx);
    const sy = slope(y, fy);
    const sz = slope(z, fz);
    this.fx = sx;
    this.fy = sy;
    this.fz = sz;
    for (let i = 0; i < n; i++) {
      const row = members[i]! * BANDS;
      let dx = 0;
      let dy = 0;
      let dz = 0;
      for (let b = 0; b < BANDS; b++) {
        const t = dq[b]! * (K[row + b]! - qs[b]! * S[row + b]!);
        dx += t * X[b]!;
        dy += t * Y[b]!;
        dz += t * Z[b]!;
      }
      const e = Math.exp(this.x[i]!);
      dx *= e * sx;
      dy *= e * sy;
      dz *= e * sz;
      J[3 * i] = 116 * dy;
      J[3 * i + 1] = 500 * (dx - dy);
      J[3 * i + 2] = 200 * (dy - dz);
    }
  }

  /**
   * What a pinch of every paint of the stock would do to a measure of the colour, after
   * {@link evaluate}: its slope by the share of effective amount that the paint would take.
   * @param gL,ga,gb slope of the measure by L, a and b
   * @param out one value a paint, overwritten; about 0 for a member at its optimum
   */
  pinch(gL: number, ga: number, gb: number, out: Float64Array): void {
    const { K, S, X, Y, Z, count } = this.stock;
    const { q: qs, dq, h } = this;
    const gx = 500 * ga * this.fx;
    const gy = (116 * gL - 500 * ga + 200 * gb) * this.fy;
    const gz = -200 * gb * this.fz;
    for (let b = 0; b < BANDS; b++) h[b] = dq[b]! * (gx * X[b]! + gy * Y[b]! + gz * Z[b]!);
    let total = 0;
    for (let i = 0; i < this.n; i++) total += Math.exp(this.x[i]!);
    for (let j = 0; j < count; j++) {
      const row = j * BANDS;
      let sum = 0;
      for (let b = 0; b < BANDS; b++) sum += h[b]! * (K[row + b]! - qs[b]! * S[row + b]!);
      out[j] = sum * total;
    }
  }

  private sum(): void {
    const { K, S } = this.stock;
    const { k, s, members, n } = this;
    for (let i = 0; i < n; i++) {
      const row = members[i]! * BANDS;
      const e = Math.exp(this.x[i]!);
      if (i === 0) {
        for (let b = 0; b < BANDS; b++) {
          k[b] = e * K[row + b]!;
          s[b] = e * S[row + b]!;
        }
      } else {
        for (let b = 0; b < BANDS; b++) {
          k[b]! += e * K[row + b]!;
          s[b]! += e * S[row + b]!;
        }
      }
    }
  }
}
