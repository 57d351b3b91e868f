import { harmonyColours } from '../../state/harmony/current-harmony.ts';
import { photographTexts } from '../../texts/photograph-texts.ts';

/** List of the manually corrected colours, with the reason. */
export function ManualCorrectionList() {
  const marks = harmonyColours.value.flatMap(({ gathered: { name, altered, spotSide, sheen } }) => [
    ...(altered === undefined ? [] : [photographTexts.markEye(name, altered)]),
    ...(spotSide === undefined ? [] : [photographTexts.markSpot(name, spotSide)]),
    ...(sheen ? [photographTexts.markSheen(name)] : []),
  ]);
  if (marks.length === 0) return null;
  return (
    <ul class="remarks" aria-label={photographTexts.marks}>
      {marks.map((mark) => (
        <li key={mark}>{mark}</li>
      ))}
    </ul>
  );
}
