import type { MixedVariant } from '../harmony/mixed-variant.ts';
import type { VariantWay } from '../harmony/variant-target.ts';

const DIRECTION_WORDS: Record<VariantWay, string> = {
  warmer: 'warmer at this lightness',
  cooler: 'cooler at this lightness',
  lighter: 'lighter in this hue',
  deeper: 'deeper in this hue',
  brighter: 'brighter at this lightness',
  duller: 'duller at this lightness',
};
const SHORTFALL_WORDS = {
  chroma: 'chroma',
  turn: 'the turn of hue',
  lightness: 'lightness',
} as const;
const AT_END = {
  'warm pole': 'It is as warm as its hue can be: there the turn ends.',
  'cool pole': 'It is as cool as its hue can be: there the turn ends.',
  white: 'Nothing is lighter than white: there the step ends.',
  black: 'Nothing is deeper than black: there the step ends.',
  neutral: 'It has no chroma to raise or lower.',
} as const;

/**
 * Whether only chroma fell short of a lighter or deeper variant. These ways hold the hue and let
 * chroma follow what the shelf has at that lightness, so the variant counts as complete.
 */
export const isChromaOnly = ({ way, granted, short }: MixedVariant): boolean =>
  (way === 'lighter' || way === 'deeper') && granted === 'part' && short.join() === 'chroma';

/** A sentence about what the shelf could not do; empty if it did everything. */
export function limitWords(made: MixedVariant): string {
  const { way, granted, short, stopped } = made;
  const said: string[] = [];
  if (stopped !== null) said.push(AT_END[stopped]);
  if (granted === 'nothing' && stopped === null)
    said.push(`These pigments make it no ${DIRECTION_WORDS[way]}.`);
  if (isChromaOnly(made)) said.push('Its chroma is what these pigments have at that lightness.');
  else if (granted === 'part') {
    const what = short.map((one) => SHORTFALL_WORDS[one]).join(' and ');
    said.push(`These pigments go only part of the way${what ? `: ${what} falls short` : ''}.`);
  }
  return said.join(' ');
}
