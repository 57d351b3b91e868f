import { placeOfId } from '../../../book/schema/calibration-evidence.ts';
import { evidenceEntries } from '../../state/calibration/evidence.ts';
import { calibrationTexts } from '../../texts/calibration-texts.ts';
import { leaveOut } from './save-reading.ts';

/**
 * Button that excludes one place of a card from calibration. Renders nothing for other evidence.
 */
export function ExcludePlaceButton({ id, name }: { id: string; name: string }) {
  const place = placeOfId(id);
  const card = place && evidenceEntries.value?.cards.find((each) => each.id === place.card);
  if (!card || !place) return null;
  return (
    <button
      type="button"
      class="quiet"
      aria-label={`${calibrationTexts.leaveOut}: ${name}`}
      onClick={() => void leaveOut(card.id, [...card.body.leftOut, place.number])}
    >
      {calibrationTexts.leaveOut}
    </button>
  );
}
