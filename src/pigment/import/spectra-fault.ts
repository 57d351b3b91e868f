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

/** Message for a fault: what is wrong with the file of spectra, then what to do. */
export function spectraFaultWords(fault: SpectraFault): string {
  switch (fault.code) {
    case 'spectra-not-cgats':
      return 'This is not a file of spectra: it has no data in the form of CGATS.17 or ISO 28178.';
    case 'spectra-none':
      return 'This file holds measurements, but no spectra: export it again with its reflectances by wavelength.';
    case 'spectra-no-samples':
      return 'This file names its wavelengths but holds no sample: measure at least one.';
    case 'spectra-cut':
      return 'This file breaks off before its end: export it again.';
    case 'spectra-row':
      return `Sample ${fault.row} has ${fault.values} values where ${fault.fields} are named: a value is missing or a name with spaces is not quoted.`;
    case 'spectra-text':
      return `"${fault.sample}" has "${fault.text}" at ${fault.nm} nm, which is not a number.`;
    case 'spectra-range':
      return `"${fault.sample}" has ${fault.value} at ${fault.nm} nm: a reflectance lies between 0 and 1, or 0 and 100 per cent.`;
    case 'grid-short':
      return `The wavelengths run from ${fault.firstNm} to ${fault.lastNm} nm, and 400 to 700 nm are needed: without the ends the colour would be a guess.`;
    case 'grid-coarse':
      return `Between ${fault.fromNm} and ${fault.toNm} nm there is no value: steps of up to 20 nm can be read.`;
    case 'grid-order':
      return `${fault.nm} nm is there twice: each wavelength may come once.`;
  }
}
