import type { Lab } from '../colour/lab.ts';
import { fail } from '../result.ts';
import type { Constraints, Contradiction } from './constraint.ts';

/** What every piece of work that mixes for many colours takes. */
export interface WorkOptions {
  /** Most pigments in one mixture, 1 to 6; 4 where not given. */
  readonly most?: number;
  readonly constraints?: Constraints;
  /** Asked often; the work ends soon after it says yes. */
  readonly stopped?: () => boolean;
  /** Share of the work done, 0…1. */
  readonly onProgress?: (done: number) => void;
}

/** Why there is no answer. */
export type MixFault =
  | Contradiction
  | { readonly code: 'not-a-colour'; readonly index: number }
  | { readonly code: 'stopped' };

/** The first of some colours that is none (a number is missing), as a fault; null where all are. */
export function notAColour(labs: readonly Lab[]) {
  const index = labs.findIndex((lab) => !lab.every(Number.isFinite));
  return index < 0 ? null : fail({ code: 'not-a-colour', index } as const);
}
