import { changeWords } from '../colour/change-words.ts';
import { chroma, type Lab } from '../colour/lab.ts';
import { isHueWithin } from '../harmony/hue-tolerance.ts';
import { sentenceNamesOn } from '../pigment/sentence-names.ts';
import type { Shelf } from '../pigment/shelf.ts';
import { joinWords } from '../wording.ts';
import type { ClothRequest, DraperyFault, Fold } from './cloth-types.ts';
import { ONE_COAT_MM } from './glaze-film.ts';

/** CIEDE2000 beyond which a step clearly misses its target. */
const PLAIN = 3;

/** Sentences about what was restrained and what the shelf could not do. */
export function remarksOf(
  wish: ClothRequest,
  wanted: Lab,
  folds: readonly Fold[],
  shelf: Shelf,
): string[] {
  const said: string[] = [];
  const local = folds[2]!;
  const moved = local.lab[0] - wanted[0];
  if (wish.way !== 'as nature had it' && moved < -1)
    said.push('The local colour is held back below the wish, so that its lights have room.');
  if (wish.way !== 'as nature had it' && moved > 1)
    said.push('The local colour is laid lighter than the wish, so that its shadows have room.');
  if (chroma(local.lab) < chroma(wanted) - PLAIN)
    said.push(`The shelf has it no stronger: it is ${changeWords(wanted, local.lab)}.`);
  const off = folds.filter(({ deltaE00 }) => deltaE00 > PLAIN).map(({ step }) => step);
  if (off.length > 0)
    said.push(`The shelf does not reach the ${joinWords(off)}: this is the nearest.`);
  if (wish.way === 'deepened in its own hue' || wish.way === 'underpaint and glaze') {
    const left = folds
      .slice(3)
      .filter(({ lab }) => !isHueWithin(local.lab, lab))
      .map(({ step }) => step);
    const thin =
      wish.way === 'underpaint and glaze' ? ' under this glaze, though it is kept thin' : '';
    if (left.length > 0)
      said.push(`The hue cannot be held in the ${joinWords(left)}${thin || ' by this shelf'}.`);
  }
  const glaze = folds[5]!.glaze;
  if (glaze) {
    const name = sentenceNamesOn(shelf)(glaze.pigment);
    const thick = Math.max(...folds.map((fold) => fold.glaze?.filmMm ?? 0));
    said.push(
      `The ${name} glaze goes over dry, lean body colour, with no white in it and more oil than beneath.`,
    );
    const lifted = folds.filter((fold) => fold.glaze && fold.lab[0] > fold.mixture.lab[0] + 1);
    if (lifted.length > 0)
      said.push(
        `In the ${joinWords(lifted.map(({ step }) => step))} the body colour is deeper than the glaze, which lifts it a little.`,
      );
    if (thick > ONE_COAT_MM)
      said.push('Lay the glaze of the folds in two thin coats: one thick coat dies back.');
  }
  return said;
}
export type MixCode = Exclude<DraperyFault['code'], 'no-range' | 'no-glaze' | 'wants-more'>;
