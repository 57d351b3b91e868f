import { expect, test } from 'vitest';
import {
  addFaultWords,
  mixFaultWords,
  startAgainWords,
} from '../../src/messages/mixture-messages.ts';
import type { AddFault } from '../../src/mixture/correct-pile.ts';
import type { MixFault } from '../../src/mixture/search-options.ts';
import { plainNumber } from '../../src/number-format.ts';

const both: (MixFault & AddFault)[] = [
  { code: 'nothing-left' },
  { code: 'not-on-shelf', pigment: 'gold' },
  { code: 'wanted-and-left-out', pigment: 'red', by: 'leaveOut' },
  { code: 'wanted-apart', pigments: ['red', 'blue'], by: 'apart' },
  { code: 'more-wanted-than-most', wanted: 3, most: 2 },
  { code: 'not-a-colour', index: 1 },
];

test('every fault says what happened, then what to do', () => {
  const said = [
    ...both.flatMap((fault) => [mixFaultWords(fault), addFaultWords(fault)]),
    addFaultWords({ code: 'empty-batch' }),
    startAgainWords({ why: 'too-much', fresh: 0.2 }, plainNumber),
    startAgainWords({ why: 'out-of-reach', fresh: 3.14 }, plainNumber),
  ];
  for (const words of said) {
    expect(words).toMatch(/[.:] .+\.$/);
    expect(words).not.toMatch(/undefined|NaN/);
  }
  expect(said.at(-1)).toContain('within 3.1');
});

test('a contradiction names both sides, by their labels', () => {
  const label = (pigment: string) => pigment.toUpperCase();
  const words = addFaultWords(
    { code: 'wanted-apart', pigments: ['red', 'blue'], by: 'apart' },
    label,
  );
  expect(words).toContain('RED');
  expect(words).toContain('BLUE');
});
