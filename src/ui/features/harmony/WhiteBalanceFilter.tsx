import { gatheringSettings } from '../../state/harmony/gathering-settings.ts';

/** SVG filter that applies the white-balance matrix to the photograph, in linear sRGB. */
export function WhiteBalanceFilter() {
  const { light } = gatheringSettings.value;
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
