import { look } from './look.ts';

/** Shows the photograph in the light as it was set: the same matrix, in linear light, on the way to the screen. */
export function Filter() {
  const { light } = look.value;
  if (!light) return null;
  const rows = light.matrix.map((row) => `${row.map((v) => v.toFixed(6)).join(' ')} 0 0`);
  return (
    <svg class="unseen" width="0" height="0" aria-hidden="true">
      <filter id="kingcup-light" color-interpolation-filters="linearRGB">
        <feColorMatrix type="matrix" values={`${rows.join(' ')} 0 0 0 1 0`} />
      </filter>
    </svg>
  );
}
