import type { Entry } from '../../book/record.ts';
import { complain } from '../studio.ts';
import { sayPalette } from '../words/palette.ts';
import { AllPiles } from './AllPiles.tsx';
import { Canvas } from './Canvas.tsx';
import { Coats } from './Coats.tsx';
import { dayHref, palettes, toDay } from './days.ts';
import { Faults } from './Faults.tsx';
import { Select, TextField } from './Fields.tsx';
import { pilesFrom } from './from.ts';
import { HandPile } from './HandPile.tsx';
import { PileForm } from './PileForm.tsx';
import {
  addPiles,
  changePassage,
  deletePassage,
  moveTo,
  newId,
  putOn,
  takeOff,
} from './passages.ts';
import { Sources } from './Sources.tsx';

/** A passage: its canvas, its piles and its coats so far. */
export function PassageView({ passage }: { passage: Entry<'passage'> }) {
  const { body, id } = passage;
  const on = palettes.value.find((palette) => palette.body.passages.includes(id));
  return (
    <section class="page pal-page has-bar">
      <p class="pal-crumb">
        <a href={dayHref()}>{sayPalette.toDay}</a>
      </p>
      <h1 tabIndex={-1}>{body.name}</h1>
      <Faults />
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
            onKeep={(to) =>
              void moveTo(passage, palettes.value.find((one) => one.id === to) ?? null)
            }
          />
        ) : (
          <p class="field">
            <button type="button" onClick={() => void putOn(id, palettes.value[0] ?? null)}>
              {sayPalette.putOnDay}
            </button>
          </p>
        )}
      </div>
      <h2>{sayPalette.piles}</h2>
      {body.piles.length === 0 && <p>{sayPalette.noPiles}</p>}
      {body.piles.length > 1 && <AllPiles passage={passage} />}
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
              void takeOff(passage);
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
            await deletePassage(passage);
            toDay();
          }}
        >
          {sayPalette.deletePassage}
        </button>
      </p>
    </section>
  );
}
