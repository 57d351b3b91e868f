import { ascii, u32 } from './bytes.ts';

/**
 * Chromaticities (x, y) of the red and green colorants of an ICC matrix profile (ISO 15076-1); null
 * if it has none.
 */
export function colorants(
  icc: Uint8Array,
): { red: [number, number]; green: [number, number] } | null {
  if (icc.length < 132) return null;
  const found = new Map<string, [number, number]>();
  const count = Math.min(u32(icc, 128), 100);
  for (let tag = 0; tag < count; tag++) {
    const at = 132 + tag * 12;
    if (at + 12 > icc.length) return null;
    const name = ascii(icc, at, at + 4);
    const offset = u32(icc, at + 4);
    if ((name !== 'rXYZ' && name !== 'gXYZ') || offset + 20 > icc.length) continue;
    const fixed = (i: number) => (u32(icc, offset + i) | 0) / 65536;
    const [X, Y, Z] = [fixed(8), fixed(12), fixed(16)];
    found.set(name, [X / (X + Y + Z), Y / (X + Y + Z)]);
  }
  const red = found.get('rXYZ');
  const green = found.get('gXYZ');
  return red && green ? { red, green } : null;
}

/**
 * Whether a profile exceeds sRGB: its red or green colorant, adapted to D50 as stored in profiles,
 * lies clearly outside sRGB's (0.6484, 0.3309 and 0.3212, 0.5978). Table-based profiles count as
 * sRGB.
 */
export function isWide(icc: Uint8Array): boolean {
  const c = colorants(icc);
  return c !== null && (c.red[0] > 0.655 || c.green[1] > 0.61);
}

/** Whether a profile is Display P3, by its D50-adapted colorants: red x 0.681, green y 0.6747. */
export function isP3(icc: Uint8Array): boolean {
  const c = colorants(icc);
  return c !== null && Math.abs(c.red[0] - 0.681) < 0.004 && Math.abs(c.green[1] - 0.6747) < 0.004;
}
