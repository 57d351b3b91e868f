import { placeOfId } from '../../../book/schema/calibration-evidence.ts';
import {
  type FittedPainted,
  type PaintToFit,
  swatchLabelOf,
} from '../../../calibration/calibrate-paints.ts';
import { differenceWords } from '../../../colour/describe-colour.ts';
import { seedOf } from '../../../drawing/drawing-seed.ts';
import { ColourComparison } from '../../components/drawn/ColourComparison.tsx';
import { formatNumber } from '../../state/locale-format.ts';
import { cssColourOf } from '../../state/screen-colour.ts';
import { calibrationTexts } from '../../texts/calibration-texts.ts';
import { ExcludePlaceButton } from './ExcludePlaceButton.tsx';

/** One swatch: its observed colour beside the predicted one. */
export function FittedSwatchLine({
  swatch: { painted, foreseen, deltaE00, unlikely },
  was,
  paints,
}: {
  swatch: FittedPainted;
  /** How visible its difference from the shelf's current prediction is; null when there is none. */
  was: keyof typeof calibrationTexts.wasBefore | null;
  paints: readonly Pick<PaintToFit, 'pigment' | 'label'>[];
}) {
  const place = placeOfId(painted.id);
  const name = swatchLabelOf(painted, paints);
  return (
    <div class="swatch-line">
      <ColourComparison
        wanted={{ name: calibrationTexts.seen, hex: cssColourOf(painted.lab) }}
        mixed={{ name: calibrationTexts.foreseen, hex: cssColourOf(foreseen) }}
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
          {calibrationTexts.differs[differenceWords(deltaE00)]}{' '}
          <span class="small">({formatNumber(deltaE00, 1)})</span>
        </p>
        {was && <p class="small">{calibrationTexts.wasBefore[was]}</p>}
        {unlikely && <p class="field-fault">{calibrationTexts.unlikely}</p>}
        <ExcludePlaceButton id={painted.id} name={name} />
      </div>
    </div>
  );
}
