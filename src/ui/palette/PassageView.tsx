import type { Entry } from '../../book/record.ts';
import { drynessOf } from '../../palette/drying.ts';
import { paletteFaultWords } from '../../palette/faults.ts';
import type { DryState } from '../../palette/passage.ts';
import { drynessWords } from '../../palette/said.ts';
import { dateWords, inchesOf, readLength, said } from '../locale.ts';
import { complain } from '../studio.ts';
import { addPiles, changePassage, moveTo, newId, putOn, takeOff } from './acts.ts';
import { NumberField, Select, TextField } from './Fields.tsx';
import { pilesFrom } from './from.ts';
import { HandPile } from './HandPile.tsx';
import { passageOf } from './kept.ts';
import { PileForm } from './PileForm.tsx';
import { Sources } from './Sources.tsx';
import { date, dayHref, faults, palettes, remove } from './state.ts';
import { sayPalette } from './words.ts';

const STATES: readonly DryState[] = ['wet', 'tacky', 'touch-dry'];

/** A passage: its canvas, its piles, the coats it has had. */
export function PassageView({ passage }: { passage: Entry<'passage'> }) {
  const { body, id } = passage;
  const on = palettes.value.find((palette) => palette.body.passages.includes(id));
  return (
    <section class="page pal-page has-bar">
      <p class="pal-crumb">
        <a href={dayHref()}>{sayPalette.toDay}</a>
      </p>
      <h1 tabIndex={-1}>{body.name}</h1>
      {faults.value.length > 0 && (
        <div class="pal-faults" role="alert">
          <ul>
            {faults.value.map((fault) => (
              <li key={paletteFaultWords(fault)}>{paletteFaultWords(fault)}</li>
            ))}
          </ul>
        </div>
      )}
      <div class="pal-fields">
        <TextField
          label={sayPalette.nameOf}
          value={body.name}
          needed
          onKeep={(name) => void changePassage(passage, { name })}
        />
        <TextField
          label={sayPalette.painting}
          value={body.painting}
          onKeep={(painting) => void changePassage(passage, { painting })}
        />
        <Canvas passage={passage} />
        {on ? (
          <Select
            label={sayPalette.onPalette}
            value={on.id}
            options={[
              ...palettes.value.map((one) => [one.id, one.body.name] as const),
              ...(on.body.passages.length > 1 ? [['', sayPalette.ownPalette] as const] : []),
            ]}
            onKeep={(to) => void moveTo(id, palettes.value.find((one) => one.id === to) ?? null)}
          />
        ) : (
          <p class="pal-field">
            <button type="button" onClick={() => void putOn(id, palettes.value[0] ?? null)}>
              {sayPalette.putOnDay}
            </button>
          </p>
        )}
      </div>
      <h2>{sayPalette.piles}</h2>
      {body.piles.length === 0 && <p>{sayPalette.noPiles}</p>}
      {body.piles.map((pile, at) => (
        <PileForm key={pile.id ?? at} passage={passage} at={at} />
      ))}
      <HandPile passage={passage} />
      <details>
        <summary>{sayPalette.takeFromBook}</summary>
        <Sources
          onTake={(source) => {
            const piles = pilesFrom(source, newId);
            if (piles.length === 0) complain(sayPalette.nothingMixed);
            else void addPiles(passage, piles);
          }}
        />
      </details>
      <h2>{sayPalette.coatsHad}</h2>
      <Coats passage={passage} />
      <p class="keep-bar">
        <a class="button main" href={dayHref()}>
          {sayPalette.toDay}
        </a>
      </p>
      <p class="pal-actions">
        {on && (
          <button
            type="button"
            onClick={() => {
              void takeOff(id);
              toDay();
            }}
          >
            {sayPalette.takeOff}
          </button>
        )}
        <button
          type="button"
          class="quiet"
          onClick={async () => {
            await takeOff(id);
            await remove(id, sayPalette.deleted(body.name));
            toDay();
          }}
        >
          {sayPalette.deletePassage}
        </button>
      </p>
    </section>
  );
}

const toDay = () => {
  location.hash = dayHref();
};

function Canvas({ passage }: { passage: Entry<'passage'> }) {
  const { canvas } = passage.body;
  const put = (side: 'widthCm' | 'heightCm', value: number | undefined) =>
    void changePassage(passage, (body) => ({
      canvas: { widthCm: 0, heightCm: 0, ...body.canvas, [side]: value ?? 0 },
    }));
  const sized = canvas && canvas.widthCm > 0 && canvas.heightCm > 0;
  return (
    <>
      <NumberField
        label={sayPalette.canvasWidth}
        value={canvas?.widthCm || undefined}
        empty
        read={readLength}
        onKeep={(value) => put('widthCm', value)}
      />
      <NumberField
        label={sayPalette.canvasHeight}
        value={canvas?.heightCm || undefined}
        empty
        read={readLength}
        help={
          sized
            ? sayPalette.inches(inchesOf(canvas.widthCm), inchesOf(canvas.heightCm))
            : sayPalette.canvasHelp
        }
        onKeep={(value) => put('heightCm', value)}
      />
    </>
  );
}

function Coats({ passage }: { passage: Entry<'passage'> }) {
  const { coats } = passage.body;
  if (coats.length === 0) return <p>{sayPalette.noCoats}</p>;
  const { layers } = passageOf(passage);
  return (
    <ol class="pal-coats">
      {layers.map((layer, at) => {
        const felt = layer.felt?.date === date.value ? layer.felt.state : '';
        return (
          <li key={at}>
            <p>
              {dateWords(layer.date)}, {layer.film}:{' '}
              {layer.date <= date.value && said(drynessWords(drynessOf(layer, date.value)))}
            </p>
            <Select
              label={sayPalette.touch}
              value={felt}
              options={[
                ['', sayPalette.notTouched] as const,
                ...STATES.map((state) => [state, sayPalette.touched[state]] as const),
              ]}
              onKeep={(state) => {
                const { felt: _, ...coat } = coats[at]!;
                const touched =
                  state === '' ? coat : { ...coat, felt: { date: date.value, state } };
                void changePassage(passage, { coats: coats.with(at, touched) });
              }}
            />
            <button
              type="button"
              class="quiet"
              onClick={() =>
                void changePassage(passage, { coats: coats.filter((_, i) => i !== at) })
              }
            >
              {sayPalette.removeCoat}
            </button>
          </li>
        );
      })}
    </ol>
  );
}
