import { entryOf } from '../../../book/schema/calibration-evidence.ts';
import {
  evidenceOfCurve,
  HANDBOOK_EVIDENCE,
  mixtureError,
} from '../../../calibration/curve-evidence.ts';
import type { Part } from '../../../calibration/painted-swatch.ts';
import { expectedErrorWords } from '../../../messages/curve-evidence-text.ts';
import { studioCurveOf } from '../../../pigment/mixing-shelf.ts';
import { accuracy } from '../../state/calibration/evidence.ts';
import { shelf } from '../../state/studio.ts';
import { calibrationTexts } from '../../texts/calibration-texts.ts';
import { isStocked, ownStock } from '../shelf/stock-state.ts';
import { hrefTo } from './calibration-routes.ts';

/** States the expected error of a mixture in words, from the provenance of its paints' curves. */
export function ExpectedError({ parts }: { parts: readonly Part[] }) {
  const on = shelf.value;
  const used = parts.filter((part) => part.parts > 0);
  const paints = used.map(({ pigment }) => on.paints.find((paint) => paint.pigment === pigment));
  if (used.length === 0 || paints.includes(undefined)) return null;
  const trust = (pigment: string) => {
    const entry = isStocked.value ? entryOf(pigment, ownStock.value) : null;
    return entry ? evidenceOfCurve(studioCurveOf(ownStock.value, entry)) : HANDBOOK_EVIDENCE;
  };
  const guessed = paints.filter((paint) => trust(paint!.pigment).known === 'handbook');
  if (guessed.length === paints.length)
    return (
      <p class="small">
        {calibrationTexts.expectedHandbook} <a href={hrefTo()}>{calibrationTexts.expectedLink}</a>
      </p>
    );
  const error = mixtureError(
    used,
    trust,
    (pigment) => on.paints.find((paint) => paint.pigment === pigment)!.paint,
    accuracy.value.lately ?? undefined,
  );
  return (
    <p class="small">
      {calibrationTexts.expected(expectedErrorWords(error))}{' '}
      {guessed.length > 0 && calibrationTexts.expectedGuess(guessed.map((paint) => paint!.label))}
    </p>
  );
}
