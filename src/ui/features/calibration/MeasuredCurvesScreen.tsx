import { useSignal } from '@preact/signals';
import { evidenceEntries } from '../../state/calibration/evidence.ts';
import { bookTexts } from '../../texts/book-texts.ts';
import { calibrationTexts } from '../../texts/calibration-texts.ts';
import { goTo } from './calibration-routes.ts';
import { exportCurves, keepCurves, readFile } from './import-curve-samples.ts';
import { SampleTable } from './SampleTable.tsx';
import { rowFault, type Samples } from './sample-file.ts';

/**
 * A file of measured reflectances: reads it, lets the painter say what each sample is, and saves
 * it; or shows a saved one.
 */
export function MeasuredCurvesScreen({ id }: { id: string | null }) {
  const kept = evidenceEntries.value?.curves.find((file) => file.id === id) ?? null;
  const file = useSignal<Samples | null>(kept && { ...kept.body, remarks: [] });
  const fault = useSignal('');
  const open = async (chosen: File | undefined) => {
    if (!chosen) return;
    const read = await readFile(chosen);
    fault.value = read.ok ? '' : read.fault;
    // After a failed read the previous file stays.
    if (read.ok) file.value = read.value;
  };
  const now = file.value;
  const used = now?.samples.filter(({ parts }) => parts.length > 0).length ?? 0;
  const keep = async () => {
    if (!now) return;
    fault.value =
      used === 0
        ? calibrationTexts.curvesNone
        : now.samples.some((sample) => rowFault(sample) !== '')
          ? calibrationTexts.curvesFaulty
          : '';
    if (fault.value === '' && (await keepCurves(now, kept))) goTo('fit');
  };
  return (
    <>
      <h1 tabIndex={-1}>{calibrationTexts.curvesHeading}</h1>
      {id !== null && kept === null && <p>{bookTexts.gone}</p>}
      {id === null && (
        <div>
          <label class="swatch-filefield">
            {calibrationTexts.curvesFile}
            <input
              type="file"
              accept=".csv,.txt,.cgats,.cgt,.ti3,text/csv,text/plain"
              aria-describedby="swatch-curves-help"
              onChange={(event) => void open(event.currentTarget.files?.[0])}
            />
          </label>
          <p class="small" id="swatch-curves-help">
            {calibrationTexts.curvesFileHelp}
          </p>
        </div>
      )}
      {now && (
        <>
          {now.remarks.length > 0 && (
            <ul class="remarks">
              {now.remarks.map((remark) => (
                <li key={remark}>{remark}</li>
              ))}
            </ul>
          )}
          <section class="swatch-section">
            <h2>{calibrationTexts.tableHeading}</h2>
            <p>{calibrationTexts.tableAbout}</p>
            <p role="status">{calibrationTexts.samplesOf(used, now.samples.length)}</p>
            <SampleTable
              samples={now.samples}
              onChange={(samples) => {
                file.value = { ...now, samples };
              }}
            />
          </section>
        </>
      )}
      {fault.value && (
        <p class="field-fault" role="alert">
          {fault.value}
        </p>
      )}
      {now && (
        <div class="swatch-actions">
          <button type="button" class="main" onClick={() => void keep()}>
            {calibrationTexts.keepCurves}
          </button>
          {kept && (
            <>
              <button type="button" onClick={() => void exportCurves(kept, 'cgats')}>
                {calibrationTexts.asCgats}
              </button>
              <button type="button" onClick={() => void exportCurves(kept, 'csv')}>
                {calibrationTexts.asCsv}
              </button>
            </>
          )}
        </div>
      )}
    </>
  );
}
