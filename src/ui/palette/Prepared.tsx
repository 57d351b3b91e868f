import { paletteTexts } from '../words/palette.ts';
import { daySheet } from './days.ts';
import { isPlanning } from './planning.ts';
import { markPrepared, revertPrepared } from './preparing.ts';

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
