import { useSignal } from '@preact/signals';
import { spectrum } from '../../../colour/grid.ts';
import { parseLab } from '../../../colour/parse-lab.ts';
import { JobProgress } from '../../components/JobProgress.tsx';
import { SelectField } from '../../components/SelectField.tsx';
import { calibrationTexts } from '../../texts/calibration-texts.ts';
import { ownStock } from '../shelf/stock-state.ts';
import {
  cardPhoto,
  readFault,
  readFaultWords,
  readingWork,
  readMarkedPhoto,
  takePhoto,
} from './card-reading.ts';
import { readFile } from './import-curve-samples.ts';
import { PhotoButtons } from './PhotoButtons.tsx';
import { PointMarker } from './PointMarker.tsx';
import { observedPile } from './pile-log.ts';
import { observedFromSpectrum } from './pile-prediction.ts';
import { ReferenceFields } from './ReferenceFields.tsx';
import type { Samples } from './sample-file.ts';

type By = 'photo' | 'figures' | 'file';
const WAYS: readonly (readonly [By, string])[] = [
  ['photo', calibrationTexts.byPhoto],
  ['figures', calibrationTexts.byFigures],
  ['file', calibrationTexts.byFile],
];

/**
 * Input for the observed colour of a pile: by a photograph beside a white and a grey, as figures,
 * or as a spectrum.
 */
export function ObservedColourFields() {
  const by = useSignal<By>(observedPile.value?.known === 'measured' ? 'figures' : 'photo');
  return (
    <fieldset class="swatch-fields">
      <legend>{calibrationTexts.pileSeen}</legend>
      {observedPile.value?.known === 'by eye' && <p>{calibrationTexts.asJudged}</p>}
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
  const now = cardPhoto.value;
  return (
    <>
      <p>{calibrationTexts.pilePhotoAbout}</p>
      <ReferenceFields />
      <PhotoButtons
        onTake={(file) => {
          done.value = false;
          takePhoto(file);
        }}
      />
      <JobProgress work={readingWork} words={calibrationTexts.reading} />
      {readFault.value && (
        <p class="field-fault" role="alert">
          {readFault.value}
        </p>
      )}
      {now && !done.value && (
        <PointMarker
          key={now.url}
          url={now.url}
          alt={calibrationTexts.photoOf(calibrationTexts.pileHeading)}
          turns={calibrationTexts.pileTurns.map((words, i) => ({ words, mark: `${i + 1}` }))}
          onDone={(points) => {
            done.value = true;
            const touches = KINDS.map((kind, i) => ({
              place: { number: i + 1, kind, label: kind, parts: [] },
              at: points[i]!,
            }));
            readFault.value = '';
            void readMarkedPhoto(now.file, { kind: 'touch', touches }).then((looked) => {
              if (!looked || cardPhoto.peek() !== now) return;
              if (looked.read.ok)
                observedPile.value = {
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
  const lab = parseLab(text.value);
  const isWrong = text.value.trim() !== '' && lab === null;
  return (
    <label>
      {calibrationTexts.lab}
      <input
        type="text"
        inputMode="text"
        placeholder="52 14 28"
        value={text}
        aria-invalid={isWrong}
        onInput={(event) => {
          text.value = event.currentTarget.value;
          const typed = parseLab(text.value);
          observedPile.value = typed && { lab: typed, known: 'measured', R: null };
        }}
      />
      {isWrong && (
        <span class="field-fault" role="alert">
          {calibrationTexts.labFault}
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
    observedPile.value = observedFromSpectrum(
      spectrum<'R'>(sample.reflectance),
      of.specular,
      ownStock.value,
    );
  };
  return (
    <>
      <label>
        {calibrationTexts.curvesFile}
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
        <SelectField
          label={calibrationTexts.whichSample}
          options={file.value.samples.map(({ name }, i) => [String(i), name] as const)}
          chosen={String(at.value)}
          onChoose={(chosen) => take(file.value!, Number(chosen))}
        />
      )}
    </>
  );
}
