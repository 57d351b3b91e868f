import type { StoragePromise } from '../book/store/persistent-storage.ts';

/** Sentences for each answer. None says "safe", because no answer guarantees that. */
export const keepingWords = {
  kept: 'This browser keeps the book until you remove it yourself. A lost or broken device takes it along: make copies.',
  'may be cleared':
    'This browser may clear the book when room grows short, or when Kingcup was not opened for some days. Install Kingcup on this device, and make copies.',
  unknown:
    'This browser does not say how long it keeps the book. Make copies, and open Kingcup now and then.',
} as const satisfies Record<StoragePromise, string>;
