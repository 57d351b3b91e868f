import { signal } from '@preact/signals';
import type { Part } from './state.ts';

/** What the painter is choosing a colour for. */
export interface Picking {
  readonly what: 'garment' | Part | 'shadows';
  /** The part whose shadows are meant, for `shadows`. */
  readonly part: Part;
}
/** The choice in progress; null if none. */
export const picking = signal<Picking | null>(null);
/** The selected part of the selected garment. */
export const part = signal<Part>('cloth');
