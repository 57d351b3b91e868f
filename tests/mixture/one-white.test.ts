import { expect, test } from 'vitest';
import {
  type AllowedPaints,
  applyConstraints,
  type Constraints,
} from '../../src/mixture/constraints.ts';
import { invented } from './invented.ts';

function chosen(wish: Constraints): AllowedPaints {
  const choice = applyConstraints(invented, wish, 3);
  if (!choice.ok) throw new Error(choice.fault.code);
  return choice.value;
}
/** Pairs that never go into one pile. */
function apart({ paints, clash }: AllowedPaints): string[] {
  const names = paints.map(({ pigment }) => pigment);
  return names.flatMap((a, i) =>
    names.flatMap((b, j) => (clash[i * names.length + j] === 1 ? [`${a} ${b}`] : [])),
  );
}

// Common practice: two whites in a pile are a mistake of the hand, or a lead white spoilt with zinc.
test('of several whites a pile holds one', () => {
  const oneWhite = ['white', 'chalk'];
  expect(apart(chosen({ oneWhite }))).toEqual(['white chalk', 'chalk white']);
  expect(apart(chosen({}))).toEqual([]);
  const held = chosen({ oneWhite, mustHold: ['chalk'] }).paints.map(({ pigment }) => pigment);
  expect(held).toContain('chalk');
  expect(held).not.toContain('white');
  expect(applyConstraints(invented, { oneWhite, mustHold: oneWhite }, 3)).toEqual({
    ok: false,
    fault: { code: 'wanted-apart', pigments: oneWhite, by: 'oneWhite' },
  });
});

test('a pair that is kept apart is kept apart both ways round', () => {
  expect(apart(chosen({ apart: [['red', 'green']] }))).toEqual(['red green', 'green red']);
});
