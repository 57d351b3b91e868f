import type { Shelf } from '../pigment/shelf.ts';
import { type Amount, paintOf } from './predict.ts';

/** Mean S under which a paint hides nothing. */
const HARDLY_SCATTERS = 0.02;

const scattering = (pigment: string, shelf: Paints): number => {
  const { S } = paintOf(pigment, shelf);
  return S.reduce((sum, v) => sum + v, 0) / S.length;
};
type Paints = Pick<Shelf, 'paints' | 'name'>;

/** Whether a paint scatters next to nothing: alone it is a film (a glaze), not a masstone. */
export const isFilm = (pigment: string, shelf: Paints): boolean =>
  scattering(pigment, shelf) < HARDLY_SCATTERS;

/**
 * The pigment that makes a whole pile a glaze: of a pile that scatters next to nothing, the one with
 * most of it; null where the pile covers. Its predicted colour holds only for a film that ends all light.
 */
export function mostlyFilm(amounts: readonly Amount[], shelf: Paints): string | null {
  const sum = (of: (a: Amount) => number) => amounts.reduce((all, a) => all + of(a), 0);
  const S = sum((a) => a.amount * scattering(a.pigment, shelf)) / sum((a) => a.amount);
  return S < HARDLY_SCATTERS
    ? amounts.reduce((a, b) => (b.amount > a.amount ? b : a)).pigment
    : null;
}
