import type { MorningSheet } from './sheet.ts';

/** How closely a sheet is set: 0 for a quiet morning, the last for the fullest. */
export const FITS = 6;

export function fitOf(_sheet: MorningSheet): number {
  return 0;
}
