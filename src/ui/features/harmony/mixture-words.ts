import { formatNumber } from '../../state/locale-format.ts';

/** Relative clause for an ASTM lightfastness class. */
export function lightfastnessWords(name: string): string {
  switch (name) {
    case 'I':
      return 'which lasts (class I)';
    case 'II':
      return 'which lasts well (class II)';
    case 'III':
      return 'which fades in strong light (class III)';
    case 'unlisted, fugitive':
      return 'which fades';
    default:
      return 'which no standard lists';
  }
}

const NUMBERS = [
  'No',
  'One',
  'Two',
  'Three',
  'Four',
  'Five',
  'Six',
  'Seven',
  'Eight',
  'Nine',
  'Ten',
];
/** A whole number 0…10 as a capitalised word; digits for others. */
export const numberWord = (n: number): string => NUMBERS[n] ?? String(n);

/** A factor in words: "half", "twice", "1.4 times". */
export function timesWords(factor: number): string {
  if (factor > 1.9 && factor < 2.1) return 'twice';
  if (factor > 0.45 && factor < 0.55) return 'half';
  return `${formatNumber(factor, factor < 1 ? 2 : 1)} times`;
}

/** Parts by volume, rounded to an amount that a palette knife can take. */
export function roughPartsWords(parts: number): string {
  if (parts < 0.06) return 'a trace';
  if (parts < 0.2) return 'a knife-tip, a tenth of a part';
  if (parts < 10) {
    const quarters = Math.max(1, Math.round(parts * 4));
    const whole = Math.floor(quarters / 4);
    const rest = ['', '¼', '½', '¾'][quarters % 4]!;
    return `${whole > 0 ? whole : ''}${rest} ${quarters <= 4 ? 'part' : 'parts'}`;
  }
  return `${Math.round(parts)} parts`;
}
