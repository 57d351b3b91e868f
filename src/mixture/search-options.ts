import type { Lab } from '../colour/lab.ts';
import { fail } from '../result.ts';
import type { ConstraintFault, Constraints } from './constraints.ts';

/** Options of all mixture searches for several colours. */
export interface MixtureSearchOptions {
  /** Maximum number of pigments in one mixture, 1 to 6; default 4. */
  readonly most?: number;
  readonly constraints?: Constraints;
  /** Polled often; the search ends soon after it returns true. */
  readonly stopped?: () => boolean;
  /** Called with the share of the work done, 0…1. */
  readonly onProgress?: (done: number) => void;
}

/** Why a mixture search has no result. */
export type MixFault =
  | ConstraintFault
  | { readonly code: 'not-a-colour'; readonly index: number }
  | { readonly code: 'stopped' };

/** A fault for the first colour that is not three finite numbers; null if all are valid. */
export function invalidColourFault(labs: readonly Lab[]) {
  const index = labs.findIndex((lab) => !lab.every(Number.isFinite));
  return index < 0 ? null : fail({ code: 'not-a-colour', index } as const);
}
