import { SURFACE_ID } from '../../state/harmony/patch-sizes.ts';
import { photographTexts } from '../../texts/photograph-texts.ts';

/** Button that moves the keyboard focus to the photograph's marker. */
export const FocusMarkerButton = () => (
  <button
    type="button"
    class="quiet"
    onClick={() => {
      const surface = document.getElementById(SURFACE_ID);
      surface?.scrollIntoView({ block: 'nearest' });
      surface?.focus();
    }}
  >
    {photographTexts.byKeys}
  </button>
);
