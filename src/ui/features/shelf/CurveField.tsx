import { type Signal, useSignal } from '@preact/signals';
import { hexOf, labOfHex } from '../../../colour/gamut-mapping.ts';
import { type Spectrum, spectrum } from '../../../colour/grid.ts';
import type { Lab } from '../../../colour/lab.ts';
import { parseLab } from '../../../colour/parse-lab.ts';
import type { Paint } from '../../../optics/opaque.ts';
import { paintOfColour, SCATTERING } from '../../../pigment/paint-from-masstone.ts';
import type { Opacity } from '../../../pigment/pigment-facts.ts';
import type { StoredCurve } from '../../../pigment/stock.ts';
import { BrushedPaint } from '../../components/BrushedPaint.tsx';
import { optionsOf, SelectField } from '../../components/SelectField.tsx';
import { HIDING_WORDS, shelfTexts } from '../../texts/shelf-texts.ts';
import { type CurveFile, readCurves } from './curve-file.ts';
import { strokesOf } from './paint-strokes.ts';
import { shownStock } from './stock-state.ts';

export const paintOfKept = ({ K, S }: StoredCurve): Paint => ({
  K: spectrum<'K'>(K),
  S: spectrum<'S'>(S),
});
const keptOf = ({ K, S }: Paint, known: StoredCurve['known']): StoredCurve => ({
  known,
  K: Array.from(K),
  S: Array.from(S),
});

type Source = 'none' | 'kept' | 'file' | 'colour';
const GREY: Lab = [50, 0, 0];

/**
 * Input for a paint's curve: from a file, or estimated from an observed colour. This field is the
 * only writer of `curve`.
 */
export function CurveField({
  name,
  legend,
  curve,
  start,
  scattering = null,
  none,
}: {
  name: string;
  legend: string;
  curve: Signal<StoredCurve | null>;
  /** Initial colour, CIELAB under D65; null for a neutral grey. */
  start: Lab | null;
  /**
   * Scattering of the previous lot; null when unknown, then the painter states the hiding power.
   */
  scattering?: Spectrum<'S'> | null;
  /** Label of the choice "no curve"; absent when a curve is required. */
  none?: string;
}) {
  const kept = useSignal(curve.peek());
  const source = useSignal<Source | null>(kept.value ? 'kept' : none === undefined ? null : 'none');
  const choices: readonly (readonly [Source, string])[] = [
    ...(kept.value ? [['kept', shelfTexts.asBefore] as const] : []),
    ...(none === undefined ? [] : [['none', none] as const]),
    ['file', shelfTexts.fromFile],
    ['colour', shelfTexts.fromColour],
  ];
  const choose = (to: Source) => {
    source.value = to;
    // The saved curve stays until a new one is entered.
    curve.value = to === 'none' ? null : kept.value;
  };
  return (
    <fieldset class="shelf-fields">
      <legend>{legend}</legend>
      <div class="choice shelf-choice">
        {choices.map(([value, words]) => (
          <label key={value}>
            <input
              type="radio"
              name={`${name}-source`}
              checked={source.value === value}
              onChange={() => choose(value)}
            />
            <span>{words}</span>
          </label>
        ))}
      </div>
      {source.value === 'file' && (
        <FromFile name={name} curve={curve} before={kept.value} scattering={scattering} />
      )}
      {source.value === 'colour' && (
        <FromColour
          name={name}
          curve={curve}
          before={kept.value}
          start={start ?? GREY}
          scattering={scattering}
        />
      )}
      {curve.value && (
        <div class="shelf-preview">
          <BrushedPaint
            name={name}
            strokes={strokesOf(shownStock.value, paintOfKept(curve.value), [6])}
            label={shelfTexts.measuredCurve}
          />
        </div>
      )}
    </fieldset>
  );
}

interface From {
  name: string;
  curve: Signal<StoredCurve | null>;
  /** The value of `curve` while no valid one is entered here. */
  before: StoredCurve | null;
  scattering: Spectrum<'S'> | null;
}

