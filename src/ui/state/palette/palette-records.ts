import type {
  LeftoverBody,
  PassageBody,
  PileRecord,
  SheetBody,
} from '../../../book/schema/palette.ts';
import type { Entry } from '../../../book/schema/record.ts';
import type { Mixture } from '../../../mixture/mixture-types.ts';
import { pilePartsOf } from '../../../mixture/pile-parts.ts';
import { predictColour } from '../../../mixture/predict.ts';
import type { Day } from '../../../palette/day-plan.ts';
import { FILM_WORDS, type FilmWord } from '../../../palette/film-kinds.ts';
import type { Leftover, StorageWay } from '../../../palette/leftovers.ts';
import type { Layer, Passage, PassagePile } from '../../../palette/passage.ts';
import type { Shelf } from '../../../pigment/shelf.ts';

/** The film word of a stored pile or coat; body colour for anything unknown. */
export const filmOf = (word: string | undefined): FilmWord =>
  FILM_WORDS.find((film) => film === word) ?? 'body colour';

/** Key of a passage's pile in the day's plan. */
const pileKey = (passage: string, pile: PileRecord, at: number): string =>
  `${passage}:${pile.id ?? at}`;

/** A stored passage in the form that planning needs. */
export const passageFromEntry = ({ id, body }: Entry<'passage'>): Passage => ({
  id,
  name: body.name,
  ...(body.canvas ? { canvas: body.canvas } : {}),
  piles: body.piles.map((pile, at) => pileFromRecord(pile, pileKey(id, pile, at))),
  layers: body.coats.map(layerFromCoat),
});

function pileFromRecord(pile: PileRecord, id: string): PassagePile {
  const { name, mixture, share, areaCm2 = 0, filmMm, coats, spareOil, tooth, waste } = pile;
  return {
    ...pilePartsOf(mixture),
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
/** A stored coat as a layer. Older books stored only the pigments: take equal parts of them. */
const layerFromCoat = ({ date, film, filmMm, pigments, extraOil, parts, felt }: Coat): Layer => ({
  date: date.slice(0, 10),
  film: filmOf(film),
  parts: parts ?? pigments.map((pigment) => ({ pigment, parts: 1 })),
  ...(filmMm === undefined ? {} : { filmUm: filmMm * 1000 }),
  ...(extraOil === undefined ? {} : { spareOil: extraOil }),
  ...(felt ? { felt } : {}),
});

/** A layer in its stored form. */
export const coatFromLayer = ({ date, film, filmUm, spareOil, parts }: Layer): Coat => ({
  date,
  film,
  pigments: parts.map(({ pigment }) => pigment),
  parts,
  ...(filmUm === undefined ? {} : { filmMm: filmUm / 1000 }),
  ...(spareOil === undefined ? {} : { extraOil: spareOil }),
});

const STORAGE_WAYS: readonly StorageWay[] = ['under film', 'in a tube', 'under water', 'open'];

export const leftoverFromEntry = ({ id, body }: Entry<'leftover'>): Leftover => ({
  id,
  name: body.name,
  parts: body.mixture.parts,
  lab: body.mixture.partsLab,
  cm3: body.cm3,
  kept: STORAGE_WAYS.find((way) => way === body.kept) ?? 'open',
  date: body.date.slice(0, 10),
  ...(body.skinned ? { skinned: true } : {}),
});

/** A leftover in its stored form; its parts become shares of the heap. */
export const leftoverBodyOf = ({ name, parts, lab, cm3, kept, date }: Leftover): LeftoverBody => ({
  name,
  note: '',
  date,
  mixture: mixtureOfParts(parts, lab ?? [50, 0, 0]),
  cm3,
  kept,
});

/** A mixture from parts set by hand: its colour is its own target, so the difference is 0. */
function mixtureOfParts(parts: Mixture['parts'], lab: Mixture['lab']): Mixture {
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

/**
 * A mixture set by hand, with its predicted colour on this shelf; middle grey if a pigment is not
 * on it.
 */
export function manualMixture(parts: Mixture['parts'], shelf: Shelf): Mixture {
  const known = parts.every(({ pigment }) => shelf.paints.some((one) => one.pigment === pigment));
  const amounts = parts.map(({ pigment, parts: amount }) => ({ pigment, amount }));
  return mixtureOfParts(parts, known ? predictColour(amounts, shelf) : [50, 0, 0]);
}

/** A pile without these optional fields, so that the defaults apply again. */
export const omitPileFields = (
  pile: PileRecord,
  ...fields: readonly ('areaCm2' | 'share' | 'filmMm' | 'spareOil')[]
): PileRecord =>
  Object.fromEntries(
    Object.entries(pile).filter(([field]) => !fields.some((one) => one === field)),
  ) as unknown as PileRecord;

/** Most amounts that the book's schema allows in one sheet. */
const MOST_AMOUNTS = 200;

/** Amounts that a day takes from each lot, in their stored form: cm³, and grams for dry pigment. */
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
