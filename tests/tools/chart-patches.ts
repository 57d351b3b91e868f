import { type Reflectance, spectrum } from '../../src/colour/grid.ts';
import { readSharedJson } from '../shared.ts';

/** Reflectances of the classic chart of 24 patches: D. Pascale, mean of 30 charts, 2012. */
export function chartPatches(): Reflectance[] {
  const { chart24 } = readSharedJson('reference/colour-checks.json');
  return chart24.patches.map((patch: { R_x1000: number[] }) =>
    spectrum<'R'>(patch.R_x1000.map((v) => v / 1000)),
  );
}
