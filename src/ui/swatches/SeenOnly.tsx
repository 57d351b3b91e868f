import { placeOfId } from '../../book/learnt.ts';
import { nameOf } from '../../colour/words.ts';
import { cssColourOf } from '../drawn/screen.ts';
import { BrushedPaint } from '../shelf/Brushed.tsx';
import { ownStock } from '../shelf/state.ts';
import { pileWords } from './cards.ts';
import { ExcludePlaceButton } from './LeaveOut.tsx';
import { currentEvidence } from './records.ts';

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
        const name = `${number} ${pileWords(parts, stock)}`.trim();
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
