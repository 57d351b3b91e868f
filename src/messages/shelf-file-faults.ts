import type { NumberFormat } from '../number-format.ts';
import type { SpectraRemark } from '../pigment/import/cgats.ts';
import type { CurvesFault } from '../pigment/import/read-spectra.ts';
import type { ShelfFault } from '../pigment/import/shelf-fault.ts';
import type { SpectraFault } from '../pigment/import/spectra-fault.ts';
import type { ShelfRemark } from '../pigment/shelf.ts';

/** Message for a fault, one or two sentences: what is wrong and where, then what to do. */
export function shelfFaultWords(fault: ShelfFault, number: NumberFormat): string {
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
      return `The wavelengths run from ${number(fault.firstNm, 0, 3)} to ${number(fault.lastNm, 0, 3)} nm, and mixing needs 400 to 700 nm: without the ends the colour would be a guess.`;
    case 'shelf-grid-coarse':
      return `Between ${number(fault.fromNm, 0, 3)} and ${number(fault.toNm, 0, 3)} nm there is no value: steps of up to 20 nm can be read, wider ones hide the edge that makes the colour.`;
    case 'shelf-grid-order':
      return `The wavelengths do not rise at ${number(fault.nm, 0, 3)} nm: each must be larger than the one before it.`;
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
      return `"${fault.pigment}" has no ${fault.row} at ${number(fault.nm, 0, 3)} nm: fill the gap or leave the paint out.`;
    case 'shelf-band-text':
      return `"${fault.pigment}" has "${fault.text}" for ${fault.row} at ${number(fault.nm, 0, 3)} nm, which is not a number.`;
    case 'shelf-K-negative':
      return `"${fault.pigment}" has K ${number(fault.value, 0, 12)} at ${number(fault.nm, 0, 3)} nm: absorption is never below 0.`;
    case 'shelf-S-not-positive':
      return `"${fault.pigment}" has S ${number(fault.value, 0, 12)} at ${number(fault.nm, 0, 3)} nm: scattering is always above 0, for nothing comes back from a film that does not scatter.`;
    case 'shelf-percent':
      return `"${fault.pigment}" has ${fault.row} ${number(fault.value, 0, 12)}, which looks like per cent: K and S are counted so that titanium white has S = 1. Divide all values by 100.`;
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
export function spectraFaultWords(fault: SpectraFault, number: NumberFormat): string {
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
      return `"${fault.sample}" has "${fault.text}" at ${number(fault.nm, 0, 3)} nm, which is not a number.`;
    case 'spectra-range':
      return `"${fault.sample}" has ${number(fault.value, 0, 12)} at ${number(fault.nm, 0, 3)} nm: a reflectance lies between 0 and 1, or 0 and 100 per cent.`;
    case 'grid-short':
      return `The wavelengths run from ${number(fault.firstNm, 0, 3)} to ${number(fault.lastNm, 0, 3)} nm, and 400 to 700 nm are needed: without the ends the colour would be a guess.`;
    case 'grid-coarse':
      return `Between ${number(fault.fromNm, 0, 3)} and ${number(fault.toNm, 0, 3)} nm there is no value: steps of up to 20 nm can be read.`;
    case 'grid-order':
      return `${number(fault.nm, 0, 3)} nm is there twice: each wavelength may come once.`;
  }
}

/** Message for a fault, then what to do. */
export function curvesFaultWords(fault: CurvesFault, number: NumberFormat): string {
  switch (fault.code) {
    case 'curves-twice':
      return `Two samples are called "${fault.sample}": give each a name of its own, so that each can be told what it is.`;
    case 'curves-gap':
      return `"${fault.sample}" has no value at ${number(fault.nm, 0, 3)} nm: fill the gap or leave the sample out.`;
    case 'curves-name':
      return `Sample ${fault.row} has no name: give every sample one.`;
    case 'curves-none':
      return 'No measured curves were found in this file: it needs CGATS text, or a CSV with wavelengths (400 to 700 nm at least) in its heading or down its first column.';
    default:
      return spectraFaultWords(fault, number);
  }
}

/** The sentence for an assumption about a shelf or a file of spectra. */
export function shelfRemarkWords(
  remark: ShelfRemark | SpectraRemark,
  number: NumberFormat,
): string {
  switch (remark.code) {
    case 'grid-starts-late':
      return `The wavelengths start at ${number(remark.nm, 0, 3)} nm: the first value is carried on flat to 380.`;
    case 'grid-ends-early':
      return `The wavelengths end at ${number(remark.nm, 0, 3)} nm: the last value is carried on flat to 730.`;
    case 'grid-resampled':
      return `Values every ${number(remark.stepNm, 0, 1)} nm were brought to every 10 nm.`;
    case 'values-per-cent':
      return 'The values are taken as per cent and divided by 100.';
    case 'noise-below-zero':
      return 'Values a little below 0 are noise of the instrument and count as 0.';
    case 'no-surface':
      return 'The file states no surface: its colours are shown without one.';
    case 'no-white':
      return 'There is no white on this shelf: colours lighter than its paints are out of reach.';
    case 'one-paint':
      return 'There is one paint on this shelf, so nothing can be mixed from it yet.';
    case 'parts-not-volumes':
      return 'Its parts are not known to be volumes of paste: parts are offered, but no grams.';
    case 'used-up':
      return `${remark.label} is used up.`;
    case 'no-curve':
      return `${remark.label} has no K and S yet, so nothing is mixed with it.`;
    case 'white-not-marked':
      return 'No white is marked: colours lighter than the other paints may be out of reach.';
    case 'white-not-mixable':
      return "The studio's white cannot be mixed with: mark another.";
  }
}
