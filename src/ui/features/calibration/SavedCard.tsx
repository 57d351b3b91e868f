import { evidenceEntries } from '../../state/calibration/evidence.ts';
import { calibrationTexts } from '../../texts/calibration-texts.ts';
import { CardExport } from './CardExport.tsx';
import { CardPage } from './CardPage.tsx';
import { hrefTo } from './calibration-routes.ts';
import { SavedReading } from './SavedReading.tsx';

/** A saved card, to print again or to read. */
export function SavedCard({ id }: { id: string }) {
  const card = evidenceEntries.value?.cards.find((each) => each.id === id);
  if (!card)
    return (
      <>
        <h1 tabIndex={-1}>{calibrationTexts.cardsHeading}</h1>
        <p>{calibrationTexts.gone}</p>
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
          {reading ? calibrationTexts.readAgain : calibrationTexts.readIt}
        </a>
        <CardExport cards={[plan]} />
      </div>
      {reading && <SavedReading card={card} reading={reading} />}
      <CardPage card={plan} />
    </>
  );
}
