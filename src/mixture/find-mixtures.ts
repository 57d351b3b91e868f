import type { Lab } from '../colour/lab.ts';
import type { Shelf } from '../pigment/shelf.ts';
import { fail, ok, type Result } from '../result.ts';
import { applyConstraints } from './constraints.ts';
import { type MixOptions, MixtureFinder } from './mixture-finder.ts';
import type { MixtureAnswer } from './mixture-types.ts';
import { MOST_PIGMENTS } from './search/compiled-shelf.ts';
import { invalidColourFault, type MixFault } from './search-options.ts';

/**
 * Finds for each target the nearest mixture of a shelf in CIEDE2000 (D65): the best recipe,
 * whole-number parts (chosen independently), the simplest mixture and alternatives. Deterministic.
 * @param targets CIELAB under D65; also colours that no surface can have
 * @throws RangeError when `most` is not 1 to 6
 */
export function findMixtures(
  targets: readonly Lab[],
  shelf: Shelf,
  options: MixOptions = {},
): Result<MixtureAnswer[], MixFault> {
  const { most = 4, constraints = {} } = options;
  if (!Number.isInteger(most) || most < 1 || most > MOST_PIGMENTS)
    throw new RangeError(`most is ${most}, not 1 to ${MOST_PIGMENTS}`);
  const odd = invalidColourFault(targets);
  if (odd) return odd;
  const choice = applyConstraints(shelf, constraints, most);
  if (!choice.ok) return choice;
  const finder = new MixtureFinder(shelf, choice.value, most, options);
  const answers: MixtureAnswer[] = [];
  for (const [i, target] of targets.entries()) {
    const answer = finder.answer(target);
    if (!answer) return fail({ code: 'stopped' });
    answers.push(answer);
    options.onProgress?.((i + 1) / targets.length);
  }
  return ok(answers);
}
