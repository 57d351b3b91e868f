import { signal } from '@preact/signals';
import type { Part } from './state.ts';

/** What a colour is being chosen for; null while none is. */
export interface Picking {
  readonly what: 'garment' | Part | 'shadows';
  /** Whose shadows, where they are meant. */
  readonly part: Part;
}
export const picking = signal<Picking | null>(null);
/** The part of the garment that is looked at. */
export const part = signal<Part>('cloth');
