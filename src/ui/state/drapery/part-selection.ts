import { signal } from '@preact/signals';
import type { GarmentPart } from './drapery-scheme.ts';

/** What the painter is choosing a colour for. */
export interface ColourTarget {
  readonly what: 'garment' | GarmentPart | 'shadows';
  /** The part whose shadows are meant, for `shadows`. */
  readonly part: GarmentPart;
}
/** The choice in progress; null if none. */
export const colourTarget = signal<ColourTarget | null>(null);
/** The selected part of the selected garment. */
export const selectedPart = signal<GarmentPart>('cloth');
