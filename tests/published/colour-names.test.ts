import { expect, test } from 'vitest';
import { nameOf } from '../../src/colour/colour-name.ts';
import { type HueFamily, namedHueOf } from '../../src/colour/hue-family.ts';
import type { Lab } from '../../src/colour/lab.ts';
import { describeShared } from '../shared.ts';
import { readMunsell } from './munsell.ts';

/**
 * Which of our families may stand for a level-2 name of ISCC-NBS. The first is the one to expect;
 * the others are near synonyms that share a border with it.
 */
const MAY_BE: Record<string, readonly HueFamily[]> = {
  pink: ['pink'],
  red: ['red'],
  orange: ['orange'],
  brown: ['brown'],
  yellow: ['yellow'],
  olive: ['olive'],
  'yellow green': ['green'],
  green: ['green'],
  blue: ['blue'],
  purple: ['purple'],
  white: ['white'],
  gray: ['grey'],
  black: ['black'],
  'yellowish pink': ['pink', 'orange'],
  'purplish pink': ['pink', 'purple'],
  'purplish red': ['red', 'purple'],
  'reddish orange': ['orange', 'red'],
  'reddish brown': ['brown', 'red'],
  'yellowish brown': ['brown'],
  'olive brown': ['brown', 'olive'],
  'orange yellow': ['yellow', 'orange'],
  'greenish yellow': ['yellow'],
  'olive green': ['olive', 'green'],
  'yellowish green': ['green'],
  'bluish green': ['green'],
  'greenish blue': ['blue'],
  'purplish blue': ['blue'],
  violet: ['violet', 'purple'],
  'reddish purple': ['purple'],
};

// K. L. Kelly, D. B. Judd, Color: Universal Language and Dictionary of Names, NBS Special
// Publication 440 (1976); centroids: K. L. Kelly, J. Res. NBS 61 (1958) 427.
describeShared('hue families against ISCC-NBS', () => {
  const munsell = readMunsell();
  const judge = (
    colours: readonly { readonly lab: Lab; readonly level2: string; readonly level3: string }[],
  ) => {
    const wrong = colours.filter(
      ({ lab, level2 }) => !MAY_BE[level2]!.includes(namedHueOf(lab).family),
    );
    const first = colours.filter(
      ({ lab, level2 }) => MAY_BE[level2]![0] === namedHueOf(lab).family,
    );
    return {
      wrong,
      share: 1 - wrong.length / colours.length,
      exact: first.length / colours.length,
    };
  };

  test('the 267 centroids', () => {
    const colours = munsell.centroids.map((c) => ({ ...c, lab: munsell.labOfNotation(c)! }));
    const { wrong, share, exact } = judge(colours);
    console.info(
      `centroids: ${(100 * share).toFixed(1)} % agree, ${(100 * exact).toFixed(1)} % without synonyms`,
    );
    for (const { level3, lab } of wrong)
      console.info(`  ${level3}: ${nameOf(lab)} (${lab.map((v) => v.toFixed(0)).join(' ')})`);
    expect(share).toBeGreaterThanOrEqual(0.9);
  });

  test('no modifier says the opposite', () => {
    const opposite: readonly (readonly [theirs: RegExp, ours: RegExp])[] = [
      [/^(light|very light|pale|very pale|brilliant)\b/, /^(dark|deep|blackish)\b/],
      [/^(dark|very dark|deep|very deep|blackish)\b/, /^(light|pale)\b/],
      [/^(vivid|strong)\b/, /^(dull|pale|dark|blackish)\b/],
      [/^(grayish|pale|light grayish|dark grayish)\b/, /^(bright|rich|deep)\b/],
    ];
    const against = munsell.centroids.filter((centroid) => {
      const ours = nameOf(munsell.labOfNotation(centroid)!);
      return opposite.some(([theirs, word]) => theirs.test(centroid.level3) && word.test(ours));
    });
    expect(against.map((c) => `${c.level3}: ${nameOf(munsell.labOfNotation(c)!)}`)).toEqual([]);
  });

  test('every observed colour of the renotation', () => {
    const colours = munsell.realColours().flatMap((notation) => {
      const lab = munsell.labOfNotation(notation);
      return lab ? [{ ...munsell.nameOfNotation(notation), lab }] : [];
    });
    const { wrong, share, exact } = judge(colours);
    console.info(
      `${colours.length} colours: ${(100 * share).toFixed(1)} % agree, ${(100 * exact).toFixed(1)} % without synonyms`,
    );
    const count = new Map<string, number>();
    for (const { level2, lab } of wrong) {
      const key = `${level2}: ${namedHueOf(lab).word}`;
      count.set(key, (count.get(key) ?? 0) + 1);
    }
    const worst = [...count].sort((x, y) => y[1] - x[1]).slice(0, 40);
    console.info(worst.map(([key, n]) => `  ${n} ${key}`).join('\n'));
    expect(share).toBeGreaterThanOrEqual(0.9);
  });
});
