import { signal } from '@preact/signals';
import { hexOf, shownIn } from '../../colour/hex.ts';
import type { Lab } from '../../colour/lab.ts';
import { inP3, inSrgb } from '../../colour/rgb.ts';

const wide =
  typeof matchMedia === 'function' &&
  typeof CSS !== 'undefined' &&
  CSS.supports?.('color', 'color(display-p3 1 1 1)')
    ? matchMedia('(color-gamut: p3)')
    : null;

/** Whether this screen shows the wider colours of Display P3. It can change: a window moves to another screen. */
export const isWide = signal(wide?.matches ?? false);
wide?.addEventListener('change', ({ matches }) => {
  isWide.value = matches;
});

/**
 * What the screen is told to show for a colour (CIELAB, D65): `#rrggbb` where sRGB holds it, and where
 * only a wide screen does `color(display-p3 …)`. What this screen cannot show is brought in and bears a
 * stated opacity, `/ 1`, which changes nothing to the eye and by which it is known (see isNearest()).
 */
export function shownOf(lab: Lab): string {
  if (inSrgb(lab)) return hexOf(lab);
  if (!isWide.value) return `rgb(${shownIn(lab, 'srgb').map(byte).join(' ')} / 1)`;
  const numbers = shownIn(lab, 'display-p3')
    .map((v) => v.toFixed(4))
    .join(' ');
  return `color(display-p3 ${numbers}${inP3(lab) ? '' : ' / 1'})`;
}

const byte = (value: number): number => Math.round(255 * value);

/** Whether a colour is not the one that was meant, but the nearest to it that this screen shows. */
export const isNearest = (shown: string): boolean => shown.endsWith('/ 1)');
