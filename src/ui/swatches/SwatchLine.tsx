import { placeOfId } from '../../book/learnt.ts';
import { differenceWords } from '../../colour/words.ts';
import { type FittedPainted, labelOf, type PaintToFit } from '../../pigment/calibrate/fit.ts';
import { BesideWanted } from '../drawn/BesideWanted.tsx';
import { shownOf } from '../drawn/screen.ts';
import { seedOf } from '../drawn/seed.ts';
import { figure } from '../locale.ts';
import { saySwatches } from '../words/swatches.ts';
import { LeaveOut } from './LeaveOut.tsx';

/** One swatch: its observed colour beside the predicted one. */
export function SwatchLine({
  swatch: { painted, foreseen, deltaE00, unlikely },
  was,
  paints,
}: {
  swatch: FittedPainted;
  /** How visible its difference from the shelf's current prediction is; null when there is none. */
  was: keyof typeof saySwatches.wasBefore | null;
  paints: readonly Pick<PaintToFit, 'pigment' | 'label'>[];
}) {
  const place = placeOfId(painted.id);
  const name = labelOf(painted, paints);
  return (
    <div class="swatch-line">
      <BesideWanted
        wanted={{ name: saySwatches.seen, hex: shownOf(painted.lab) }}
        mixed={{ name: saySwatches.foreseen, hex: shownOf(foreseen) }}
        seed={seedOf(painted.id)}
      />
      <div>
        <p>
          <strong>
            {place ? `${place.number} ` : ''}
            {name}
          </strong>
        </p>
        <p>
          {saySwatches.differs[differenceWords(deltaE00)]}{' '}
          <span class="small">({figure(deltaE00, 1)})</span>
        </p>
        {was && <p class="small">{saySwatches.wasBefore[was]}</p>}
        {unlikely && <p class="field-fault">{saySwatches.unlikely}</p>}
        <LeaveOut id={painted.id} name={name} />
      </div>
    </div>
  );
}
