import type { Entry } from '../../../book/schema/record.ts';
import { newId } from '../../state/new-id.ts';
import { dayHref, dayPalettes, openDay } from '../../state/palette/day-entries.ts';
import { showError } from '../../state/studio.ts';
import { paletteTexts } from '../../texts/palette-texts.ts';
import { AllPilesForm } from './AllPilesForm.tsx';
import { CanvasSizeFields } from './CanvasSizeFields.tsx';
import { ManualPileForm } from './ManualPileForm.tsx';
import { PassageCoats } from './PassageCoats.tsx';
import { PassageSourceList } from './PassageSourceList.tsx';
import { PileForm } from './PileForm.tsx';
import { PlanFaults } from './PlanFaults.tsx';
import {
  addPiles,
  addToPalette,
  changePassage,
  deletePassage,
  movePassage,
  takePassageOff,
} from './passage-actions.ts';
import { pilesOfSource } from './passage-sources.ts';
import { StoredSelect, TextField } from './StoredFields.tsx';

/** A passage: its canvas, its piles and its coats so far. */
export function PassageView({ passage }: { passage: Entry<'passage'> }) {
  const { body, id } = passage;
  const on = dayPalettes.value.find((palette) => palette.body.passages.includes(id));
  return (
    <section class="page pal-page has-bar">
      <p class="pal-crumb">
        <a href={dayHref()}>{paletteTexts.toDay}</a>
      </p>
      <h1 tabIndex={-1}>{body.name}</h1>
      <PlanFaults />
      <div class="pal-fields">
        <TextField
          label={paletteTexts.nameOf}
          value={body.name}
          needed
          onKeep={(name) => void changePassage(passage, { name })}
        />
        <TextField
          label={paletteTexts.painting}
          value={body.painting}
          onKeep={(painting) => void changePassage(passage, { painting })}
        />
        <CanvasSizeFields passage={passage} />
        {on ? (
          <StoredSelect
            label={paletteTexts.onPalette}
            value={on.id}
            options={[
              ...dayPalettes.value.map((one) => [one.id, one.body.name] as const),
              ...(on.body.passages.length > 1 ? [['', paletteTexts.ownPalette] as const] : []),
            ]}
            onKeep={(to) =>
              void movePassage(passage, dayPalettes.value.find((one) => one.id === to) ?? null)
            }
          />
        ) : (
          <p class="field">
            <button
              type="button"
              onClick={() => void addToPalette(id, dayPalettes.value[0] ?? null)}
            >
              {paletteTexts.putOnDay}
            </button>
          </p>
        )}
      </div>
      <h2>{paletteTexts.piles}</h2>
      {body.piles.length === 0 && <p>{paletteTexts.noPiles}</p>}
      {body.piles.length > 1 && <AllPilesForm passage={passage} />}
      {body.piles.map((pile, at) => (
        <PileForm key={pile.id ?? at} passage={passage} at={at} />
      ))}
      <ManualPileForm passage={passage} />
      <details>
        <summary>{paletteTexts.takeFromBook}</summary>
        <PassageSourceList
          onTake={(source) => {
            const piles = pilesOfSource(source, newId);
            if (piles.length === 0) showError(paletteTexts.nothingMixed);
            else void addPiles(passage, piles);
          }}
        />
      </details>
      <h2>{paletteTexts.coatsHad}</h2>
      <PassageCoats passage={passage} />
      <p class="keep-bar">
        <a class="button main" href={dayHref()}>
          {paletteTexts.toDay}
        </a>
      </p>
      <p class="pal-actions">
        {on && (
          <button
            type="button"
            onClick={() => {
              void takePassageOff(passage);
              openDay();
            }}
          >
            {paletteTexts.takeOff}
          </button>
        )}
        <button
          type="button"
          class="quiet"
          onClick={async () => {
            await deletePassage(passage);
            openDay();
          }}
        >
          {paletteTexts.deletePassage}
        </button>
      </p>
    </section>
  );
}
