import type { CurvesFault } from '../pigment/import/read-spectra.ts';
import type { ShelfFault } from '../pigment/import/shelf-fault.ts';
import type { SpectraFault } from '../pigment/import/spectra-fault.ts';
/** Message for a fault, one or two sentences: what is wrong and where, then what to do. */
export function shelfFaultWords(fault: ShelfFault): string {
  switch (fault.code) {
    case 'shelf-empty':
      return 'This shelf holds no paint: put at least one on it.';
    case 'shelf-not-a-shelf':
      return 'This file is not a shelf: it needs our JSON, or a CSV whose heading names the wavelengths and whose rows are K and S.';
    case 'shelf-broken':
      return 'This shelf file is damaged or was cut short: its JSON cannot be read. Export it again where it came from.';
    case 'shelf-newer':
      return `This shelf was written by a newer Kingcup (form ${fault.version}): bring this one up to date, then read it again.`;
    case 'shelf-grid-short':
      return `The wavelengths run from ${fault.firstNm} to ${fault.lastNm} nm, and mixing needs 400 to 700 nm: without the ends the colour would be a guess.`;
    case 'shelf-grid-coarse':
      return `Between ${fault.fromNm} and ${fault.toNm} nm there is no value: steps of up to 20 nm can be read, wider ones hide the edge that makes the colour.`;
    case 'shelf-grid-order':
      return `The wavelengths do not rise at ${fault.nm} nm: each must be larger than the one before it.`;
    case 'shelf-name-missing':
      return `Row ${fault.row} has no name: give every paint one.`;
    case 'shelf-name-twice':
      return `Two paints are called "${fault.pigment}": give each a name of its own.`;
    case 'shelf-row-missing':
      return `"${fault.pigment}" has no ${fault.row} row: every paint needs one of K (absorption) and one of S (scattering).`;
    case 'shelf-row-unknown':
      return `"${fault.pigment}" has a row "${fault.row}": only K and S are known here.`;
    case 'shelf-length':
      return `"${fault.pigment}" has ${fault.values} values of ${fault.row} for ${fault.bands} wavelengths: give one for each.`;
    case 'shelf-band-missing':
      return `"${fault.pigment}" has no ${fault.row} at ${fault.nm} nm: fill the gap or leave the paint out.`;
    case 'shelf-band-text':
      return `"${fault.pigment}" has "${fault.text}" for ${fault.row} at ${fault.nm} nm, which is not a number.`;
    case 'shelf-K-negative':
      return `"${fault.pigment}" has K ${fault.value} at ${fault.nm} nm: absorption is never below 0.`;
    case 'shelf-S-not-positive':
      return `"${fault.pigment}" has S ${fault.value} at ${fault.nm} nm: scattering is always above 0, for nothing comes back from a film that does not scatter.`;
    case 'shelf-percent':
      return `"${fault.pigment}" has ${fault.row} ${fault.value}, which looks like per cent: K and S are counted so that titanium white has S = 1. Divide all values by 100.`;
    case 'shelf-surface':
      return `"${fault.text}" is not a surface: write two numbers from 0 up to 1 (k1 and k2), such as 0.03,0.65, or 0,0 for none.`;
    case 'shelf-basis':
      return `"${fault.text}" is not a basis: write volume, mass or unknown.`;
    case 'shelf-white-unknown':
      return `The white "${fault.pigment}" is not on this shelf: name one that is, or none.`;
    case 'shelf-pigment-unknown':
      return `"${fault.pigment}" comes without K and S, and is not a pigment that we have curves for.`;
  }
}

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

/** Message for a fault, then what to do. */
export function curvesFaultWords(fault: CurvesFault): string {
  switch (fault.code) {
    case 'curves-twice':
      return `Two samples are called "${fault.sample}": give each a name of its own, so that each can be told what it is.`;
    case 'curves-gap':
      return `"${fault.sample}" has no value at ${fault.nm} nm: fill the gap or leave the sample out.`;
    case 'curves-name':
      return `Sample ${fault.row} has no name: give every sample one.`;
    case 'curves-none':
      return 'No measured curves were found in this file: it needs CGATS text, or a CSV with wavelengths (400 to 700 nm at least) in its heading or down its first column.';
    default:
      return spectraFaultWords(fault);
  }
}
