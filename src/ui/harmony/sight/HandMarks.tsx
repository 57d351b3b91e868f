import { saySight } from '../../words/sight.ts';
import { studied } from '../state.ts';

/** List of the manually corrected colours, with the reason. */
export function HandMarks() {
  const marks = studied.value.flatMap(({ gathered: { name, altered, spotSide, sheen } }) => [
    ...(altered === undefined ? [] : [saySight.markEye(name, altered)]),
    ...(spotSide === undefined ? [] : [saySight.markSpot(name, spotSide)]),
    ...(sheen ? [saySight.markSheen(name)] : []),
  ]);
  if (marks.length === 0) return null;
  return (
    <ul class="remarks" aria-label={saySight.marks}>
      {marks.map((mark) => (
        <li key={mark}>{mark}</li>
      ))}
    </ul>
  );
}
