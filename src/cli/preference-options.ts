import { DEFAULT_PREFERENCES, type MixingPreferences } from '../mixture/mixing-preferences.ts';
import type { HazardLevel } from '../pigment/pigment-facts.ts';
import type { Shelf } from '../pigment/shelf.ts';
import { CliError } from './cli-error.ts';
import { type Parsed, wholeNumber } from './options.ts';

/** The options that limit what goes into a pile, for {@link wishIn}. */
export const WISH_OPTIONS = {
  only: { type: 'string', multiple: true },
  'leave-out': { type: 'string', multiple: true },
  hazard: { type: 'string' },
  must: { type: 'string', multiple: true },
  'no-black': { type: 'boolean' },
  most: { type: 'string' },
} as const;

/** What those options are, for a verb's help. */
export const WISH_HELP = `  --most N         at most so many pigments in a mixture, 1 to 6 (4)
  --only NAME      only this pigment and others named so (once for each)
  --leave-out NAME without this pigment (once for each)
  --hazard LEVEL   without pigments this dangerous or more: caution, toxic or very-toxic
  --must NAME      with this pigment in every mixture (once for each)
  --no-black       without the blacks of the shelf`;

const LEVELS: Record<string, Exclude<HazardLevel, 'low'>> = {
  caution: 'caution',
  toxic: 'toxic',
  'very-toxic': 'very_toxic',
};

/** What was asked of the mixtures. @throws CliError */
export function wishIn({ given, has, value }: Parsed, shelf: Shelf): MixingPreferences {
  const named = (option: string) =>
    given.filter(({ name }) => name === option).map((typed) => paintNamed(typed.value, shelf));
  const only = named('only');
  const level = value('hazard');
  const hazard = level === undefined ? null : LEVELS[level];
  if (hazard === undefined)
    throw new CliError(`--hazard takes caution, toxic or very-toxic, not “${level}”.`);
  return {
    ...DEFAULT_PREFERENCES,
    only: only.length > 0 ? only : null,
    leaveOut: named('leave-out'),
    hazard,
    mustHold: named('must'),
    noBlack: has('no-black'),
    most: wholeNumber('most', value('most') ?? '4', 1, 6),
  };
}

/** A pigment of the shelf by its name in results or by its label, capitals or not. @throws CliError */
export function paintNamed(text: string, shelf: Shelf): string {
  const said = text.trim().toLowerCase();
  const found =
    shelf.paints.find(({ pigment }) => pigment === text) ??
    shelf.paints.find(({ pigment, label }) =>
      [pigment, label].some((name) => name.toLowerCase() === said),
    );
  if (!found)
    throw new CliError(
      `“${text}” is not on the shelf. “kingcup shelf list” shows what is, each by its name.`,
    );
  return found.pigment;
}

/** What a person reads for a pigment. */
export const labelsOf = (shelf: Shelf): ((pigment: string) => string) => {
  const labels = new Map(shelf.paints.map(({ pigment, label }) => [pigment, label]));
  return (pigment) => labels.get(pigment) ?? pigment;
};
