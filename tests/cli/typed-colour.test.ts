import { expect, test } from 'vitest';
import { targetsOf } from '../../src/cli/target-options.ts';

const lab = (value: string) => targetsOf({ name: 'lab', value });

// By design: L from 0 to 100, a and b from −160 to 160; anything else is refused with a sentence.
test.each(['0,0,0', '100,0,0', '62,18,-34', '50,160,-160'])('%s is a colour', async (typed) => {
  expect(await lab(typed)).toEqual([typed.split(',').map(Number)]);
});

test.each(['101,0,0', '-1,0,0', '160,18,34', '50,161,0', '50,0,-161'])(
  '%s is no colour of a surface',
  async (typed) => {
    await expect(lab(typed)).rejects.toThrow(/is no colour of a surface\. L goes from 0 to 100/);
  },
);
