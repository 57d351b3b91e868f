import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { Entry } from '../../../book/schema/record.ts';
import { JobProgress } from '../../components/JobProgress.tsx';
import { evidenceEntries } from '../../state/calibration/evidence.ts';
import { calibrationTexts } from '../../texts/calibration-texts.ts';
import { CardPlaces } from './CardPlaces.tsx';
import { ColourChartFields } from './ColourChartFields.tsx';
import { hrefTo } from './calibration-routes.ts';
import {
  blockingPlace,
  cardPhoto,
  cardReading,
  chartCorners,
  chartLabs,
  corners,
  displayedReading,
  forgetPhoto,
  ignoredPlaces,
  readAs,
  readFault,
  readingWork,
  takePhoto,
} from './card-reading.ts';
import { PhotoButtons } from './PhotoButtons.tsx';
import { PointMarker } from './PointMarker.tsx';
import { ReferenceFields } from './ReferenceFields.tsx';
import { SavedReading } from './SavedReading.tsx';

type Way = 'corners' | 'places' | 'chart';

/** Reads the colours of a card's places from a photograph. */
export function ReadCardScreen({ id }: { id: string }) {
  const card = evidenceEntries.value?.cards.find((each) => each.id === id);
  useEffect(() => forgetPhoto, [id]);
  if (!card)
    return (
      <>
        <h1 tabIndex={-1}>{calibrationTexts.readHeading}</h1>
        <p>{calibrationTexts.gone}</p>
      </>
    );
  return (
    <>
      <h1 tabIndex={-1}>{calibrationTexts.readHeading}</h1>
      <p class="swatch-name">{card.body.name}</p>
      <Reader card={card} />
    </>
  );
}

function Reader({ card }: { card: Entry<'card'> }) {
  const way = useSignal<Way | null>(null);
  const now = cardPhoto.value;
  const { name, plan } = card.body;
  const isWorking = readingWork.progress.value !== null;
  const take = (file: File) => {
    way.value = null;
    takePhoto(file);
    void readAs(card);
  };
  const places = plan.places.filter(({ kind }) => kind !== 'black');
  const turns = {
    corners: calibrationTexts.cornerTurns.map((words, i) => ({ words, mark: `${i + 1}` })),
    chart: calibrationTexts.chartTurns.map((words, i) => ({ words, mark: `${i + 1}` })),
    places: places.map(({ number, label }) => ({
      words: calibrationTexts.placeTurn(number, label),
      mark: `${number}`,
      mayMiss: true,
    })),
  };
  return (
    <>
      {way.value === null && (
        <>
          <p class="lead">{calibrationTexts.readLead}</p>
          <PhotoButtons onTake={take} main={cardReading.value === null} />
          <div>
            <ReferenceFields />
            <ColourChartFields onTouch={() => (way.value = 'chart')} canTouch={now !== null} />
          </div>
        </>
      )}
      <JobProgress work={readingWork} words={calibrationTexts.reading} />
      {readFault.value && (
        <p class="field-fault" role="alert">
          {readFault.value}
        </p>
      )}
      {blockingPlace.value !== null && way.value === null && (
        <p>
          <button
            type="button"
            onClick={() => {
              ignoredPlaces.value = [...ignoredPlaces.value, blockingPlace.value!];
              void readAs(card);
            }}
          >
            {calibrationTexts.withoutPlace(blockingPlace.value)}
          </button>
        </p>
      )}
      {now && way.value === null && !isWorking && (
        <p class="swatch-actions">
          {cardReading.value && (
            <a class="button main" href={hrefTo('fit')}>
              {calibrationTexts.toFit}
            </a>
          )}
          <button type="button" onClick={() => (way.value = 'corners')}>
            {calibrationTexts.byCorners}
          </button>
          <button type="button" onClick={() => (way.value = 'places')}>
            {calibrationTexts.byPlaces}
          </button>
        </p>
      )}
      {now && way.value !== null && (
        <PointMarker
          key={way.value}
          url={now.url}
          alt={calibrationTexts.photoOf(name)}
          turns={turns[way.value]}
          onLeave={() => (way.value = null)}
          onDone={(points) => {
            const how = way.value;
            way.value = null;
            if (how === 'places') {
              const touches = places.flatMap((place, i) =>
                points[i] ? [{ place, at: points[i] }] : [],
              );
              void readAs(card, touches);
              return;
            }
            (how === 'corners' ? corners : chartCorners).value = points.filter((p) => p !== null);
            void readAs(card);
          }}
        />
      )}
      {now && way.value === null && (
        <CardPlaces url={now.url} name={name} shown={displayedReading.value} />
      )}
      {!now && card.body.reading && <SavedReading card={card} reading={card.body.reading} />}
      {chartLabs.value && cardReading.value?.chart && (
        <p>{calibrationTexts.chartUsed(cardReading.value.chart.mean)}</p>
      )}
    </>
  );
}
