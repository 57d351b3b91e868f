import { expect, test } from 'vitest';
import { changed, type Mutant, type Report, verdictOf } from './mutant.ts';

const mutant: Mutant = {
  breaks: 'two is three',
  file: 'two.ts',
  before: 'two = 2',
  after: 'two = 3',
  caughtBy: [],
};

test('a change is made where its text stands once, and nowhere else', () => {
  expect(changed('one = 1; two = 2; three = 3;', mutant)).toBe('one = 1; two = 3; three = 3;');
  expect(changed('one = 1;', mutant)).toBeNull();
  expect(changed('two = 2; two = 2;', mutant)).toBeNull();
  expect(changed('aaa', { ...mutant, before: 'aa', after: 'b' })).toBeNull();
});

const file = (status: string, ...tests: string[]): Report['testResults'][number] => ({
  name: 'two.test.ts',
  status,
  message: status === 'failed' ? 'Unexpected token\nat two.ts' : '',
  assertionResults: tests.map((each, i) => ({ status: each, fullName: `test ${i}` })),
});

test.each<[string, Report['testResults'], ReturnType<typeof verdictOf>]>([
  [
    'a failed test',
    [file('passed', 'passed'), file('failed', 'passed', 'failed')],
    { as: 'caught', by: 'test 1' },
  ],
  ['no failed test', [file('passed', 'passed', 'skipped')], { as: 'survived' }],
  ['a file that cannot be read', [file('failed')], { as: 'not run', why: 'Unexpected token' }],
  [
    'a file that cannot be read beside one that can',
    [file('passed', 'passed'), file('failed')],
    { as: 'not run', why: 'Unexpected token' },
  ],
  ['skipped tests alone', [file('passed', 'skipped')], { as: 'not run', why: 'no test ran' }],
  ['no file at all', [], { as: 'not run', why: 'no test ran' }],
])('the verdict on %s', (_, testResults, verdict) => {
  expect(verdictOf({ testResults })).toEqual(verdict);
});
