/**
 * Writes a number with `least` to `most` decimals (`most` defaults to `least`). Each shell passes
 * its own to the messages: the screens follow the reader's locale, the command line does not.
 */
export type NumberFormat = (value: number, least: number, most?: number) => string;

/** Decimal point, no grouping, no trailing zeros beyond `least`: the command line's figures. */
export const plainNumber: NumberFormat = (value, least, most = least) => {
  const [whole, decimals = ''] = value.toFixed(most).split('.');
  const kept = decimals.slice(0, least) + decimals.slice(least).replace(/0+$/, '');
  return kept === '' ? whole! : `${whole}.${kept}`;
};
