import { masstonesOf } from '../../../pigment/nearest-masstone.ts';
import { midSentence } from '../../../wording.ts';
import { shelf } from '../../state/studio.ts';
import { shelfTexts } from '../../texts/shelf-texts.ts';
import { ownStock, setGlareView } from './stock-state.ts';

const WAYS = ['included', 'excluded'] as const;

/**
 * Setting: whether paint is viewed with the specular reflection of its surface, or without glare.
 */
export function GlareSetting() {
  const now = ownStock.value.surface.specular;
  const deepest = masstonesOf(shelf.value).reduce((low, one) =>
    one.lab[0] < low.lab[0] ? one : low,
  );
  return (
    <fieldset>
      <legend>{shelfTexts.seenHeading}</legend>
      <div class="choice">
        {WAYS.map((way) => (
          <label key={way}>
            <input
              type="radio"
              name="seen-as"
              checked={way === now}
              onChange={() => void setGlareView(way)}
            />
            <span>{shelfTexts.seenAs[way].name}</span>
          </label>
        ))}
      </div>
      <p class="small">
        {shelfTexts.seenAs[now].about}{' '}
        {shelfTexts.deepest(midSentence(deepest.label), deepest.lab[0])}
      </p>
    </fieldset>
  );
}
