import { saySwatches } from '../words/swatches.ts';
import { DownloadLine } from './DownloadLine.tsx';
import { KeptReading } from './KeptReading.tsx';
import { lessons } from './records.ts';
import { hrefTo } from './routes.ts';
import { Sheet } from './Sheet.tsx';

/** A saved card, to print again or to read. */
export function CardSheet({ id }: { id: string }) {
  const card = lessons.value?.cards.find((each) => each.id === id);
  if (!card)
    return (
      <>
        <h1 tabIndex={-1}>{saySwatches.cardsHeading}</h1>
        <p>{saySwatches.gone}</p>
      </>
    );
  const { name, plan, reading } = card.body;
  return (
    <>
      <h1 tabIndex={-1} class="swatch-screen swatch-name">
        {name}
      </h1>
      <div class="swatch-actions swatch-screen">
        <a class="button main" href={hrefTo('read', id)}>
          {reading ? saySwatches.readAgain : saySwatches.readIt}
        </a>
        <DownloadLine cards={[plan]} />
      </div>
      {reading && <KeptReading card={card} reading={reading} />}
      <Sheet card={plan} />
    </>
  );
}
