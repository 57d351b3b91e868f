import type { GarmentRecord } from '../../book/drapery.ts';
import type { Cloth, Garment } from '../../drapery/fold.ts';

export const LINING = ', lining';
export const TRIM = ', trim';

const recordOf = (cloth: Cloth, name: string): GarmentRecord => ({
  name,
  way: cloth.way,
  stuff: cloth.stuff,
  folds: [...cloth.folds, ...(cloth.reflected ? [cloth.reflected] : [])].map(
    ({ step, lab, mixture }) => ({ step, lab, mixture }),
  ),
});

/** A garment as the book keeps it: its own ladder, then its lining's and its trim's under its name. */
export const recordsOf = (garment: Garment): GarmentRecord[] => [
  recordOf(garment, garment.name),
  ...(garment.lining ? [recordOf(garment.lining, `${garment.name}${LINING}`)] : []),
  ...(garment.trim ? [recordOf(garment.trim, `${garment.name}${TRIM}`)] : []),
];
