import { expect, test } from 'vitest';
import { runCommand } from '../../src/cli/command.ts';
import { inThisThread } from '../../src/cli/gather.ts';
import { expectRefusal, kingcup, type Outcome } from './run.ts';

test.each(['--help', '-h', 'help', ''])('“kingcup %s” lists the verbs', async (typed) => {
  const { status, stdout, stderr } = await kingcup(...(typed === '' ? [] : [typed]));
  expect([status, stderr]).toEqual([0, '']);
  const verbs = [...stdout.matchAll(/^ {2}([a-z]+) +\S/gm)].map(([, verb]) => verb);
  expect(verbs).toEqual([
    ...['gather', 'mix', 'transpose', 'fewest', 'add', 'vary'],
    ...['drapery', 'palette', 'sheet', 'shelf'],
  ]);
});

test.each(['squint', 'toString', '__proto__'])('“%s” is no verb', async (verb) => {
  expectRefusal(await kingcup(verb), new RegExp(`no verb “${verb}”`));
});

test('a programmer’s mistake ends with 1 and a sentence, and passes no test as a refusal', async () => {
  const written = { stdout: '', stderr: '' };
  const status = await runCommand(['--help'], {
    out: () => {
      throw new TypeError('out of cheese');
    },
    err: (text) => {
      written.stderr += text;
    },
    openPool: inThisThread,
  });
  const broken: Outcome = { status, ...written };
  expect(broken).toEqual({
    status: 1,
    stdout: '',
    stderr: 'Kingcup stopped: out of cheese\n',
  });
  expect(() => expectRefusal(broken, /cheese/)).toThrow(/not refused but broken/);
  const later = { ...broken, stderr: `1 of 2: jay.jpg\n${broken.stderr}` };
  expect(() => expectRefusal(later, /cheese/)).toThrow(/not refused but broken/);
});
