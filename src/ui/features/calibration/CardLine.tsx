import type { Entry } from '../../../book/schema/record.ts';
import { PAPER_MM } from '../../../calibration/swatch-card.ts';
import { hexOf } from '../../../colour/gamut-mapping.ts';
import { calibrationTexts, dayWords } from '../../texts/calibration-texts.ts';
import { hrefTo } from './calibration-routes.ts';
import { binEntry } from './swatch-cards.ts';

/** One card in the list: a small drawing with the colours read so far, and its actions. */
export function CardLine({ card }: { card: Entry<'card'> }) {
  const { id, body } = card;
  const { name, plan, reading, leftOut } = body;
  const painted = plan.places.filter(({ kind }) => kind === 'paint');
  return (
    <div class="swatch-card">
      <a href={hrefTo('card', id)} aria-label={`${calibrationTexts.seeIt}: ${name}`}>
        <Small card={card} />
      </a>
      <div>
        <h3 class="swatch-name">{name}</h3>
        <p class="small">
          {reading
            ? [
                calibrationTexts.wasRead(dayWords(reading.date), reading.places.length),
                ...(leftOut.length > 0 ? [calibrationTexts.lefts(leftOut.length)] : []),
              ].join(', ')
            : calibrationTexts.waits(painted.length)}
        </p>
        <p class="swatch-actions">
          <a
            class="button"
            href={hrefTo('read', id)}
            aria-label={`${reading ? calibrationTexts.readAgain : calibrationTexts.readIt}: ${name}`}
          >
            {reading ? calibrationTexts.readAgain : calibrationTexts.readIt}
          </a>
          <button
            type="button"
            class="quiet"
            aria-label={`${calibrationTexts.remove}: ${name}`}
            onClick={() => void binEntry(card)}
          >
            {calibrationTexts.remove}
          </button>
        </p>
      </div>
    </div>
  );
}

function Small({ card: { body } }: { card: Entry<'card'> }) {
  const { plan, reading } = body;
  const [width, height] = PAPER_MM[plan.paper];
  const colourOf = (number: number) =>
    reading?.places.find((place) => place.number === number)?.lab ?? null;
  return (
    <svg class="swatch-small" viewBox={`0 0 ${width} ${height}`} width="84" aria-hidden="true">
      <rect width={width} height={height} fill="#fff" />
      {plan.places.map((place) => {
        const lab = colourOf(place.number);
        const fill =
          lab !== null
            ? hexOf(lab)
            : { white: '#f1f1f1', grey: '#767676', black: '#1c1c1c', paint: 'none' }[place.kind];
        return (
          <rect
            key={place.number}
            x={place.x - place.width / 2}
            y={place.y - place.height / 2}
            width={place.width}
            height={place.height}
            fill={fill}
            stroke="#777"
            stroke-width="1.2"
          />
        );
      })}
    </svg>
  );
}
