import { placeOfId } from '../../book/learnt.ts';
import { nameOf } from '../../colour/words.ts';
import { shownOf } from '../drawn/screen.ts';
import { Brushed } from '../shelf/Brushed.tsx';
import { ownStock } from '../shelf/state.ts';
import { pileWords } from './cards.ts';
import { LeaveOut } from './LeaveOut.tsx';
import { learnt } from './records.ts';

/**
 * The observed swatches when the fit failed, so that the painter can leave out the one that causes
 * it.
 */
export function SeenOnly() {
  const stock = ownStock.value;
  return (
    <ul class="swatch-lines">
      {(learnt.value?.swatches ?? []).map(({ id, parts, lab }) => {
        const number = placeOfId(id)?.number ?? '';
        const name = `${number} ${pileWords(parts, stock)}`.trim();
        return (
          <li key={id}>
            <Brushed
              name={id}
              width={96}
              height={34}
              strokes={[{ hex: shownOf(lab), words: nameOf(lab) }]}
            />
            <span>
              <strong>{name}</strong>
              <br />
              <LeaveOut id={id} name={name} />
            </span>
          </li>
        );
      })}
    </ul>
  );
}
