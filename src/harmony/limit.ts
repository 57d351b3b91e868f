import type { Mixed } from './variant.ts';
import type { Way } from './vary.ts';

const WANTED: Record<Way, string> = {
  warmer: 'warmer at this lightness',
  cooler: 'cooler at this lightness',
  lighter: 'lighter in this hue',
  deeper: 'deeper in this hue',
  brighter: 'brighter at this lightness',
  duller: 'duller at this lightness',
};
const GIVEN_UP = { chroma: 'chroma', turn: 'the turn of hue', lightness: 'lightness' } as const;
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
export const isFollowed = ({ way, granted, short }: Mixed): boolean =>
  (way === 'lighter' || way === 'deeper') && granted === 'part' && short.join() === 'chroma';

/** A sentence about what the shelf could not do; empty if it did everything. */
export function limitWords(made: Mixed): string {
  const { way, granted, short, stopped } = made;
  const said: string[] = [];
  if (stopped !== null) said.push(AT_END[stopped]);
  if (granted === 'nothing' && stopped === null)
    said.push(`These pigments make it no ${WANTED[way]}.`);
  if (isFollowed(made)) said.push('Its chroma is what these pigments have at that lightness.');
  else if (granted === 'part') {
    const what = short.map((one) => GIVEN_UP[one]).join(' and ');
    said.push(`These pigments go only part of the way${what ? `: ${what} falls short` : ''}.`);
  }
  return said.join(' ');
}
