import { signal } from '@preact/signals';
import { gamutMappedRgb, hexOf } from '../../colour/gamut-mapping.ts';
import type { Lab } from '../../colour/lab.ts';
import { inP3, inSrgb } from '../../colour/rgb.ts';

const wide =
  typeof matchMedia === 'function' &&
  typeof CSS !== 'undefined' &&
  CSS.supports?.('color', 'color(display-p3 1 1 1)')
    ? matchMedia('(color-gamut: p3)')
    : null;

/** Whether this screen shows Display P3. Changes when the window moves to another screen. */
export const isWideGamut = signal(wide?.matches ?? false);
wide?.addEventListener('change', ({ matches }) => {
  isWideGamut.value = matches;
});

/**
 * CSS colour of a CIELAB (D65) colour on this screen: `#rrggbb` inside sRGB, `color(display-p3 …)`
 * beyond it on a wide-gamut screen. A colour outside the screen's gamut is mapped into it and
 * marked by an explicit opacity, `/ 1`, which has no visible effect (see isNearest()).
 */
export function cssColourOf(lab: Lab): string {
  if (inSrgb(lab)) return hexOf(lab);
  if (!isWideGamut.value) return `rgb(${gamutMappedRgb(lab, 'srgb').map(byte).join(' ')} / 1)`;
  const numbers = gamutMappedRgb(lab, 'display-p3')
    .map((v) => v.toFixed(4))
    .join(' ');
  return `color(display-p3 ${numbers}${inP3(lab) ? '' : ' / 1'})`;
}

const byte = (value: number): number => Math.round(255 * value);

/** Whether a CSS colour of shownOf() was mapped into the screen's gamut. */
export const isGamutMapped = (shown: string): boolean => shown.endsWith('/ 1)');
