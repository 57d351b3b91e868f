import type { Entry } from '../../../book/schema/record.ts';
import { nameOf } from '../../../colour/describe-colour.ts';
import { spectrum } from '../../../colour/grid.ts';
import { type Lab, labOf } from '../../../colour/lab.ts';
import { cm3Words, gramsWords } from '../../../messages/amounts.ts';
import type { Mixture } from '../../../mixture/mixture-types.ts';
import { pilePartsOf } from '../../../mixture/pile-parts.ts';
import { recipeWords } from '../../components/drawn/alternative-text.ts';
import { formatCount, formatNumber } from '../../state/locale-format.ts';
import { shareWords } from '../../texts/shared-texts.ts';

/** One item of an entry: a colour with its mixture, or a pigment with its amount. */
export interface EntryItem {
  readonly name: string;
  readonly lab: Lab | null;
  readonly words: readonly string[];
}
/** Items under a heading, which is '' when the entry has only one group. */
export interface Group {
  readonly heading: string;
  readonly lines: readonly EntryItem[];
}

/**
 * Formats the contents of an entry as text for the screen, the card and the print.
 * @param label formats a pigment's name for the reader
 */
export function entryItems(entry: Entry, label: (pigment: string) => string): readonly Group[] {
  const recipe = (mixture: Mixture | undefined): string[] =>
    mixture ? [recipeWords(mixture, label)] : [];
  const mixed = (name: string, mixture: Mixture, words: readonly string[] = []): EntryItem => ({
    name,
    lab: pilePartsOf(mixture).lab,
    words: [...recipe(mixture), ...words],
  });
  switch (entry.kind) {
    case 'specimen':
      return one(
        (entry.body.gathered?.colours ?? []).map(({ name, lab, share }) => ({
          name,
          lab,
          words: [shareWords(share)],
        })),
      );
    case 'harmony':
      return one(
        entry.body.colours.map(({ name, lab, share, altered, mixture }) => ({
          name,
          lab,
          words: [shareWords(share), ...present(altered), ...recipe(mixture)],
        })),
      );
    case 'drapery':
      return entry.body.garments.map(({ name, way, stuff, folds }) => ({
        heading: [name, stuff, way].filter(Boolean).join(', '),
        lines: folds.map(({ step, lab, mixture }) => ({
          name: step,
          lab,
          words: [nameOf(lab), ...recipe(mixture)],
        })),
      }));
    case 'formula':
      return entry.body.passages.map(({ name, layers }) => ({
        heading: name,
        lines: layers.map(({ film, mixture, filmMm, note }) =>
          mixed(film, mixture, [
            ...(filmMm === undefined ? [] : [`${formatCount(filmMm * 1000)} µm`]),
            ...present(note),
          ]),
        ),
      }));
    case 'passage':
    case 'palette':
      return one(
        entry.body.piles.map(({ name, mixture, cm3 }) =>
          mixed(name, mixture, cm3 === undefined ? [] : [volume(cm3)]),
        ),
      );
    case 'sheet':
      return one(
        entry.body.amounts.map(({ pigment, lot, grams, cm3 }) => ({
          name: label(pigment),
          lab: null,
          words: [
            ...present(lot),
            ...(grams === undefined ? [] : [gramsWords(grams, false, formatNumber)]),
            ...(cm3 === undefined ? [] : [volume(cm3)]),
          ],
        })),
      );
    case 'shelf':
      return one(
        entry.body.paints.map(({ pigment, label: called, grade, lot }) => ({
          name: called || label(pigment),
          lab: null,
          words: [...present(grade), ...present(lot)],
        })),
      );
    case 'swatch': {
      const { pigment, lot, lab } = entry.body;
      return one([{ name: label(pigment), lab, words: [nameOf(lab), ...present(lot)] }]);
    }
    case 'card': {
      const { plan, reading } = entry.body;
      return one(
        plan.places
          .filter(({ kind }) => kind === 'paint')
          .map(({ number, label: called, measure }) => ({
            name: `${number}  ${called}`,
            lab: reading?.places.find((place) => place.number === number)?.lab ?? null,
            words: present(measure),
          })),
      );
    }
    case 'curves':
      return one(
        entry.body.samples.map(({ name, reflectance }) => {
          const lab = labOf(spectrum(reflectance));
          return { name, lab, words: [nameOf(lab)] };
        }),
      );
    case 'pile': {
      const { name, seen, known, mixture } = entry.body;
      return one([{ name, lab: seen, words: [known, ...recipe(mixture)] }]);
    }
    case 'leftover': {
      const { name, mixture, cm3, kept } = entry.body;
      return one([mixed(name, mixture, [volume(cm3), ...present(kept)])]);
    }
  }
}

const volume = (cm3: number): string => cm3Words(cm3, formatNumber);
const one = (lines: readonly EntryItem[]): readonly Group[] =>
  lines.length === 0 ? [] : [{ heading: '', lines }];
const present = (text: string | undefined): string[] => (text ? [text] : []);
