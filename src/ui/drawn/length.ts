import type { Detail } from './drawn.ts';
import { type Piece, piecesOf } from './piece.ts';
import type { Weave } from './weave.ts';

/** How finely pieces are cut (points across and along) and light is worked out (rows). */
export const FINENESS = {
  fine: { columns: 15, rows: 42, weave: 60 },
  plain: { columns: 11, rows: 28, weave: 44 },
  small: { columns: 8, rows: 17, weave: 26 },
} as const;

/** One length of cloth of a garment, from back to front. */
export interface Length {
  readonly pieces: readonly Piece[];
  /** The turned-back or trimmed band along its edge, painted over it piece by piece. */
  readonly band: readonly Piece[];
  /** The same along a swag's lower edge, painted over the whole length. */
  readonly rim?: Piece | undefined;
}

/** Cuts a woven length at its hem, and once more along it for a band of `band` (in v) where one is wanted. */
export function length(
  woven: Weave,
  hem: (s: number) => number,
  band: number,
  detail: Detail,
): Length {
  const { columns, rows } = FINENESS[detail];
  const pieces = piecesOf(woven, { to: hem, columns, rows });
  return {
    pieces,
    band:
      band > 0 ? piecesOf(woven, { from: (s) => hem(s) - band, to: hem, columns, rows: 4 }) : [],
  };
}
