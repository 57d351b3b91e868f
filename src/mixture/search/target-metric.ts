import type { Lab } from '../../colour/lab.ts';

const DEG = Math.PI / 180;
const POW_25_7 = 25 ** 7;
const TINY = 1e-9;

/** What to preserve first if a colour is out of reach. */
export const PRESERVED_AXES = ['nearest', 'hue', 'lightness'] as const;
export type PreservedAxis = (typeof PRESERVED_AXES)[number];

/** Weight of the preserved axis. */
const HEAVY = 5;

/**
 * CIEDE2000 to one target as a sum of three squares. Its buffers are overwritten by every call. The
 * cross term is absorbed exactly, because |R_T| ≤ 2:
 * tC² + tH² + R_T·tC·tH = (tC + R_T·tH/2)² + (1 − R_T²/4)·tH².
 */
export class TargetMetric {
  readonly target: Lab;
  /** The three signed residuals of the last call: lightness, chroma (with the cross term), hue. */
  readonly r = new Float64Array(3);
  /** Jacobian of the residuals of {@link near} by L, a, b of the sample, row-major. */
  readonly linear = new Float64Array(9);
  /** Jacobian of the residuals of {@link exact} at the last sample of {@link slopes}, row-major. */
  readonly local = new Float64Array(9);
  private readonly wL: number;
  private readonly wC: number;
  private readonly wH: number;

  constructor(target: Lab, keep: PreservedAxis = 'nearest') {
    this.target = target;
    this.wL = keep === 'lightness' ? HEAVY : 1;
    this.wC = 1;
    this.wH = keep === 'hue' ? HEAVY : 1;
  }

  /**
   * The same residuals in another form, as {@link linear} times the difference. With the mean
   * chroma C and mean hue h, the difference along the mean hue is ΔC·cos(Δh/2) and across it
   * 2C·sin(Δh/2), so that division by known factors gives tC and tH. Its Jacobian costs nothing if
   * the weights are treated as constant during a step. Equal to {@link exact} for hues up to 130
   * degrees apart.
   * @returns the sum of squares
   */
  near(L: number, a: number, b: number): number {
    this.linearise(L, a, b);
    const { r, linear: m, target } = this;
    const dL = L - target[0];
    const da = a - target[1];
    const db = b - target[2];
    r[0] = m[0]! * dL;
    const u = m[4]! * da + m[5]! * db;
    const v = m[7]! * da + m[8]! * db;
    r[1] = u;
    r[2] = v;
    return r[0]! * r[0]! + u * u + v * v;
  }

  /** Residuals of CIEDE2000 itself; returns their sum of squares: ΔE² for `nearest`. */
  exact(L: number, a: number, b: number): number {
    const { r, target } = this;
    const C1ab = Math.sqrt(target[1] * target[1] + target[2] * target[2]);
    const C2ab = Math.sqrt(a * a + b * b);
    const mean7 = seventh((C1ab + C2ab) / 2);
    const G = 0.5 * (1 - Math.sqrt(mean7 / (mean7 + POW_25_7)));
    const a1 = (1 + G) * target[1];
    const a2 = (1 + G) * a;
    const b1 = target[2];
    const C1 = Math.sqrt(a1 * a1 + b1 * b1);
    const C2 = Math.sqrt(a2 * a2 + b * b);
    let dh = 0;
    let meanH = 0;
    if (C1 * C2 > 0) {
      const h1 = angle(b1, a1);
      const h2 = angle(b, a2);
      dh = h2 - h1;
      if (dh > 180) dh -= 360;
      else if (dh < -180) dh += 360;
      meanH = h1 + h2;
      if (Math.abs(h1 - h2) <= 180) meanH /= 2;
      else meanH = meanH < 360 ? (meanH + 360) / 2 : (meanH - 360) / 2;
    } else meanH = (C1 > 0 ? angle(b1, a1) : 0) + (C2 > 0 ? angle(b, a2) : 0);
    const meanC = (C1 + C2) / 2;
    const meanL = (target[0] + L) / 2;
    const T = hueTerm(meanH);
    const RT = rotation(meanH, meanC);
    const tL = (L - target[0]) / weightL(meanL);
    const tC = (C2 - C1) / (1 + 0.045 * meanC);
    const tH = (2 * Math.sqrt(C1 * C2) * Math.sin((dh / 2) * DEG)) / (1 + 0.015 * meanC * T);
    r[0] = this.wL * tL;
    r[1] = this.wC * (tC + (RT / 2) * tH);
    r[2] = this.wH * Math.sqrt(Math.max(0, 1 - (RT * RT) / 4)) * tH;
    return r[0]! * r[0]! + r[1]! * r[1]! + r[2]! * r[2]!;
  }

