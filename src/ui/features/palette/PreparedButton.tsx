import { daySheet } from '../../state/palette/day-entries.ts';
import { isPlanning } from '../../state/palette/plan-job.ts';
import { paletteTexts } from '../../texts/palette-texts.ts';
import { markPrepared, revertPrepared } from './prepare-day.ts';

/** Button that marks the day as prepared, or undoes it. */
export function PreparedButton() {
  return daySheet.value?.body.prepared ? (
    <button type="button" onClick={() => void revertPrepared()}>
      {paletteTexts.undoPrepared}
    </button>
  ) : (
    <button type="button" disabled={isPlanning.value} onClick={() => void markPrepared()}>
      {paletteTexts.prepare}
    </button>
  );
}
