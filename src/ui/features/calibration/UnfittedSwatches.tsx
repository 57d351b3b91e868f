import { placeOfId } from '../../../book/schema/calibration-evidence.ts';
import { nameOf } from '../../../colour/describe-colour.ts';
import { BrushedPaint } from '../../components/BrushedPaint.tsx';
import { currentEvidence } from '../../state/calibration/evidence.ts';
import { cssColourOf } from '../../state/screen-colour.ts';
import { ownStock } from '../shelf/stock-state.ts';
import { ExcludePlaceButton } from './ExcludePlaceButton.tsx';
import { compositionWords } from './swatch-cards.ts';

/**
 * The observed swatches when the fit failed, so that the painter can leave out the one that causes
 * it.
 */
export function UnfittedSwatches() {
  const stock = ownStock.value;
  return (
    <ul class="swatch-lines">
      {(currentEvidence.value?.swatches ?? []).map(({ id, parts, lab }) => {
        const number = placeOfId(id)?.number ?? '';
        const name = `${number} ${compositionWords(parts, stock)}`.trim();
        return (
          <li key={id}>
            <BrushedPaint
              name={id}
              width={96}
              height={34}
              strokes={[{ hex: cssColourOf(lab), words: nameOf(lab) }]}
            />
            <span>
              <strong>{name}</strong>
              <br />
              <ExcludePlaceButton id={id} name={name} />
            </span>
          </li>
        );
      })}
    </ul>
  );
}
