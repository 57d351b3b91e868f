import type { Shelf } from '../pigment/shelf.ts';
import { type Amount, shelfPaintOf } from './predict.ts';

/** Mean S below which a paint has no hiding power. */
const HARDLY_SCATTERS = 0.02;

const scattering = (pigment: string, shelf: Paints): number => {
  const { S } = shelfPaintOf(pigment, shelf);
  return S.reduce((sum, v) => sum + v, 0) / S.length;
};
type Paints = Pick<Shelf, 'paints' | 'name'>;

/** Whether a paint hardly scatters: alone it is a transparent film (a glaze), not a masstone. */
export const isGlazePaint = (pigment: string, shelf: Paints): boolean =>
  scattering(pigment, shelf) < HARDLY_SCATTERS;

/**
 * The main pigment of a pile that hardly scatters (a glaze); null if the pile has hiding power. The
 * predicted colour of such a pile is valid only for an infinitely thick film.
 * @throws RangeError when a pigment is not on the shelf
 */
export function glazingPigmentOf(amounts: readonly Amount[], shelf: Paints): string | null {
  const sum = (of: (a: Amount) => number) => amounts.reduce((all, a) => all + of(a), 0);
  const S = sum((a) => a.amount * scattering(a.pigment, shelf)) / sum((a) => a.amount);
  return S < HARDLY_SCATTERS
    ? amounts.reduce((a, b) => (b.amount > a.amount ? b : a)).pigment
    : null;
}
