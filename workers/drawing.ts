import {
  type ClothShapeInput,
  type ClothShapes,
  clothShapes,
  type HeapShapeInput,
  type HeapShapes,
  heapShapes,
} from '../src/drawing/cloth-and-heap-shapes.ts';

/** Request for the shapes of one drawing; `id` identifies the answer. */
export type ShapingJob = { readonly id: number } & (
  | { readonly kind: 'cloth'; readonly told: ClothShapeInput }
  | { readonly kind: 'heap'; readonly told: HeapShapeInput }
);
export interface Shaped {
  readonly id: number;
  readonly shapes: ClothShapes | HeapShapes;
}

/** Computes the shapes of one drawing. */
export const computeShapes = (job: ShapingJob): Shaped => ({
  id: job.id,
  shapes: job.kind === 'cloth' ? clothShapes(job.told) : heapShapes(job.told),
});
