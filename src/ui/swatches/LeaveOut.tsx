import { placeOfId } from '../../book/learnt.ts';
import { saySwatches } from '../words/swatches.ts';
import { leaveOut } from './keeping.ts';
import { lessons } from './records.ts';

/**
 * Button that excludes one place of a card from calibration. Renders nothing for other evidence.
 */
export function LeaveOut({ id, name }: { id: string; name: string }) {
  const place = placeOfId(id);
  const card = place && lessons.value?.cards.find((each) => each.id === place.card);
  if (!card || !place) return null;
  return (
    <button
      type="button"
      class="quiet"
      aria-label={`${saySwatches.leaveOut}: ${name}`}
      onClick={() => void leaveOut(card.id, [...card.body.leftOut, place.number])}
    >
      {saySwatches.leaveOut}
    </button>
  );
}
