import type { Lab } from '../colour/lab.ts';
import type { Shelf } from '../pigment/shelf.ts';
import { fail, ok, type Result } from '../result.ts';
import { choose } from './constraint.ts';
import { Finder, type MixOptions } from './finder.ts';
import type { Answer } from './mixture.ts';
import { MOST } from './stock.ts';
import { type MixFault, notAColour } from './work.ts';

/**
 * For each target the nearest colour that a shelf mixes, in CIEDE2000 under D65: the best recipe,
 * whole-number parts chosen on their own, the simplest and the different ones. The same input gives
 * the same answer.
 * @param targets CIELAB under D65; a colour that no surface has is answered with the nearest
 * @throws RangeError when `most` is not 1 to 6
 */
export function findMixtures(
  targets: readonly Lab[],
  shelf: Shelf,
  options: MixOptions = {},
): Result<Answer[], MixFault> {
  const { most = 4, constraints = {} } = options;
  if (!Number.isInteger(most) || most < 1 || most > MOST)
    throw new RangeError(`most is ${most}, not 1 to ${MOST}`);
  const odd = notAColour(targets);
  if (odd) return odd;
  const choice = choose(shelf, constraints, most);
  if (!choice.ok) return choice;
  const finder = new Finder(shelf, choice.value, most, options);
  const answers: Answer[] = [];
  for (const [i, target] of targets.entries()) {
    const answer = finder.answer(target);
    if (!answer) return fail({ code: 'stopped' });
    answers.push(answer);
    options.onProgress?.((i + 1) / targets.length);
  }
  return ok(answers);
}
