/**
 * A value or a fault. Faults are for what the user can act on; a mistake that only a programmer can
 * fix throws instead.
 */
export type Result<T, F> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly fault: F };

export const ok = <T>(value: T): { readonly ok: true; readonly value: T } => ({ ok: true, value });
export const fail = <F>(fault: F): { readonly ok: false; readonly fault: F } => ({
  ok: false,
  fault,
});
