/** Bytes `from` … `to` − 1 as Latin-1 text. */
export const ascii = (bytes: Uint8Array, from: number, to: number): string =>
  String.fromCharCode(...bytes.subarray(from, to));
/** Big-endian unsigned 32-bit integer at byte i. */
export const u32 = (b: Uint8Array, i: number): number =>
  ((b[i]! << 24) | (b[i + 1]! << 16) | (b[i + 2]! << 8) | b[i + 3]!) >>> 0;
/** Big-endian unsigned 16-bit integer at byte i. */
export const u16 = (b: Uint8Array, i: number): number => (b[i]! << 8) | b[i + 1]!;
