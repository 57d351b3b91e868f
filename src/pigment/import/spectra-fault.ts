import type { GridFault } from './resample.ts';

/** Why a file of measured spectra cannot be read. */
export type SpectraFault =
  | { readonly code: 'spectra-not-cgats' }
  | { readonly code: 'spectra-none' }
  | { readonly code: 'spectra-no-samples' }
  | { readonly code: 'spectra-cut' }
  | {
      readonly code: 'spectra-row';
      readonly row: number;
      readonly values: number;
      readonly fields: number;
    }
  | {
      readonly code: 'spectra-text';
      readonly sample: string;
      readonly nm: number;
      readonly text: string;
    }
  | {
      readonly code: 'spectra-range';
      readonly sample: string;
      readonly nm: number;
      readonly value: number;
    }
  | GridFault;
