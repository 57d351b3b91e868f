/** Why a shelf file cannot be read, with the data that its message needs. */
export type ShelfFault =
  | { readonly code: 'shelf-empty' }
  | { readonly code: 'shelf-not-a-shelf' }
  | { readonly code: 'shelf-broken' }
  | { readonly code: 'shelf-newer'; readonly version: number }
  | { readonly code: 'shelf-grid-short'; readonly firstNm: number; readonly lastNm: number }
  | { readonly code: 'shelf-grid-coarse'; readonly fromNm: number; readonly toNm: number }
  | { readonly code: 'shelf-grid-order'; readonly nm: number }
  | { readonly code: 'shelf-name-missing'; readonly row: number }
  | { readonly code: 'shelf-name-twice'; readonly pigment: string }
  | { readonly code: 'shelf-row-missing'; readonly pigment: string; readonly row: 'K' | 'S' }
  | { readonly code: 'shelf-row-unknown'; readonly pigment: string; readonly row: string }
  | {
      readonly code: 'shelf-length';
      readonly pigment: string;
      readonly row: 'K' | 'S';
      readonly values: number;
      readonly bands: number;
    }
  | {
      readonly code: 'shelf-band-missing';
      readonly pigment: string;
      readonly row: 'K' | 'S';
      readonly nm: number;
    }
  | {
      readonly code: 'shelf-band-text';
      readonly pigment: string;
      readonly row: 'K' | 'S';
      readonly nm: number;
      readonly text: string;
    }
  | {
      readonly code: 'shelf-K-negative';
      readonly pigment: string;
      readonly nm: number;
      readonly value: number;
    }
  | {
      readonly code: 'shelf-S-not-positive';
      readonly pigment: string;
      readonly nm: number;
      readonly value: number;
    }
  | {
      readonly code: 'shelf-percent';
      readonly pigment: string;
      readonly row: 'K' | 'S';
      readonly value: number;
    }
  | { readonly code: 'shelf-surface'; readonly text: string }
  | { readonly code: 'shelf-basis'; readonly text: string }
  | { readonly code: 'shelf-white-unknown'; readonly pigment: string }
  | { readonly code: 'shelf-pigment-unknown'; readonly pigment: string };
