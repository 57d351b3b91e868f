import { computed, signal } from '@preact/signals';
import type { FitFound, FitResult } from '../../../../workers/calibration.ts';
import {
  type CalibrationEvidence,
  storedSurface,
} from '../../../book/schema/calibration-evidence.ts';
import { paintsToFit } from '../../../calibration/accept-calibration.ts';
import type { Suggestion } from '../../../calibration/suggest-swatches.ts';
import { calibrationFaultWords } from '../../../messages/calibration-messages.ts';
import { currentEvidence } from '../../state/calibration/evidence.ts';
import { job } from '../../state/job.ts';
import { formatNumber } from '../../state/locale-format.ts';
import { fitPaintsInWorker } from '../../state/worker-jobs.ts';
import { calibrationTexts, today } from '../../texts/calibration-texts.ts';
import { acceptFit, ownStock } from '../shelf/stock-state.ts';

export const fitting = job();

/** The last fit, with its input. */
const last = signal<{ readonly of: CalibrationEvidence; readonly result: FitResult } | null>(null);

/** The curves fitted to the current evidence; null while there are none or the fit failed. */
export const fittedCurves = computed<FitFound | null>(() =>
  last.value && last.value.of === currentEvidence.value && last.value.result.ok
    ? last.value.result.value
    : null,
);

/**
 * Swatches suggested by the last fit, limited to paints on the shelf; null before the first fit.
 */
export const suggestions = computed(() =>
  last.value?.result.ok ? last.value.result.value.suggestions.filter(isHere) : null,
);
const isHere = ({ parts }: Suggestion): boolean =>
  parts.every(({ pigment }) => ownStock.value.entries.some(({ id }) => id === pigment));

/** Why there are no curves, as a sentence; '' when there is no fault. */
export const fitFault = computed<string>(() => {
  if (currentEvidence.value?.swatches.length === 0) return calibrationTexts.fitNothing;
  if (ownStock.value.white === null) return calibrationTexts.noWhite;
  const result = last.value?.of === currentEvidence.value ? last.value.result : null;
  return result && !result.ok ? calibrationFaultWords(result.fault, formatNumber) : '';
});

/** The evidence of the running fit. */
let underWay: CalibrationEvidence | null = null;

/** Starts a fit unless the current evidence has been fitted or is being fitted. */
export async function fitNow(): Promise<void> {
  const of = currentEvidence.value;
  const stock = ownStock.value;
  if (!of || of.swatches.length === 0 || stock.white === null || last.value?.of === of) return;
  if (underWay === of) return;
  underWay = of;
  const used = new Set([
    stock.white,
    ...of.swatches.flatMap(({ parts }) => parts.map(({ pigment }) => pigment)),
  ]);
  const paints = paintsToFit(
    stock,
    stock.entries.filter(({ id }) => used.has(id)),
  );
  const result = await fitting.run(({ signal, onProgress: onNews }) =>
    fitPaintsInWorker(
      {
        kind: 'fit',
        white: stock.white!,
        paints,
        swatches: of.swatches,
        surface: storedSurface(stock),
      },
      { signal, onNews: (news) => news.kind === 'done' && onNews(news.done) },
    ),
  );
  if (underWay === of) underWay = null;
  if (result) last.value = { of, result };
}

/**
 * Applies the fitted curves to the shelf, with undo.
 * @returns true on success
 */
export async function acceptFound(): Promise<boolean> {
  const fit = fittedCurves.value;
  return fit !== null && (await acceptFit(fit, today())).ok;
}
