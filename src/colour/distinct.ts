import { type Steps, stepsBetween, turnWords } from './axes.ts';
import type { Lab } from './lab.ts';
import { joined, type NameParts, namePartsOf } from './name.ts';
import { oklabHueDeg, oklabOfLab } from './oklab.ts';

interface Named {
  readonly at: number;
  readonly lab: Lab;
  readonly parts: NameParts;
}

/**
 * Names for the colours of one harmony, all different, in the same order. Where two would be called
 * alike, what sets them apart is added: "lighter", "redder", "duller".
 */
export function namesOf(labs: readonly Lab[]): string[] {
  const names = new Array<string>(labs.length).fill('');
  const alike = new Map<string, Named[]>();
  labs.forEach((lab, at) => {
    const parts = namePartsOf(lab);
    const name = joined(parts.modifier, parts.word);
    alike.set(name, [...(alike.get(name) ?? []), { at, lab, parts }]);
  });
  for (const group of alike.values())
    for (const [at, name] of toldApart(group, '')) names[at] = name;
  return withoutRepeats(names);
}

const AXES = ['value', 'hue', 'chroma'] as const;
type Axis = (typeof AXES)[number];

/** Under this many steps a word would claim what no eye sees. */
const SEEN = 1;

function toldApart(group: readonly Named[], added: string): [number, string][] {
  const plain = ({ at, parts }: Named): [number, string] => [
    at,
    joined(added, parts.modifier, parts.word),
  ];
  if (group.length === 1) return [plain(group[0]!)];
  const along = AXES.map((axis) => ordered(group, axis)).sort((x, y) => y.widest - x.widest)[0]!;
  if (along.widest < SEEN) return group.map(plain);
  const { axis, row, gaps, cut } = along;
  if (gaps.every((gap) => gap >= SEEN)) {
    const words = ladder(row, axis, added);
    if (words) return row.map(({ at }, i) => [at, words[i]!]);
  }
  const [low, high] = axisWords(row, axis);
  return [
    ...toldApart(row.slice(0, cut), joined(added, low)),
    ...toldApart(row.slice(cut), joined(added, high)),
  ];
}

/** The group from low to high along an axis, with the gaps between neighbours. */
function ordered(group: readonly Named[], axis: Axis) {
  const from = (named: Named): number => step(group[0]!, named, axis);
  const row = group.toSorted((x, y) => from(x) - from(y));
  const gaps = row.slice(1).map((named, i) => step(row[i]!, named, axis));
  const widest = Math.max(...gaps);
  return { axis, row, gaps, widest, cut: gaps.indexOf(widest) + 1 };
}

const step = (from: Named, to: Named, axis: Axis): number =>
  stepsBetween(from.lab, to.lab)[axis satisfies keyof Steps];

function axisWords(row: readonly Named[], axis: Axis): readonly [low: string, high: string] {
  if (axis === 'value') return ['darker', 'lighter'];
  if (axis === 'chroma') return ['duller', 'brighter'];
  return turnWords(oklabHueDeg(oklabOfLab(row[0]!.lab)) ?? 0);
}

/** Two or three names along one axis, low to high; null when there are more. */
function ladder(row: readonly Named[], axis: Axis, added: string): readonly string[] | null {
  if (row.length > 3) return null;
  const { modifier, word } = row[0]!.parts;
  const [low, high] = axisWords(row, axis);
  const stronger = joined(added, 'very', modifier, word);
  const same = joined(added, modifier, word);
  // "very light blue" beside "light blue", not "lighter light blue".
  if (row.length === 2 && axis === 'value') {
    if (modifier === 'light' || modifier === 'pale') return [same, stronger];
    if (modifier === 'deep' || modifier === 'dark') return [stronger, same];
  }
  if (row.length === 2 && axis === 'chroma') {
    if (modifier === 'bright') return [same, stronger];
    if (modifier === 'dull') return [stronger, same];
  }
  const lower = joined(added, low, modifier, word);
  const higher = joined(added, high, modifier, word);
  return row.length === 2 ? [lower, higher] : [lower, same, higher];
}

const ORDINALS = ['', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh'];

/** Colours that no eye tells apart are counted in words. */
function withoutRepeats(names: readonly string[]): string[] {
  const seen = new Map<string, number>();
  return names.map((name) => {
    const before = seen.get(name) ?? 0;
    seen.set(name, before + 1);
    return before === 0 ? name : joined(ORDINALS[before] ?? `${before + 1}th`, name);
  });
}
