import type { Lab } from './lab.ts';

const DEG = Math.PI / 180;
const POW_25_7 = 25 ** 7;

/**
 * CIEDE2000 colour difference.
 * @param kL weight of lightness, 1 unless a bar says otherwise
 * @see G. Sharma, W. Wu, E. N. Dalal, Color Res. Appl. 30 (2005) 21-30; CIE 142:2001
 */
export function deltaE00(x: Lab, y: Lab, kL = 1): number {
  return deltaE00Of(x[0], x[1], x[2], y[0], y[1], y[2], kL);
}

/** The same from six numbers, for loops that must not allocate. */
export function deltaE00Of(
  L1: number,
  a1: number,
  b1: number,
  L2: number,
  a2: number,
  b2: number,
  kL = 1,
): number {
  const meanC = (Math.sqrt(a1 * a1 + b1 * b1) + Math.sqrt(a2 * a2 + b2 * b2)) / 2;
  const c7 = meanC ** 7;
  const G = 0.5 * (1 - Math.sqrt(c7 / (c7 + POW_25_7)));
  const ap1 = (1 + G) * a1;
  const ap2 = (1 + G) * a2;
  const C1 = Math.sqrt(ap1 * ap1 + b1 * b1);
  const C2 = Math.sqrt(ap2 * ap2 + b2 * b2);
  const h1 = C1 === 0 ? 0 : positive(Math.atan2(b1, ap1) / DEG);
  const h2 = C2 === 0 ? 0 : positive(Math.atan2(b2, ap2) / DEG);

  const neutral = C1 * C2 === 0;
  let dh = 0;
  let meanH = h1 + h2;
  if (!neutral) {
    dh = h2 - h1;
    if (dh > 180) dh -= 360;
    else if (dh < -180) dh += 360;
    if (Math.abs(h1 - h2) <= 180) meanH /= 2;
    else meanH = meanH < 360 ? (meanH + 360) / 2 : (meanH - 360) / 2;
  }
  const dL = L2 - L1;
  const dC = C2 - C1;
  const dH = 2 * Math.sqrt(C1 * C2) * Math.sin((dh / 2) * DEG);
  const meanL = (L1 + L2) / 2;
  const meanCp = (C1 + C2) / 2;

  const T =
    1 -
    0.17 * Math.cos((meanH - 30) * DEG) +
    0.24 * Math.cos(2 * meanH * DEG) +
    0.32 * Math.cos((3 * meanH + 6) * DEG) -
    0.2 * Math.cos((4 * meanH - 63) * DEG);
  const turn = (meanH - 275) / 25;
  const dTheta = 30 * Math.exp(-turn * turn);
  const cp7 = meanCp ** 7;
  const RC = 2 * Math.sqrt(cp7 / (cp7 + POW_25_7));
  const l50 = (meanL - 50) * (meanL - 50);
  const SL = 1 + (0.015 * l50) / Math.sqrt(20 + l50);
  const SC = 1 + 0.045 * meanCp;
  const SH = 1 + 0.015 * meanCp * T;
  const RT = -Math.sin(2 * dTheta * DEG) * RC;
  const tL = dL / (kL * SL);
  const tC = dC / SC;
  const tH = dH / SH;
  return Math.sqrt(Math.max(0, tL * tL + tC * tC + tH * tH + RT * tC * tH));
}

const positive = (angle: number): number => (angle < 0 ? angle + 360 : angle);
