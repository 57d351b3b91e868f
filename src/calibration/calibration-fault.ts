/**
 * Why a photographed card or a calibration is rejected. `place` is the number printed on the card.
 */
export type CalibrationFault =
  | { readonly code: 'card-none' }
  | { readonly code: 'card-cut'; readonly marks: number }
  | { readonly code: 'card-corners' }
  | { readonly code: 'card-small'; readonly pixelsPerMm: number }
  | { readonly code: 'card-out'; readonly place: number }
  | { readonly code: 'card-light-uneven'; readonly ratio: number }
  | { readonly code: 'card-shadow'; readonly share: number }
  | { readonly code: 'card-two-lights'; readonly ratio: number }
  | { readonly code: 'card-light-coloured'; readonly ratio: number }
  | { readonly code: 'card-clipped'; readonly place: number; readonly label: string }
  | { readonly code: 'card-dark' }
  | { readonly code: 'card-reference'; readonly place: number; readonly label: string }
  | { readonly code: 'card-tone'; readonly exponent: number }
  | { readonly code: 'card-blank'; readonly place: number; readonly label: string }
  | { readonly code: 'card-gloss'; readonly place: number; readonly label: string }
  | { readonly code: 'card-mixed'; readonly place: number; readonly label: string }
  | { readonly code: 'touch-reference-missing'; readonly kind: 'white' | 'grey' }
  | { readonly code: 'touch-outside'; readonly place: number }
  | { readonly code: 'chart-values' }
  | { readonly code: 'chart-count'; readonly patches: number }
  | { readonly code: 'chart-place' }
  | { readonly code: 'chart-poor'; readonly mean: number }
  | { readonly code: 'tint-impossible'; readonly tint: string; readonly alone: string }
  | { readonly code: 'tint-order'; readonly weaker: string; readonly stronger: string }
  | { readonly code: 'swatch-white-missing'; readonly label: string }
  | { readonly code: 'swatch-paint-unknown'; readonly pigment: string }
  | { readonly code: 'swatch-nothing' }
  | { readonly code: 'stopped' };
