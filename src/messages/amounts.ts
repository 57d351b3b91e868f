import type { NumberFormat } from '../number-format.ts';
import { cm3Up, gramsUp, oilDown } from '../palette/rounded-amounts.ts';

/** An amount of paste, rounded up: "12.5 cm³". */
export const cm3Words = (cm3: number, number: NumberFormat): string =>
  `${number(cm3Up(cm3), 0, 2)} cm³`;

/** A weight, rounded up; with "about" for an estimate. */
export const gramsWords = (grams: number, about: boolean, number: NumberFormat): string =>
  `${about ? 'about ' : ''}${number(gramsUp(grams), 0, 2)} g`;

/** A weight of oil, rounded down. */
export const oilWords = (grams: number, number: NumberFormat): string =>
  `${number(oilDown(grams), 0, 2)} g`;
