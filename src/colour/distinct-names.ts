import { type Modifier, type NameParts, namePartsOf, phraseOf } from './colour-name.ts';
import { type ColourSteps, stepsBetween, turnWords } from './difference-components.ts';
import type { Lab } from './lab.ts';
import { oklabHueDeg, oklabOfLab } from './oklab.ts';

interface Named {
  readonly at: number;
  readonly lab: Lab;
  readonly parts: NameParts;
}

/**
 * Distinct names for the colours of one harmony (CIELAB, D65), in the same order. Colours that
 * would share a name get a comparative: "lighter", "redder", "duller".
 */
export function distinctNamesOf(labs: readonly Lab[]): string[] {
  const names = new Array<string>(labs.length).fill('');
  const alike = new Map<string, Named[]>();
  labs.forEach((lab, at) => {
    const parts = namePartsOf(lab);
    const name = phraseOf(parts.modifier, parts.word);
    alike.set(name, [...(alike.get(name) ?? []), { at, lab, parts }]);
  });
  for (const group of alike.values())
    for (const [at, name] of separatedNames(group, '', axesOf(group))) names[at] = name;
  return withoutRepeats(names);
}

const AXES = ['value', 'hue', 'chroma'] as const satisfies readonly (keyof ColourSteps)[];
type Axis = (typeof AXES)[number];

/** Greys of one name differ in value alone: a different tint already has a different name. */
const axesOf = ([first]: readonly Named[]): readonly Axis[] =>
  ['grey', 'white', 'black'].includes(first!.parts.family) ? ['value'] : AXES;

/** Least difference in {@link stepsBetween} steps that is visible enough for a word. */
const LEAST_VISIBLE_STEPS = 1;

/**
 * Distinct names for colours that share one: along a single axis if that separates all of them,
 * else split at the widest gap and separated further along the remaining axes.
 * @param added comparatives from earlier splits
 * @returns pairs of index and name
 */
function separatedNames(
  group: readonly Named[],
  added: string,
  axes: readonly Axis[],
): [number, string][] {
  const { modifier, word } = group[0]!.parts;
  const alike = () =>
    group.map(({ at }): [number, string] => [at, phraseOf(added, modifier, word)]);
  if (group.length === 1) return alike();
  const rows = axes
    .map((axis) => ordered(group, axis))
    .filter(({ widest }) => widest >= LEAST_VISIBLE_STEPS)
    .sort((x, y) => y.narrowest - x.narrowest);
  for (const { axis, row, narrowest } of rows) {
    const words = narrowest >= LEAST_VISIBLE_STEPS && ladder(row, axis, added);
    if (words) return row.map(({ at }, i) => [at, words[i]!]);
  }
  const widest = rows.sort((x, y) => y.widest - x.widest)[0];
  if (!widest) return alike();
  const { axis, row, cut } = widest;
  const [low, high] = axisWords(row, axis);
  const left = axes.filter((other) => other !== axis);
  return [
    ...separatedNames(row.slice(0, cut), phraseOf(added, low), left),
    ...separatedNames(row.slice(cut), phraseOf(added, high), left),
  ];
}

/** Sorts the group from low to high along an axis and measures the gaps between neighbours. */
function ordered(group: readonly Named[], axis: Axis) {
  const from = (named: Named): number => step(group[0]!, named, axis);
  const row = group.toSorted((x, y) => from(x) - from(y));
  const gaps = row.slice(1).map((named, i) => step(row[i]!, named, axis));
  const widest = Math.max(...gaps);
  return { axis, row, narrowest: Math.min(...gaps), widest, cut: gaps.indexOf(widest) + 1 };
}

const step = (from: Named, to: Named, axis: Axis): number => stepsBetween(from.lab, to.lab)[axis];

function axisWords(row: readonly Named[], axis: Axis): readonly [low: string, high: string] {
  if (axis === 'value') return ['darker', 'lighter'];
  if (axis === 'chroma') return ['duller', 'brighter'];
  return turnWords(oklabHueDeg(oklabOfLab(row[0]!.lab)) ?? 0);
}

/** Modifiers that already name the high or the low end of an axis. */
const POINTING: Record<
  Axis,
  { readonly high: readonly Modifier[]; readonly low: readonly Modifier[] }
> = {
  value: { high: ['light', 'pale'], low: ['deep', 'dark'] },
  chroma: { high: ['bright', 'rich'], low: ['dull'] },
  hue: { high: [], low: [] },
};

const superlative = (comparative: string): string => comparative.replace(/r$/, 'st');

/** Two to five names along one axis, low to high; null for more than five. */
function ladder(row: readonly Named[], axis: Axis, added: string): readonly string[] | null {
  const { modifier, word } = row[0]!.parts;
  const named = (...words: string[]) => phraseOf(added, ...words, word);
  const ends = POINTING[axis];
  // "light blue, very light blue" rather than "darker light blue, lighter light blue".
  if (row.length <= 3 && (ends.high.includes(modifier) || ends.low.includes(modifier))) {
    const rising = [
      named(modifier),
      named('very', modifier),
      named(modifier.replace(/e?$/, 'est')),
    ];
    const used = rising.slice(0, row.length);
    return ends.high.includes(modifier) ? used : used.reverse();
  }
  const [low, high] = axisWords(row, axis);
  const words = {
    2: [low, high],
    3: [low, '', high],
    4: [superlative(low), low, high, superlative(high)],
    5: [superlative(low), low, '', high, superlative(high)],
  }[row.length];
  return words?.map((comparative) => named(comparative, modifier)) ?? null;
}

const ORDINALS = ['', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh'];

/** Numbers the names that are still equal: "second …", "third …". */
function withoutRepeats(names: readonly string[]): string[] {
  const seen = new Map<string, number>();
  return names.map((name) => {
    const before = seen.get(name) ?? 0;
    seen.set(name, before + 1);
    return before === 0 ? name : phraseOf(ORDINALS[before] ?? `${before + 1}th`, name);
  });
}
