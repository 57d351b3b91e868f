import type { Lab } from '../../../colour/lab.ts';
import type { DrawnLadder } from '../../../drawing/drawn-ladder.ts';
import type { MixedVariant } from '../../../harmony/mixed-variant.ts';
import { isChromaOnly } from '../../../messages/variant-limits.ts';
import { variantTexts } from '../../texts/variant-texts.ts';

/**
 * A colour (CIELAB) shifted by the difference between the two mixtures, so that the drawing shows
 * only changes that the shelf can make. L* is clamped to 0…100.
 */
export function shiftWithMixture(from: Lab, { origin, mixture }: MixedVariant): Lab {
  const [one, other] = [origin.mixture.lab, mixture.lab];
  const at = (i: 0 | 1 | 2) => from[i] + other[i] - one[i];
  return [Math.min(100, Math.max(0, at(0))), at(1), at(2)];
}

/** Label and sign below a fold; none if only chroma falls short of a lighter or deeper variant. */
export const foldMarks = (made: MixedVariant | undefined) =>
  made && !isChromaOnly(made)
    ? { mark: variantTexts.marks[made.granted], sign: variantTexts.signs[made.granted] }
    : {};

/** Hatches half of a fold if the shelf makes only part of the variant. */
export const hatchPartial = (ladder: DrawnLadder, made: MixedVariant | undefined): DrawnLadder =>
  made?.granted === 'part' && !isChromaOnly(made)
    ? ladder.map((step, i) => (i >= ladder.length / 2 ? { ...step, reachable: false } : step))
    : ladder;
