import type { Granted } from '../../harmony/mixed-variant.ts';

/** Texts of the variants. */
export const variantTexts = {
  heading: 'Alter it',
  working: 'Mixing each fold…',
  stopped: 'Stopped: the folds show what is wished, not what the shelf makes of it.',
  goOn: 'Work it out',
  rows: {
    warmth: 'From cool to warm',
    light: 'From deep to light',
    chroma: 'From dull to bright',
  },
  asItIs: 'as it is',
  variant: (way: string, amount: string) => `${way}, ${amount}`,
  /** Below a fold, by how much the shelf makes: words, or signs on narrow screens. */
  marks: { whole: '', part: 'in part', nothing: 'out of reach' } satisfies Record<Granted, string>,
  signs: { whole: '', part: '½', nothing: '×' } satisfies Record<Granted, string>,
  signsMean: '× out of reach, ½ in part',
  eye: (seen: string) => `To the eye: ${seen}.`,
  inPile: (pile: string) => `In the pile: ${pile}.`,
  same: 'From the same pigments.',
  take: 'Take this variant',
  askWhole: 'See the whole harmony so',
  wholeHeading: (words: string) => `The whole harmony, ${words}`,
  wholeWorking: 'Working it out for every colour…',
  wholeBefore: 'The harmony as it is',
  wholeMet: (whole: number, some: boolean, all: number) => {
    if (whole === all) return 'The shelf makes the change in every colour.';
    if (!some) return 'The shelf makes no such change in any colour.';
    return whole === 0
      ? 'The shelf goes part of the way; each colour says how far.'
      : `The shelf makes the whole change in ${whole} of ${all} colours; the others say how far they go.`;
  },
  takeWhole: 'Take it for the whole harmony',
  leaveWhole: 'Leave the harmony as it is',
  unchanged: 'It stays as it is.',
} as const;
