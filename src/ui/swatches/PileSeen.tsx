import { useSignal } from '@preact/signals';
import { spectrum } from '../../colour/grid.ts';
import { labOfText } from '../../colour/typed.ts';
import { WorkLine } from '../harmony/mix/WorkLine.tsx';
import { said } from '../locale.ts';
import { Choice } from '../shelf/Choice.tsx';
import { ownStock } from '../shelf/state.ts';
import { saySwatches } from '../words/swatches.ts';
import { readFile } from './curves.ts';
import { PhotoButtons } from './PhotoButtons.tsx';
import { measured } from './pile.ts';
import { cameOut } from './piles.ts';
import { References } from './References.tsx';
import { lookAt, readFault, readFaultWords, readingWork, taken, takePhoto } from './reading.ts';
import type { Samples } from './sample.ts';
import { Touching } from './Touching.tsx';

type By = 'photo' | 'figures' | 'file';
const WAYS: readonly (readonly [By, string])[] = [
  ['photo', saySwatches.byPhoto],
  ['figures', saySwatches.byFigures],
  ['file', saySwatches.byFile],
];

/**
 * Input for the observed colour of a pile: by a photograph beside a white and a grey, as figures,
 * or as a spectrum.
 */
export function PileSeen() {
  const by = useSignal<By>(cameOut.value?.known === 'measured' ? 'figures' : 'photo');
  return (
    <fieldset class="swatch-fields">
      <legend>{saySwatches.pileSeen}</legend>
      {cameOut.value?.known === 'by eye' && <p>{saySwatches.asJudged}</p>}
      <div class="choice shelf-choice">
        {WAYS.map(([value, words]) => (
          <label key={value}>
            <input
              type="radio"
              name="pile-by"
              checked={by.value === value}
              onChange={() => {
                by.value = value;
              }}
            />
            <span>{words}</span>
          </label>
        ))}
      </div>
      {by.value === 'photo' && <ByPhoto />}
      {by.value === 'figures' && <ByFigures />}
      {by.value === 'file' && <ByFile />}
    </fieldset>
  );
}

const KINDS = ['white', 'grey', 'paint'] as const;

function ByPhoto() {
  const done = useSignal(false);
  const now = taken.value;
  return (
    <>
      <p>{saySwatches.pilePhotoAbout}</p>
      <References />
      <PhotoButtons
        onTake={(file) => {
          done.value = false;
          takePhoto(file);
        }}
      />
      <WorkLine work={readingWork} words={saySwatches.reading} />
      {readFault.value && (
        <p class="field-fault" role="alert">
          {said(readFault.value)}
        </p>
      )}
      {now && !done.value && (
        <Touching
          key={now.url}
          url={now.url}
          alt={saySwatches.photoOf(saySwatches.pileHeading)}
          turns={saySwatches.pileTurns.map((words, i) => ({ words, mark: `${i + 1}` }))}
          onDone={(points) => {
            done.value = true;
            const touches = KINDS.map((kind, i) => ({
              place: { number: i + 1, kind, label: kind, parts: [] },
              at: points[i]!,
            }));
            readFault.value = '';
            void lookAt(now.file, { kind: 'touch', touches }).then((looked) => {
              if (!looked || taken.peek() !== now) return;
              if (looked.read.ok)
                cameOut.value = {
                  lab: looked.read.value.places[0]!.lab,
                  known: 'photographed',
                  R: null,
                };
              else {
                readFault.value = readFaultWords(looked.read.fault);
                done.value = false;
              }
            });
          }}
        />
      )}
    </>
  );
}

function ByFigures() {
  const text = useSignal('');
  const lab = labOfText(text.value);
  const isWrong = text.value.trim() !== '' && lab === null;
  return (
    <label>
      {saySwatches.lab}
      <input
        type="text"
        inputMode="text"
        placeholder="52 14 28"
        value={text}
        aria-invalid={isWrong}
        onInput={(event) => {
          text.value = event.currentTarget.value;
          const typed = labOfText(text.value);
          cameOut.value = typed && { lab: typed, known: 'measured', R: null };
        }}
      />
      {isWrong && (
        <span class="field-fault" role="alert">
          {saySwatches.labFault}
        </span>
      )}
    </label>
  );
}

function ByFile() {
  const file = useSignal<Samples | null>(null);
  const fault = useSignal('');
  const at = useSignal(0);
  const take = (of: Samples, chosen: number) => {
    at.value = chosen;
    const sample = of.samples[chosen]!;
    cameOut.value = measured(spectrum<'R'>(sample.reflectance), of.specular, ownStock.value);
  };
  return (
    <>
      <label>
        {saySwatches.curvesFile}
        <input
          type="file"
          accept=".csv,.txt,.cgats,.cgt,.ti3,text/csv,text/plain"
          onChange={(event) => {
            const chosen = event.currentTarget.files?.[0];
            if (!chosen) return;
            void readFile(chosen).then((read) => {
              fault.value = read.ok ? '' : read.fault;
              file.value = read.ok ? read.value : null;
              if (read.ok) take(read.value, 0);
            });
          }}
        />
      </label>
      {fault.value && (
        <p class="field-fault" role="alert">
          {fault.value}
        </p>
      )}
      {file.value && file.value.samples.length > 1 && (
        <Choice
          label={saySwatches.whichSample}
          options={file.value.samples.map(({ name }, i) => [String(i), name] as const)}
          chosen={String(at.value)}
          onChoose={(chosen) => take(file.value!, Number(chosen))}
        />
      )}
    </>
  );
}
