import { midSentence } from '../wording.ts';
import type { Shelf } from './shelf.ts';

/** Pigment names as written within a sentence: lower-case first letter, except for proper names. */
export function sentenceNamesOn(shelf: Shelf): (pigment: string) => string {
  const labels = new Map(shelf.paints.map(({ pigment, label }) => [pigment, label]));
  return (pigment) => {
    return midSentence(labels.get(pigment) ?? pigment);
  };
}
