import { chroma, type Lab } from '../colour/lab.ts';
import { isHueWithin } from '../harmony/hue-tolerance.ts';
import { sentenceNamesOn } from '../pigment/sentence-names.ts';
import type { Shelf } from '../pigment/shelf.ts';
import type { ClothRequest, Fold } from './cloth-types.ts';
import { ONE_COAT_MM } from './glaze-selection.ts';

/** CIEDE2000 beyond which a step clearly misses its target. */
const PLAIN = 3;

/** What was restrained in a cloth, and what the shelf could not do. */
export type ClothRemark =
  /** The local colour is darker or lighter than the wish, to leave room for lights or shadows. */
  | { readonly code: 'held-back' }
  | { readonly code: 'laid-lighter' }
  | { readonly code: 'weaker'; readonly wanted: Lab; readonly local: Lab }
  | { readonly code: 'out-of-reach'; readonly steps: readonly Fold['step'][] }
  | {
      readonly code: 'hue-lost';
      readonly steps: readonly Fold['step'][];
      readonly isGlazed: boolean;
    }
  /** `pigment` as written within a sentence. */
  | { readonly code: 'glaze'; readonly pigment: string }
  | { readonly code: 'glaze-lifts'; readonly steps: readonly Fold['step'][] }
  | { readonly code: 'two-coats' };

/** Remarks on the folds of a cloth. */
export function remarksOf(
  { way }: ClothRequest,
  wanted: Lab,
  folds: readonly Fold[],
  shelf: Shelf,
): ClothRemark[] {
  const remarks: ClothRemark[] = [];
  const local = folds[2]!;
  const moved = local.lab[0] - wanted[0];
  if (way !== 'as nature had it' && moved < -1) remarks.push({ code: 'held-back' });
  if (way !== 'as nature had it' && moved > 1) remarks.push({ code: 'laid-lighter' });
  if (chroma(local.lab) < chroma(wanted) - PLAIN)
    remarks.push({ code: 'weaker', wanted, local: local.lab });
  const off = folds.filter(({ deltaE00 }) => deltaE00 > PLAIN);
  if (off.length > 0) remarks.push({ code: 'out-of-reach', steps: stepsOf(off) });
  if (way === 'deepened in its own hue' || way === 'underpaint and glaze') {
    const turned = folds.slice(3).filter(({ lab }) => !isHueWithin(local.lab, lab));
    const isGlazed = way === 'underpaint and glaze';
    if (turned.length > 0) remarks.push({ code: 'hue-lost', steps: stepsOf(turned), isGlazed });
  }
  const glaze = folds[5]!.glaze;
  if (glaze) {
    remarks.push({ code: 'glaze', pigment: sentenceNamesOn(shelf)(glaze.pigment) });
    const lifted = folds.filter((fold) => fold.glaze && fold.lab[0] > fold.mixture.lab[0] + 1);
    if (lifted.length > 0) remarks.push({ code: 'glaze-lifts', steps: stepsOf(lifted) });
    const thickest = Math.max(...folds.map((fold) => fold.glaze?.filmMm ?? 0));
    if (thickest > ONE_COAT_MM) remarks.push({ code: 'two-coats' });
  }
  return remarks;
}

const stepsOf = (folds: readonly Fold[]): readonly Fold['step'][] => folds.map(({ step }) => step);
