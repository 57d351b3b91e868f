import fc from 'fast-check';
import { chroma, type Lab } from '../../src/colour/lab.ts';
import type { ClothRequest } from '../../src/drapery/cloth-types.ts';
import { FABRICS } from '../../src/drapery/fabric.ts';
import type { Shelf } from '../../src/pigment/shelf.ts';
import { evenly } from '../evenly.ts';
import { pilesOf } from '../harmony/piles.ts';

/** Colours of the whole reach, and colours beyond it that photographs have. */
export const coloursFor = (shelf: Shelf): fc.Arbitrary<Lab> =>
  fc.oneof(
    { weight: 3, arbitrary: pilesOf(shelf).map(({ lab }) => lab) },
    {
      weight: 1,
      arbitrary: fc
        .record({
          L: evenly(5, 98),
          C: evenly(0, 90),
          h: evenly(0, 2 * Math.PI),
        })
        .map(({ L, C, h }): Lab => [L, C * Math.cos(h), C * Math.sin(h)]),
    },
  );

const base = (lab: Lab) =>
  fc.record({ stuff: fc.constantFrom(...FABRICS), even: fc.boolean() }).map((more) => ({
    name: 'cloth',
    lab,
    ...more,
  }));

export const deepened = (shelf: Shelf): fc.Arbitrary<ClothRequest> =>
  fc
    .tuple(coloursFor(shelf), fc.option(coloursFor(shelf), { nil: undefined }))
    .chain(([lab, neighbour]) =>
      base(lab).map((wish) => ({
        ...wish,
        way: 'deepened in its own hue' as const,
        ...(neighbour ? { neighbour } : {}),
      })),
    );

export const shot = (shelf: Shelf): fc.Arbitrary<ClothRequest> =>
  fc
    .tuple(coloursFor(shelf), coloursFor(shelf))
    .filter(([lab, shadows]) => lab[0] > 40 && chroma(shadows) > 10)
    .chain(([lab, shadows]) =>
      base(lab).map((wish) => ({ ...wish, way: 'shot cloth' as const, shadows })),
    );

export const nature = (shelf: Shelf): fc.Arbitrary<ClothRequest> =>
  fc
    .tuple(...Array.from({ length: 6 }, () => coloursFor(shelf)))
    .map((ladder) => ladder.toSorted((p, q) => q[0] - p[0]))
    .chain((ladder) =>
      base(ladder[2]!).map((wish) => ({ ...wish, way: 'as nature had it' as const, ladder })),
    );

export const glazed = (shelf: Shelf, glaze: string): fc.Arbitrary<ClothRequest> =>
  coloursFor(shelf)
    .filter((lab) => chroma(lab) > 12)
    .chain((lab) =>
      base(lab).map((wish) => ({ ...wish, way: 'underpaint and glaze' as const, glaze })),
    );
