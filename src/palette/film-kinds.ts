/** Kinds of film, in the trade's words. */
export type FilmWord =
  | 'imprimatura'
  | 'dead colour'
  | 'body colour'
  | 'loaded'
  | 'impasto'
  | 'glaze'
  | 'scumble';

/** Wet thickness in micrometres, and added oil. */
interface Film {
  readonly least: number;
  readonly most: number;
  readonly usual: number;
  /** cm3 of oil per cm3 of paste, beyond the paste's own. */
  readonly spareOil: number;
}

/**
 * Default films, which the painter can change. Thicknesses: handbook ranges from memory, consistent
 * with published cross-sections. A glaze's 0.65 about doubles the oil of most pastes (an estimate:
 * a glaze takes twice the oil of the stiff paste).
 */
export const FILMS: Readonly<Record<FilmWord, Film>> = {
  imprimatura: { least: 5, most: 20, usual: 15, spareOil: 0 },
  'dead colour': { least: 15, most: 40, usual: 25, spareOil: 0 },
  'body colour': { least: 20, most: 60, usual: 40, spareOil: 0 },
  loaded: { least: 60, most: 200, usual: 100, spareOil: 0 },
  impasto: { least: 300, most: 3000, usual: 600, spareOil: 0 },
  glaze: { least: 5, most: 20, usual: 10, spareOil: 0.65 },
  scumble: { least: 5, most: 15, usual: 8, spareOil: 0.1 },
};
export const FILM_WORDS = Object.keys(FILMS) as readonly FilmWord[];

/** Whether a film is only painted over a dry ground. */
export const needsDryGround = (film: FilmWord): boolean => film === 'glaze' || film === 'scumble';
