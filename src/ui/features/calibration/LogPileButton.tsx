import { entryOf } from '../../../book/schema/calibration-evidence.ts';
import type { Part } from '../../../calibration/painted-swatch.ts';
import type { Lab } from '../../../colour/lab.ts';
import { calibrationTexts } from '../../texts/calibration-texts.ts';
import { isStocked, ownStock } from '../shelf/stock-state.ts';
import { goTo } from './calibration-routes.ts';
import { startPileLog } from './pile-log.ts';
import { observedFromScreen } from './pile-prediction.ts';

/** Button that passes a pile which missed its prediction to the log of piles. */
export function LogPileButton({
  parts,
  seen,
  isMeasured,
}: {
  /** By names on the shelf of the mixture search. */
  parts: readonly Part[];
  seen: Lab;
  isMeasured: boolean;
}) {
  if (!isStocked.value) return null;
  const keep = () => {
    const mixed = parts.flatMap((part) => {
      const entry = part.parts > 0 ? entryOf(part.pigment, ownStock.peek()) : null;
      return entry ? [{ pigment: entry.id, parts: part.parts }] : [];
    });
    const lab = isMeasured ? seen : observedFromScreen(seen, ownStock.peek());
    startPileLog(mixed, { lab, known: isMeasured ? 'measured' : 'by eye', R: null });
    goTo('pile');
  };
  return (
    <button type="button" class="quiet" onClick={keep}>
      {calibrationTexts.keepAs}
    </button>
  );
}
