import type { LeftoverBody, PassageBody, PileRecord, SheetBody } from '../../book/palette.ts';
import type { Entry } from '../../book/record.ts';
import { laidOf } from '../../mixture/laid.ts';
import type { Mixture } from '../../mixture/mixture.ts';
import { predict } from '../../mixture/predict.ts';
import { FILM_WORDS, type FilmWord } from '../../palette/film.ts';
import type { Kept, Leftover } from '../../palette/leftover.ts';
import type { Layer, Passage, PassagePile } from '../../palette/passage.ts';
import type { Day, PilePlan } from '../../palette/plan.ts';
import type { Shelf } from '../../pigment/shelf.ts';

/** How a film was called in the book; whatever is not a word of ours is body colour. */
export const filmOf = (word: string | undefined): FilmWord =>
  FILM_WORDS.find((film) => film === word) ?? 'body colour';

/** Names a pile of a passage on the day's palettes. */
export const pileKey = (passage: string, pile: PileRecord, at: number): string =>
  `${passage}:${pile.id ?? at}`;

/** A passage as the book has it, for planning. */
export const passageOf = ({ id, body }: Entry<'passage'>): Passage => ({
  id,
  name: body.name,
  ...(body.canvas ? { canvas: body.canvas } : {}),
  piles: body.piles.map((pile, at) => pileOf(pile, pileKey(id, pile, at))),
  layers: body.coats.map(layerOf),
});

function pileOf(pile: PileRecord, id: string): PassagePile {
  const { name, mixture, share, areaCm2 = 0, filmMm, coats, spareOil, tooth, waste } = pile;
  return {
    ...laidOf(mixture),
    id,
    name,
    cover: share === undefined ? { cm2: areaCm2 } : { share },
    film: filmOf(pile.film),
    ...(filmMm === undefined ? {} : { filmUm: Math.round(filmMm * 1e6) / 1000 }),
    ...(coats === undefined ? {} : { coats }),
    ...(spareOil === undefined ? {} : { spareOil }),
    ...(tooth === undefined ? {} : { tooth }),
    ...(waste === undefined ? {} : { waste }),
  };
}

type Coat = PassageBody['coats'][number];
/** A coat; where an older book kept pigments alone, equal parts of them. */
const layerOf = ({ date, film, filmMm, pigments, extraOil, parts, felt }: Coat): Layer => ({
  date: date.slice(0, 10),
  film: filmOf(film),
  parts: parts ?? pigments.map((pigment) => ({ pigment, parts: 1 })),
  ...(filmMm === undefined ? {} : { filmUm: filmMm * 1000 }),
  ...(extraOil === undefined ? {} : { spareOil: extraOil }),
  ...(felt ? { felt } : {}),
});

/** A coat as the book keeps it. */
export const coatOf = ({ date, film, filmUm, spareOil, parts }: Layer): Coat => ({
  date,
  film,
  pigments: parts.map(({ pigment }) => pigment),
  parts,
  ...(filmUm === undefined ? {} : { filmMm: filmUm / 1000 }),
  ...(spareOil === undefined ? {} : { extraOil: spareOil }),
});

const KEPT: readonly Kept[] = ['under film', 'in a tube', 'under water', 'open'];

export const leftoverOf = ({ id, body }: Entry<'leftover'>): Leftover => ({
  id,
  name: body.name,
  parts: body.mixture.parts,
  lab: body.mixture.partsLab,
  cm3: body.cm3,
  kept: KEPT.find((way) => way === body.kept) ?? 'open',
  date: body.date.slice(0, 10),
  ...(body.skinned ? { skinned: true } : {}),
});

/** A leftover as the book keeps it: its parts are shares of the heap. */
export const leftoverBodyOf = ({ name, parts, lab, cm3, kept, date }: Leftover): LeftoverBody => ({
  name,
  note: '',
  date,
  mixture: mixtureOf(parts, lab ?? [50, 0, 0]),
  cm3,
  kept,
});

/** Parts that were set by hand as a mixture: it is its own target. */
export function mixtureOf(parts: Mixture['parts'], lab: Mixture['lab']): Mixture {
  const total = parts.reduce((sum, one) => sum + one.parts, 0);
  return {
    recipe: parts.map(({ pigment, parts: count }) => ({ pigment, share: count / total })),
    lab,
    deltaE00: 0,
    reachable: true,
    parts,
    partsLab: lab,
    partsDeltaE00: 0,
  };
}

/** A mixture by hand, with the colour that the shelf predicts; middle grey where it does not know one. */
export function handMixture(parts: Mixture['parts'], shelf: Shelf): Mixture {
  const known = parts.every(({ pigment }) => shelf.paints.some((one) => one.pigment === pigment));
  const amounts = parts.map(({ pigment, parts: amount }) => ({ pigment, amount }));
  return mixtureOf(parts, known ? predict(amounts, shelf) : [50, 0, 0]);
}

/** The pile of a passage that was planned. */
export const pileAt = (passage: Entry<'passage'>, plan: Pick<PilePlan, 'key'>): number =>
  passage.body.piles.findIndex((pile, at) => pileKey(passage.id, pile, at) === plan.key);

/** A pile without some of what it need not say, so that what is usual holds again. */
export const without = (
  pile: PileRecord,
  ...fields: readonly ('areaCm2' | 'share' | 'filmMm' | 'spareOil')[]
): PileRecord =>
  Object.fromEntries(
    Object.entries(pile).filter(([field]) => !fields.some((one) => one === field)),
  ) as unknown as PileRecord;

/** A book's sheet holds so many amounts. */
const MOST_AMOUNTS = 200;

/** What a day takes of which lot, as its sheet keeps it. */
export const amountsOf = (day: Day): SheetBody['amounts'] =>
  day.palettes
    .flatMap(({ pigments }) =>
      pigments.flatMap(({ key, supply }) =>
        supply.draws.map(({ entry, cm3, weighed }) => ({
          pigment: key,
          lot: entry?.lot ?? '',
          cm3,
          ...(weighed.as === 'powder' && weighed.pigmentGrams !== null
            ? { grams: weighed.pigmentGrams }
            : {}),
        })),
      ),
    )
    .slice(0, MOST_AMOUNTS);
