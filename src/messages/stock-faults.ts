import type { NumberFormat } from '../number-format.ts';
import type { WeighFault } from '../pigment/pigment-grind.ts';
import { PLAUSIBLE_DENSITY, PLAUSIBLE_OIL, type StockFault } from '../pigment/validate-stock.ts';

/** Message for a pigment that cannot be weighed, then what to do. */
export function weighFaultWords(fault: WeighFault): string {
  if (fault.code === 'weigh-unknown')
    return `"${fault.pigment}" is not a pigment that we hold figures of: enter its density and the oil that it takes.`;
  const lacks = fault.lacks
    .map((one) => (one === 'oil' ? 'how much oil it takes' : 'its density'))
    .join(' and ');
  return `${fault.name} cannot be weighed as oil paint: ${lacks} is not known. Measure your own lot and enter it.`;
}

/** Message for a fault, then what to do. */
export function stockFaultWords(fault: StockFault, number: NumberFormat): string {
  switch (fault.code) {
    case 'stock-gone':
      return 'This is no longer on the shelf: it was taken off elsewhere.';
    case 'stock-pigment-missing':
      return 'Choose a pigment, or make one of your own first.';
    case 'stock-pigment-unknown':
      return `"${fault.pigment}" is not a pigment that this shelf knows: choose one from the list, or make it one of your own.`;
    case 'stock-amount':
      return 'The amount is a number from 0 up; leave it empty if it was not weighed.';
    case 'stock-unit':
      return fault.form === 'powder'
        ? 'Dry powder is weighed in grams: its volume depends on how it is packed.'
        : `A ${fault.form} is measured in grams or millilitres, not in "${fault.unit}".`;
    case 'stock-density':
      return `A density of ${number(fault.density, 0, 6)} g/cm3 cannot be right: pigments lie between ${number(PLAUSIBLE_DENSITY.least, 0, 1)} and ${number(PLAUSIBLE_DENSITY.most, 0, 1)}. Leave it empty to use the handbook's.`;
    case 'stock-oil':
      return `${number(fault.oil, 0, 6)} g of oil for 100 g of pigment cannot be right: pigments take from ${number(PLAUSIBLE_OIL.least, 0, 1)} to ${number(PLAUSIBLE_OIL.most, 0, 1)}. Leave it empty to use the handbook's.`;
    case 'stock-curve':
      return fault.row === 'K'
        ? 'Its curve is not whole: K needs a number from 0 up in each of the 36 bands. Read it in again.'
        : 'Its curve is not whole: S needs a number above 0 in each of the 36 bands. Read it in again.';
    case 'stock-long':
      return `The ${fault.field} is too long: at most ${fault.most} letters are kept.`;
    case 'stock-twice':
      return `${fault.label} is already on the shelf: change its amount there, or give this one another lot.`;
    case 'stock-white-dark':
      return `${fault.label} is too dark or too coloured to serve as the studio's white: mark another.`;
    case 'stock-white-uncurved':
      return `${fault.label} has no K and S yet, so it cannot serve as the studio's white: calibrate it first.`;
    case 'own-name-missing':
      return 'Give the pigment a name.';
    case 'own-name-taken':
      return `There is already a pigment of your own called ${fault.name}: choose another name, or change that one.`;
    case 'own-in-use':
      return `${fault.name} is still on the shelf ${fault.entries === 1 ? 'once' : `${fault.entries} times`}: take that off first.`;
  }
}
