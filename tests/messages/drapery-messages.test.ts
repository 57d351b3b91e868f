import { expect, test } from 'vitest';
import { clothRemarkWords, draperyFaultWords } from '../../src/messages/drapery-messages.ts';

test.each<[Parameters<typeof clothRemarkWords>[0], string]>([
  [
    { code: 'held-back' },
    'The local colour is held back below the wish, so that its lights have room.',
  ],
  [
    { code: 'laid-lighter' },
    'The local colour is laid lighter than the wish, so that its shadows have room.',
  ],
  [
    { code: 'weaker', wanted: [50, 40, 20], local: [50, 20, 10] },
    'The shelf has it no stronger: it is duller.',
  ],
  [
    { code: 'out-of-reach', steps: ['highlight', 'shadow', 'deepest fold'] },
    'The shelf does not reach the highlight, shadow and deepest fold: this is the nearest.',
  ],
  [
    { code: 'hue-lost', steps: ['half-tone', 'shadow'], isGlazed: false },
    'The hue cannot be held in the half-tone and shadow by this shelf.',
  ],
  [
    { code: 'hue-lost', steps: ['shadow'], isGlazed: true },
    'The hue cannot be held in the shadow under this glaze, though it is kept thin.',
  ],
  [
    { code: 'glaze', pigment: 'madder lake' },
    'The madder lake glaze goes over dry, lean body colour, with no white in it and more oil than beneath.',
  ],
  [
    { code: 'glaze-lifts', steps: ['deepest fold'] },
    'In the deepest fold the body colour is deeper than the glaze, which lifts it a little.',
  ],
  [
    { code: 'two-coats' },
    'Lay the glaze of the folds in two thin coats: one thick coat dies back.',
  ],
])('a remark: %o', (remark, words) => {
  expect(clothRemarkWords(remark)).toBe(words);
});

test.each<[Parameters<typeof draperyFaultWords>[0], string]>([
  [
    { code: 'no-range', name: 'Cloak' },
    'These pigments have not six lightnesses for “Cloak”. Allow more of them, or choose another colour.',
  ],
  [
    { code: 'no-glaze', name: 'Cloak', pigment: null },
    'No transparent pigment of the hue of “Cloak” is on the shelf. Name a glaze, or choose another way.',
  ],
  [
    { code: 'no-glaze', name: 'Cloak', pigment: 'lead_white' },
    'LEAD_WHITE makes no glaze here: it covers, or is not on the shelf. Name another, or choose another way.',
  ],
  [
    { code: 'wants-more', name: 'Cloak', what: 'ladder' },
    '“Cloak” as nature had it wants the six steps of a photograph. Gather one, or choose another way.',
  ],
  [
    { code: 'wants-more', name: 'Cloak', what: 'shadows' },
    '“Cloak” as shot cloth wants the colour of its shadows. Choose it, or choose another way.',
  ],
])('a fault: %o', (fault, words) => {
  expect(draperyFaultWords(fault, (pigment) => pigment.toUpperCase())).toBe(words);
});
