import { expect, test } from 'vitest';
import { type Lab, labOfLCh } from '../../src/colour/lab.ts';
import { PERIOD_PAIRS, periodOf } from '../../src/harmony/period-practice.ts';
import { describeShared, readShared } from '../shared.ts';

/** A colour that is what each word of the table says, by the sheet's hue bands; and colours that are not. */
const SAMPLES: Record<string, readonly Lab[]> = {
  any: [labOfLCh(50, 3, 0), labOfLCh(60, 40, 150), labOfLCh(45, 60, 300), labOfLCh(60, 65, 90)],
  white: [
    [93, -2, 6],
    [85, 0, 0],
  ],
  black: [
    [20, 1, 1],
    [24, 0, -2],
  ],
  brown: [labOfLCh(35, 20, 60), labOfLCh(45, 35, 75)],
  'earth red': [labOfLCh(38, 32, 30), labOfLCh(52, 45, 50)],
  'earth yellow': [labOfLCh(60, 50, 72), labOfLCh(72, 40, 85)],
  'any other hue': [
    labOfLCh(45, 60, 30),
    labOfLCh(60, 40, 150),
    labOfLCh(45, 40, 260),
    labOfLCh(40, 30, 320),
    labOfLCh(75, 20, 5),
  ],
  blue: [labOfLCh(45, 40, 260), labOfLCh(60, 30, 215)],
  green: [labOfLCh(50, 40, 150), labOfLCh(60, 25, 120)],
  orange: [labOfLCh(65, 70, 55)],
  pink: [labOfLCh(72, 30, 0), labOfLCh(66, 40, 350)],
  purple: [labOfLCh(45, 35, 315)],
  red: [labOfLCh(48, 60, 30), labOfLCh(45, 55, 10)],
  yellow: [labOfLCh(78, 60, 90)],
  'pale yellow': [labOfLCh(85, 25, 95)],
  'pale green': [labOfLCh(78, 20, 150)],
  'lavender (pale)': [labOfLCh(75, 18, 310)],
  'grey-violet (dark)': [labOfLCh(35, 12, 310), labOfLCh(30, 15, 290)],
  'light of one family': [labOfLCh(80, 50, 95)],
  'dark of another': [labOfLCh(30, 35, 315)],
};

interface Printed {
  readonly pair: readonly [string, string];
  readonly held: string;
  readonly support: string;
}

// pigment-facts, section 7.1: Alberti 1435 section 48 and Leonardo's Treatise where named, else common
// practice; every row as printed there.
describeShared('the pairs of period practice', () => {
  const printed: Printed[] = readShared('reference/pigment-facts.md')
    .split('### 7.1')[1]!
    .split('### 7.2')[0]!
    .split('\n')
    .filter((line) => line.startsWith('| ') && !line.startsWith('| pair'))
    .map((line) => {
      const [pair, held, support] = line
        .split('|')
        .slice(1)
        .map((cell) => cell.trim());
      const [one, other] = pair!.split(' - ');
      return { pair: [one!, other!], held: held!, support: support! };
    });

  test('our table has every row, and no other', () => {
    const key = ({ pair }: { pair: readonly string[] }) => pair.toSorted().join(' - ');
    expect(printed.length).toBe(20);
    expect(PERIOD_PAIRS.map(key).toSorted()).toEqual(printed.map(key).toSorted());
  });

  test.each(printed)('$pair: $held', ({ pair, held, support }) => {
    for (const x of SAMPLES[pair[0]]!)
      for (const y of SAMPLES[pair[1]]!) {
        for (const rows of [periodOf(x, y), periodOf(y, x)]) {
          const row = rows.find((one) => one.pair.every((word) => pair.includes(word)));
          const written =
            held === 'held' && support === 'low weight' ? 'held, single report' : held;
          expect(row?.held).toBe(written);
          for (const who of ['Alberti', 'Leonardo'])
            expect(row?.source?.includes(who) ?? false).toBe(support.includes(who));
          expect(row?.status).toBe(support.includes('*seen*') ? 'seen' : 'common practice');
          // What names the very pair comes before what speaks of many, and none contradicts it.
          if (!/any|of one/.test(pair[0])) expect(rows[0]!.held).toBe(row!.held);
        }
      }
  });

  test('practice was silent on the rest', () => {
    expect(periodOf(labOfLCh(50, 45, 55), labOfLCh(50, 40, 260))).toEqual([]);
    expect(periodOf([50, 0, 0], [20, 0, 0])).toEqual([]);
  });
});
