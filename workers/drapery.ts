import type { Cloth, ClothRequest, DraperyFault } from '../src/drapery/cloth-types.ts';
import { drape } from '../src/drapery/garment.ts';
import type { Shelf } from '../src/pigment/shelf.ts';
import type { Result } from '../src/result.ts';
import type { JobResult } from './job-protocol.ts';

/** Cloths to compute on one shelf. */
export interface DraperyJob {
  readonly wishes: readonly ClothRequest[];
  readonly shelf: Shelf;
}
/** A finished cloth: index of its request, and progress of the job, 0…1. */
export interface DraperyNews {
  readonly at: number;
  readonly cloth: Result<Cloth, DraperyFault>;
  readonly done: number;
}

/** Computes cloth after cloth and posts each as soon as it is ready. */
export function drapeAll(
  { wishes, shelf }: DraperyJob,
  tell: (news: DraperyNews) => void,
): JobResult<null> {
  for (const [at, wish] of wishes.entries())
    tell({ at, cloth: drape(wish, shelf), done: (at + 1) / wishes.length });
  return { value: null };
}
