import { type Piece, piecesOf } from './cloth-pieces.ts';
import type { ClothSurface } from './cloth-surface.ts';
import type { Detail } from './drawn-ladder.ts';

/**
 * Resolution for each level of detail: points across and along a piece, and rows of the light grid.
 */
export const CLOTH_DETAIL = {
  fine: { columns: 15, rows: 42, weave: 60 },
  plain: { columns: 11, rows: 28, weave: 44 },
  small: { columns: 8, rows: 17, weave: 26 },
} as const;

/** One length of cloth; its pieces from back to front. */
export interface ClothLength {
  readonly pieces: readonly Piece[];
  /**
   * The turned-back or trimmed band along its edge, each piece painted over its piece of the cloth.
   */
  readonly band: readonly Piece[];
  /** The band along a swag's lower edge, painted over the whole length. */
  readonly rim?: Piece | undefined;
}

/**
 * Cuts a lit surface at its hem, and once more for a band along the hem.
 *
 * @param hem end of the cloth, in v, at position s (0…1) across it
 * @param band width in v; 0 for none
 */
export function cutLength(
  woven: ClothSurface,
  hem: (s: number) => number,
  band: number,
  detail: Detail,
): ClothLength {
  const { columns, rows } = CLOTH_DETAIL[detail];
  const pieces = piecesOf(woven, { to: hem, columns, rows });
  return {
    pieces,
    band:
      band > 0 ? piecesOf(woven, { from: (s) => hem(s) - band, to: hem, columns, rows: 4 }) : [],
  };
}