function FromFile({ name, curve, before, scattering }: From) {
  const fault = useSignal('');
  const read = useSignal<CurveFile | null>(null);
  const which = useSignal(0);
  const take = (file: CurveFile, index: number) => {
    const offered = file.offered[index];
    which.value = index;
    curve.value = offered
      ? keptOf(offered.paint, file.isSpectra ? 'photographed' : 'measured')
      : before;
  };
  const open = async (file: File | undefined) => {
    fault.value = '';
    read.value = null;
    curve.value = before;
    if (!file) return;
    const S = scattering ?? SCATTERING['semi-opaque'];
    const result = await readCurves(file, shownStock.peek().surface, S);
    if (!result.ok) {
      fault.value = result.fault;
      return;
    }
    read.value = result.value;
    take(result.value, 0);
  };
  return (
    <>
      <label>
        {shelfTexts.file}
        <input
          type="file"
          accept=".csv,.json,.txt,.cgats,.cgt,text/csv,text/plain,application/json"
          aria-describedby={`${name}-file-help`}
          onChange={(event) => void open(event.currentTarget.files?.[0])}
        />
      </label>
      <p class="small" id={`${name}-file-help`}>
        {shelfTexts.fileHelp}
      </p>
      {fault.value && (
        <p class="field-fault" role="alert" data-wrong>
          {fault.value}
        </p>
      )}
      {read.value && read.value.offered.length > 1 && (
        <SelectField
          label={shelfTexts.which}
          options={read.value.offered.map(({ name: offered }, i) => [String(i), offered] as const)}
          chosen={String(which.value)}
          onChoose={(index) => take(read.value!, Number(index))}
        />
      )}
      {read.value?.remarks.map((remark) => (
        <p key={remark} class="small">
          {remark}
        </p>
      ))}
      {read.value?.isSpectra && (
        <p class="small">{scattering === null ? shelfTexts.estimate : shelfTexts.scattersAlike}</p>
      )}
    </>
  );
}

function FromColour({ name, curve, before, start, scattering }: From & { start: Lab }) {
  const lab = useSignal<Lab | null>(start);
  const text = useSignal('');
  const hides = useSignal<Opacity>('semi-opaque');
  const exact = useSignal(true);
  const take = (next: Lab | null) => {
    lab.value = next;
    if (next === null) {
      curve.value = before;
      return;
    }
    const S = scattering ?? SCATTERING[hides.value];
    const seen = paintOfColour(next, shownStock.peek().surface, S);
    exact.value = seen.exact;
    curve.value = keptOf(seen.paint, 'photographed');
  };
  const isWrong = text.value.trim() !== '' && lab.value === null;
  return (
    <>
      <div class="shelf-row">
        <label>
          {shelfTexts.fromScreen}
          <input
            type="color"
            value={hexOf(lab.value ?? start)}
            onInput={(event) => {
              text.value = '';
              take(labOfHex(event.currentTarget.value));
            }}
          />
        </label>
        <label>
          {shelfTexts.lab}
          <input
            type="text"
            inputMode="text"
            placeholder={start.map((value) => value.toFixed(0)).join(' ')}
            value={text}
            aria-invalid={isWrong}
            aria-describedby={`${name}-lab-help`}
            onInput={(event) => {
              text.value = event.currentTarget.value;
              take(text.value.trim() === '' ? start : parseLab(text.value));
            }}
          />
        </label>
      </div>
      <p class="small" id={`${name}-lab-help`}>
        {shelfTexts.labHelp}
      </p>
      {isWrong && (
        <p class="field-fault" role="alert" data-wrong>
          {shelfTexts.labFault}
        </p>
      )}
      {scattering === null && (
        <SelectField
          label={shelfTexts.hides}
          options={optionsOf(HIDING_WORDS)}
          chosen={hides.value}
          onChoose={(word) => {
            hides.value = word;
            take(lab.value);
          }}
        />
      )}
      {!exact.value && <p role="status">{shelfTexts.nearest}</p>}
      <p class="small">{scattering === null ? shelfTexts.estimate : shelfTexts.scattersAlike}</p>
    </>
  );
}
