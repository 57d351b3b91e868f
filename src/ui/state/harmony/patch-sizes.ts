import type { FileRef } from '../../../book/schema/fields.ts';

/** Sides of the averaged patch, as fractions of the photograph's shorter edge. */
export const PATCH_SIDES = { small: 0.01, middle: 0.03, large: 0.08 } as const;
export type PatchSize = keyof typeof PATCH_SIDES;
export const PATCH_SIZES = Object.keys(PATCH_SIDES) as readonly PatchSize[];

/** Reflectance of a photographer's grey card, 0…1 (common practice). */
export const GREY_CARD = 0.18;

/** Range of the brush radius, as a fraction of the longer edge. */
export const BRUSH_RADIUS = { least: 0.01, most: 0.2, step: 0.01 } as const;

/** Side of a patch, px of the stored photograph: odd, at least 5. Must equal workers/photo.ts. */
export const patchSidePx = (
  { width, height }: Pick<FileRef, 'width' | 'height'>,
  size: PatchSize,
) => Math.max(5, Math.round(Math.min(width, height) * PATCH_SIDES[size])) | 1;

/** Element id of the photograph's input surface. */
export const SURFACE_ID = 'photograph-surface';
