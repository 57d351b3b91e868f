import { entryOf } from '../../book/learnt.ts';
import type { Part } from '../../pigment/calibrate/swatches.ts';
import {
  evidenceOfCurve,
  expectedErrorWords,
  HANDBOOK_EVIDENCE,
  mixtureError,
} from '../../pigment/calibrate/trust.ts';
import { studioCurveOf } from '../../pigment/mixable.ts';
import { isStocked, ownStock } from '../shelf/state.ts';
import { shelf } from '../studio.ts';
import { calibrationTexts } from '../words/swatches.ts';
import { accuracy } from './records.ts';
import { hrefTo } from './routes.ts';

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
