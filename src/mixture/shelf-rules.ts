import { pigmentOfPaint } from '../pigment/mixing-shelf.ts';
import { type HazardLevel, pairWarningOf, pigmentOf } from '../pigment/pigment-facts.ts';
import type { Shelf } from '../pigment/shelf.ts';

type Paints = Pick<Shelf, 'paints'>;

/** Pairs of a shelf that must not be mixed, by our pigment facts. */
export function avoidedPairs({ paints }: Paints): [string, string][] {
  return paints.flatMap((a, i) =>
    paints
      .slice(i + 1)
      .filter(
        (b) =>
          pairWarningOf(pigmentOfPaint(a.pigment), pigmentOfPaint(b.pigment))?.severity === 'avoid',
      )
      .map((b): [string, string] => [a.pigment, b.pigment]),
  );
}

/** Blacks or whites of a shelf: by our pigment facts, else by name. */
export function ofFamily({ paints }: Paints, family: 'black' | 'white'): string[] {
  const says = new RegExp(`\\b${family}\\b`, 'i');
  return paints
    .filter(({ pigment, label }) => {
      const facts = pigmentOf(pigmentOfPaint(pigment));
      return facts ? facts.family === family : says.test(`${pigment} ${label}`);
    })
    .map((p) => p.pigment);
}

const LEVELS: readonly HazardLevel[] = ['low', 'caution', 'toxic', 'very_toxic'];

/** Pigments of a shelf at or above a hazard level; pigments without facts are not included. */
export function hazardous({ paints }: Paints, from: HazardLevel): string[] {
  return paints
    .filter(({ pigment }) => {
      const facts = pigmentOf(pigmentOfPaint(pigment));
      return facts !== null && LEVELS.indexOf(facts.hazard.level) >= LEVELS.indexOf(from);
    })
    .map((p) => p.pigment);
}
