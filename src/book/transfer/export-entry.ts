import Papa from 'papaparse';
import { hexOf } from '../../colour/gamut-mapping.ts';
import { bandNm } from '../../colour/grid.ts';
import type { Lab } from '../../colour/lab.ts';
import type { Mixture } from '../../mixture/mixture-types.ts';
import { pilePartsOf } from '../../mixture/pile-parts.ts';
import { foldText } from '../schema/fold-text.ts';
import type { Entry } from '../schema/record.ts';

type Cell = string | number;
type Row = Readonly<Record<string, Cell>>;

/**
 * Exports the colours, mixtures or amounts of an entry as CSV: UTF-8 text with comma separators,
 * decimal points and a header row. Cells that a spreadsheet would evaluate as a formula are
 * escaped.
 */
export function csvOf(entry: Entry): string {
  const rows = rowsOf(entry);
  const columns = [...new Set(rows.flatMap((row) => Object.keys(row)))];
  return Papa.unparse([...rows], { columns, escapeFormulae: true, newline: '\n' });
}

/** Exports an entry as JSON for other programs, without the book's internal fields. */
export function jsonOf({ id, kind, created, changed, body }: Entry): string {
  const entry = { format: 'kingcup-entry', version: 1, id, kind, created, changed, body };
  return `${JSON.stringify(entry, null, 2)}\n`;
}

/**
 * A file name for this entry that is valid on every system, whatever its name contains.
 * @param ending the extension, without a dot
 */
export function fileNameOf({ kind, changed, body }: Entry, ending: string): string {
  const name = foldText(body.name)
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, 60)
    .replace(/^-+|-+$/g, '');
  const day = ('date' in body ? body.date : changed).slice(0, 10);
  return `${[kind, name, day].filter(Boolean).join('-')}.${ending}`;
}

function rowsOf(entry: Entry): readonly Row[] {
  switch (entry.kind) {
    case 'specimen':
      return (entry.body.gathered?.colours ?? []).map(({ name, lab, share }) => ({
        colour: name,
        ...labCells(lab),
        share: rounded(share, 4),
      }));
    case 'harmony':
      return entry.body.colours.map(({ name, lab, share, mixture }) => ({
        colour: name,
        ...labCells(lab),
        share: rounded(share, 4),
        ...mixtureCells(mixture),
      }));
    case 'drapery':
      return entry.body.garments.flatMap((garment) =>
        garment.folds.map(({ step, lab, mixture }) => ({
          ...{ garment: garment.name, step, ...labCells(lab), ...mixtureCells(mixture) },
        })),
      );
    case 'formula':
      return entry.body.passages.flatMap((passage) =>
        passage.layers.map(({ film, mixture, filmMm = '', note }) => ({
          ...{ passage: passage.name, film, 'film mm': filmMm, note, ...mixtureCells(mixture) },
        })),
      );
    case 'passage':
    case 'palette':
      return entry.body.piles.map(({ name, mixture, areaCm2 = '', filmMm = '', cm3 = '' }) => ({
        ...{ pile: name, 'area cm2': areaCm2, 'film mm': filmMm, cm3, ...mixtureCells(mixture) },
      }));
    case 'sheet':
      return entry.body.amounts.map(({ pigment, lot, grams = '', cm3 = '' }) => ({
        ...{ pigment, lot, grams, cm3 },
      }));
    case 'shelf':
      return entry.body.paints.map(({ pigment, label, grade, lot, form, known, grams = '' }) => ({
        ...{ pigment, label, grade, lot, form, known, grams },
      }));
    case 'swatch': {
      const { pigment, lot, toWhite, lab } = entry.body;
      return [{ pigment, lot, 'parts to one of white': toWhite ?? '', ...labCells(lab) }];
    }
    case 'card': {
      const { plan, reading } = entry.body;
      return plan.places.map(({ number, label, measure }) => {
        const seen = reading?.places.find((place) => place.number === number);
        return { place: number, label, measure, ...(seen ? labCells(seen.lab) : {}) };
      });
    }
    case 'curves':
      return entry.body.samples.map(({ name, reflectance }) => ({
        sample: name,
        ...Object.fromEntries(reflectance.map((v, band) => [bandNm(band), rounded(v, 5)])),
      }));
    case 'pile': {
      const { name, seen, known, mixture } = entry.body;
      return [{ pile: name, ...labCells(seen), known, ...mixtureCells(mixture) }];
    }
    case 'leftover': {
      const { name, cm3, kept, mixture } = entry.body;
      return [{ pile: name, cm3, kept, ...mixtureCells(mixture) }];
    }
  }
}

const labCells = (lab: Lab): Row => ({
  hex: hexOf(lab),
  'L*': rounded(lab[0], 2),
  'a*': rounded(lab[1], 2),
  'b*': rounded(lab[2], 2),
});

function mixtureCells(mixture: Mixture | undefined): Row {
  if (!mixture) return {};
  const { parts, letDowns, lab } = pilePartsOf(mixture);
  const how = (name: string): string =>
    letDowns
      .filter(({ pigment }) => pigment === name)
      .map(({ white, whiteParts }) => ` (let down 1 to ${whiteParts} ${white})`)
      .join('');
  return {
    parts: parts
      .map(({ pigment, parts, letDown }) => `${parts} ${pigment}${letDown ? how(pigment) : ''}`)
      .join(' + '),
    'mixed L*': rounded(lab[0], 2),
    'mixed a*': rounded(lab[1], 2),
    'mixed b*': rounded(lab[2], 2),
    'difference (CIEDE2000)': rounded(mixture.letDown?.deltaE00 ?? mixture.partsDeltaE00, 2),
  };
}

/** Rounded for a reader; never "-0". */
const rounded = (value: number, digits: number): number => Number(value.toFixed(digits)) + 0;
