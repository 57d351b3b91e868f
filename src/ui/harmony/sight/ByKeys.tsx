import { saySight } from '../../words/sight.ts';
import { SURFACE } from './sizes.ts';

/** Button that moves the keyboard focus to the photograph's marker. */
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
