import { saySight } from '../../words/sight.ts';
import { SURFACE } from './sizes.ts';

/** Takes the keys to the marker. */
export const ByKeys = () => (
  <button
    type="button"
    class="quiet"
    onClick={() => {
      const surface = document.getElementById(SURFACE);
      surface?.scrollIntoView({ block: 'nearest' });
      surface?.focus();
    }}
  >
    {saySight.byKeys}
  </button>
);
