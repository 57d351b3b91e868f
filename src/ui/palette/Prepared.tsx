import { sayPalette } from '../words/palette.ts';
import { sheet } from './days.ts';
import { isPlanning } from './planning.ts';
import { prepare, unprepare } from './preparing.ts';

/** Button that marks the day as prepared, or undoes it. */
export function Prepared() {
  return sheet.value?.body.prepared ? (
    <button type="button" onClick={() => void unprepare()}>
      {sayPalette.undoPrepared}
    </button>
  ) : (
    <button type="button" disabled={isPlanning.value} onClick={() => void prepare()}>
      {sayPalette.prepare}
    </button>
  );
}
