import { entryOf } from '../../book/learnt.ts';
import type { Part } from '../../pigment/calibrate/swatches.ts';
import { HANDBOOK, mixtureError, nearWords, trustOfCurve } from '../../pigment/calibrate/trust.ts';
import { keptCurveOf } from '../../pigment/mixable.ts';
import { isStocked, ownStock } from '../shelf/state.ts';
import { shelf } from '../studio.ts';
import { saySwatches } from '../words/swatches.ts';
import { accuracy } from './records.ts';
import { hrefTo } from './routes.ts';

/** States the expected error of a mixture in words, from the provenance of its paints' curves. */
export function ExpectedLine({ parts }: { parts: readonly Part[] }) {
  const on = shelf.value;
  const used = parts.filter((part) => part.parts > 0);
  const paints = used.map(({ pigment }) => on.paints.find((paint) => paint.pigment === pigment));
  if (used.length === 0 || paints.includes(undefined)) return null;
  const trust = (pigment: string) => {
    const entry = isStocked.value ? entryOf(pigment, ownStock.value) : null;
    return entry ? trustOfCurve(keptCurveOf(ownStock.value, entry)) : HANDBOOK;
  };
  const guessed = paints.filter((paint) => trust(paint!.pigment).known === 'handbook');
  if (guessed.length === paints.length)
    return (
      <p class="small">
        {saySwatches.expectedHandbook} <a href={hrefTo()}>{saySwatches.expectedLink}</a>
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
      {saySwatches.expected(nearWords(error))}{' '}
      {guessed.length > 0 && saySwatches.expectedGuess(guessed.map((paint) => paint!.label))}
    </p>
  );
}
