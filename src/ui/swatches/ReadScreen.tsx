import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { Entry } from '../../book/record.ts';
import { WorkLine } from '../harmony/mix/WorkLine.tsx';
import { said } from '../locale.ts';
import { saySwatches } from '../words/swatches.ts';
import { ChartIn } from './ChartIn.tsx';
import { KeptReading } from './KeptReading.tsx';
import { PhotoButtons } from './PhotoButtons.tsx';
import { References } from './References.tsx';
import {
  chartCorners,
  chartLabs,
  corners,
  forgetPhoto,
  inTheWay,
  readAs,
  readFault,
  readingWork,
  seen,
  shown,
  taken,
  takePhoto,
  without,
} from './reading.ts';
import { lessons } from './records.ts';
import { hrefTo } from './routes.ts';
import { SeenPlaces } from './SeenPlaces.tsx';
import { Touching } from './Touching.tsx';

type Way = 'corners' | 'places' | 'chart';

/** Reads the colours of a card's places from a photograph. */
export function ReadScreen({ id }: { id: string }) {
  const card = lessons.value?.cards.find((each) => each.id === id);
  useEffect(() => forgetPhoto, [id]);
  if (!card)
    return (
      <>
        <h1 tabIndex={-1}>{saySwatches.readHeading}</h1>
        <p>{saySwatches.gone}</p>
      </>
    );
  return (
    <>
      <h1 tabIndex={-1}>{saySwatches.readHeading}</h1>
      <p class="swatch-name">{card.body.name}</p>
      <Reader card={card} />
    </>
  );
}

function Reader({ card }: { card: Entry<'card'> }) {
  const way = useSignal<Way | null>(null);
  const now = taken.value;
  const { name, plan } = card.body;
  const isWorking = readingWork.progress.value !== null;
  const take = (file: File) => {
    way.value = null;
    takePhoto(file);
    void readAs(card);
  };
  const places = plan.places.filter(({ kind }) => kind !== 'black');
  const turns = {
    corners: saySwatches.cornerTurns.map((words, i) => ({ words, mark: `${i + 1}` })),
    chart: saySwatches.chartTurns.map((words, i) => ({ words, mark: `${i + 1}` })),
    places: places.map(({ number, label }) => ({
      words: saySwatches.placeTurn(number, label),
      mark: `${number}`,
      mayMiss: true,
    })),
  };
  return (
    <>
      {way.value === null && (
        <>
          <p class="lead">{saySwatches.readLead}</p>
          <PhotoButtons onTake={take} main={seen.value === null} />
          <div>
            <References />
            <ChartIn onTouch={() => (way.value = 'chart')} canTouch={now !== null} />
          </div>
        </>
      )}
      <WorkLine work={readingWork} words={saySwatches.reading} />
      {readFault.value && (
        <p class="field-fault" role="alert">
          {said(readFault.value)}
        </p>
      )}
      {inTheWay.value !== null && way.value === null && (
        <p>
          <button
            type="button"
            onClick={() => {
              without.value = [...without.value, inTheWay.value!];
              void readAs(card);
            }}
          >
            {saySwatches.withoutPlace(inTheWay.value)}
          </button>
        </p>
      )}
      {now && way.value === null && !isWorking && (
        <p class="swatch-actions">
          {seen.value && (
            <a class="button main" href={hrefTo('fit')}>
              {saySwatches.toFit}
            </a>
          )}
          <button type="button" onClick={() => (way.value = 'corners')}>
            {saySwatches.byCorners}
          </button>
          <button type="button" onClick={() => (way.value = 'places')}>
            {saySwatches.byPlaces}
          </button>
        </p>
      )}
      {now && way.value !== null && (
        <Touching
          key={way.value}
          url={now.url}
          alt={saySwatches.photoOf(name)}
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
      {now && way.value === null && <SeenPlaces url={now.url} name={name} shown={shown.value} />}
      {!now && card.body.reading && <KeptReading card={card} reading={card.body.reading} />}
      {chartLabs.value && seen.value?.chart && (
        <p>{saySwatches.chartUsed(seen.value.chart.mean)}</p>
      )}
    </>
  );
}