  /** {@link exact}, with {@link local} computed by central differences. */
  slopes(L: number, a: number, b: number): number {
    const h = 1e-4;
    const { r, local } = this;
    for (let axis = 0; axis < 3; axis++) {
      const [dL, da, db] = [axis === 0 ? h : 0, axis === 1 ? h : 0, axis === 2 ? h : 0];
      this.exact(L + dL, a + da, b + db);
      const r0 = r[0]!;
      const r1 = r[1]!;
      const r2 = r[2]!;
      this.exact(L - dL, a - da, b - db);
      local[axis] = (r0 - r[0]!) / (2 * h);
      local[3 + axis] = (r1 - r[1]!) / (2 * h);
      local[6 + axis] = (r2 - r[2]!) / (2 * h);
    }
    return this.exact(L, a, b);
  }

  private linearise(L: number, a: number, b: number): void {
    const [L1, a1, b1] = this.target;
    const mean7 = seventh((Math.sqrt(a1 * a1 + b1 * b1) + Math.sqrt(a * a + b * b)) / 2);
    const g = 1.5 - 0.5 * Math.sqrt(mean7 / (mean7 + POW_25_7));
    const C1 = Math.sqrt(g * g * a1 * a1 + b1 * b1) + TINY;
    const C2 = Math.sqrt(g * g * a * a + b * b) + TINY;
    const C = (C1 + C2) / 2;
    // The sum of the unit vectors points in the mean hue; half its length is cos(Δh/2).
    let cos = g * (a1 / C1 + a / C2);
    let sin = b1 / C1 + b / C2;
    const length = Math.sqrt(cos * cos + sin * sin) + TINY;
    cos /= length;
    sin /= length;
    const h = angle(sin, cos);
    const RT = rotation(h, C);
    // A neutral has no direction and adds nothing to the length.
    const full = 2 - TINY / C1 - TINY / C2 + TINY;
    const SC = (1 + 0.045 * C) * Math.max(length / full, 0.4);
    const SH = ((1 + 0.015 * C * hueTerm(h)) * C) / Math.sqrt(C1 * C2);
    const fold = Math.sqrt(Math.max(0, 1 - (RT * RT) / 4));
    const m = this.linear;
    m[0] = this.wL / weightL((L1 + L) / 2);
    m[4] = this.wC * g * (cos / SC - ((RT / 2) * sin) / SH);
    m[5] = this.wC * (sin / SC + ((RT / 2) * cos) / SH);
    m[7] = (-this.wH * fold * g * sin) / SH;
    m[8] = (this.wH * fold * cos) / SH;
  }
}

function angle(b: number, a: number): number {
  const h = Math.atan2(b, a) / DEG;
  return h < 0 ? h + 360 : h;
}

const seventh = (c: number): number => c * c * c * (c * c * c) * c;

function weightL(L: number): number {
  const l50 = (L - 50) * (L - 50);
  return 1 + (0.015 * l50) / Math.sqrt(20 + l50);
}

const hueTerm = (h: number): number =>
  1 -
  0.17 * Math.cos((h - 30) * DEG) +
  0.24 * Math.cos(2 * h * DEG) +
  0.32 * Math.cos((3 * h + 6) * DEG) -
  0.2 * Math.cos((4 * h - 63) * DEG);

function rotation(h: number, C: number): number {
  const turn = (h - 275) / 25;
  const c7 = seventh(C);
  return -Math.sin(60 * Math.exp(-turn * turn) * DEG) * 2 * Math.sqrt(c7 / (c7 + POW_25_7));
}
