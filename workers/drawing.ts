import {
  type ClothShapes,
  clothShapes,
  type Fall,
  type HeapShapes,
  heapShapes,
  type Lump,
} from '../src/ui/drawn/shapes.ts';

/** Request for the shapes of one drawing; `id` identifies the answer. */
export type ShapingJob = { readonly id: number } & (
  | { readonly kind: 'cloth'; readonly told: Fall }
  | { readonly kind: 'heap'; readonly told: Lump }
);
export interface Shaped {
  readonly id: number;
  readonly shapes: ClothShapes | HeapShapes;
}

/** Computes the shapes of one drawing. */
export const shaped = (job: ShapingJob): Shaped => ({
  id: job.id,
  shapes: job.kind === 'cloth' ? clothShapes(job.told) : heapShapes(job.told),
});
