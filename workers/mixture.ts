import type { Lab } from '../src/colour/lab.ts';
import { findMixtures, type MixFault, type MixOptions } from '../src/mixture/find.ts';
import type { Answer } from '../src/mixture/mixture.ts';
import type { Shelf } from '../src/pigment/shelf.ts';
import type { Result } from '../src/result.ts';
import type { Handed } from './jobs.ts';

export interface MixtureJob {
  readonly targets: readonly Lab[];
  readonly shelf: Shelf;
  readonly options: Omit<MixOptions, 'onProgress' | 'stopped'>;
}
export type MixtureNews = number;
export type MixtureResult = Result<Answer[], MixFault>;

/** Mixtures for every target; news is the share done, 0…1. */
export function findAll(
  { targets, shelf, options }: MixtureJob,
  tell: (done: MixtureNews) => void,
): Handed<MixtureResult> {
  return { value: findMixtures(targets, shelf, { ...options, onProgress: tell }) };
}
