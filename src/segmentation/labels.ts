/** Label of cells that are excluded. */
export const UNLABELLED = 255;

/** Maps the numbers from `from` to `to` − 1 through a table; `out` may be `numbers` itself. */
export function relabel(
  labels: Uint8Array,
  numbers: Uint8Array | Uint16Array,
  from: number,
  to: number,
  out: Uint8Array,
): void {
  for (let i = from; i < to; i++) out[i] = labels[numbers[i]!]!;
}
