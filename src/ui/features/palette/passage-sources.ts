import type { PileRecord } from '../../../book/schema/palette.ts';
import type { Entry } from '../../../book/schema/record.ts';
import type { Mixture } from '../../../mixture/mixture-types.ts';

/** An entry of the book that can supply the piles of a passage. */
export type PassageSource = Entry<'harmony'> | Entry<'drapery'> | Entry<'formula'>;

/** Area of a new pile, until the painter measures it. */
const AREA_CM2 = 100;

/**
 * The piles of an entry: one for each of its mixtures.
 *
 * @param newId gives each pile its id
 */
export function pilesOfSource(source: PassageSource, newId: () => string): readonly PileRecord[] {
  const pile = (name: string, mixture: Mixture, film: string, filmMm?: number): PileRecord => ({
    id: newId(),
    name: name.slice(0, 120),
    mixture,
    film,
    areaCm2: AREA_CM2,
    from: source.id,
    ...(filmMm === undefined ? {} : { filmMm }),
  });
  switch (source.kind) {
    case 'harmony':
      return source.body.colours.flatMap(({ name, mixture, answer }) => {
        const chosen = mixture ?? answer?.simplest;
        return chosen ? [pile(name, chosen, 'body colour')] : [];
      });
    case 'drapery':
      return source.body.garments.flatMap((garment) =>
        garment.folds.flatMap(({ step, mixture }) =>
          mixture ? [pile(`${garment.name}, ${step}`, mixture, 'body colour')] : [],
        ),
      );
    case 'formula':
      return source.body.passages.flatMap(({ name, layers }) =>
        layers.map(({ film, mixture, filmMm }) =>
          pile(layers.length > 1 ? `${name}, ${film}` : name, mixture, film, filmMm),
        ),
      );
  }
}

/** Renames piles whose name is already taken on the day's palettes, with a number. */
export function withUniqueNames(
  piles: readonly PileRecord[],
  taken: readonly string[],
): readonly PileRecord[] {
  const names = new Set(taken);
  return piles.map((pile) => {
    let name = pile.name;
    for (let n = 2; names.has(name); n++) name = `${pile.name} ${n}`;
    names.add(name);
    return { ...pile, name };
  });
}
