/** Bytes as Latin text. */
export const ascii = (bytes: Uint8Array, from: number, to: number): string =>
  String.fromCharCode(...bytes.subarray(from, to));
/** Four bytes, the greatest first. */
export const u32 = (b: Uint8Array, i: number): number =>
  ((b[i]! << 24) | (b[i + 1]! << 16) | (b[i + 2]! << 8) | b[i + 3]!) >>> 0;
/** Two bytes, the greater first. */
export const u16 = (b: Uint8Array, i: number): number => (b[i]! << 8) | b[i + 1]!;
