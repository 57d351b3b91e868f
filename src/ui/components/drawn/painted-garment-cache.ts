import { type ClothShapes, clothShapes } from '../../../drawing/cloth-and-heap-shapes.ts';
import {
  clothShapeInput,
  type GarmentDrawingInput,
  type PaintedGarment,
  paintShapes,
} from '../../../drawing/painted-garment.ts';
import { createShapeCache, type ShapeCache } from './shape-cache.ts';

/** Cached shapes of garments. */
export const clothShapeCache: ShapeCache<GarmentDrawingInput, ClothShapes> = createShapeCache(
  'cloth',
  60,
  (garment: GarmentDrawingInput) => clothShapeInput(garment),
  clothShapes,
);

/** Paints a garment with its cached shapes; computes them if they are not cached. */
export const paintGarment = (garment: GarmentDrawingInput): PaintedGarment =>
  paintShapes(garment, clothShapeCache.get(garment));
