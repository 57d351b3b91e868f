import {
  type Calibration,
  calibratePaints,
  swatchLabelOf,
} from '../calibration/calibrate-paints.ts';
import { evidenceOfFit } from '../calibration/curve-evidence.ts';
import type { PaintedSwatch } from '../calibration/painted-swatch.ts';
import { type Suggestion, suggestSwatches } from '../calibration/suggest-swatches.ts';
import { hexOf } from '../colour/gamut-mapping.ts';
import { calibrationFaultWords, suggestionWords } from '../messages/calibration-messages.ts';
import { evidenceWords } from '../messages/curve-evidence-text.ts';
import { shelfFaultWords } from '../messages/shelf-file-faults.ts';
import { plainNumber } from '../number-format.ts';
import { readShelf } from '../pigment/import/read-shelf.ts';
import { writeShelfJson } from '../pigment/import/shelf-json.ts';
import type { Shelf } from '../pigment/shelf.ts';
import { wholeShelf } from '../pigment/starter-shelf.ts';
import { CliError } from './cli-error.ts';
import { written } from './dates-and-files.ts';
import type { Parsed } from './options.ts';
import type { Output } from './output.ts';
import { readText } from './read-text.ts';

/** The shelf whose paints are calibrated: a file's, or every pigment that Kingcup has. @throws CliError */
export async function shelfToCalibrate(path: string | undefined): Promise<Shelf> {
  if (path === undefined) return wholeShelf();
  const shelf = readShelf(await readText(path), { name: path });
  if (!shelf.ok) throw new CliError(`${path}: ${shelfFaultWords(shelf.fault, plainNumber)}`);
  return shelf.value;
}

interface Fitted {
  readonly shelf: Shelf;
  readonly calibration: Calibration;
  readonly suggestions: readonly Suggestion[];
  readonly date: string | null;
}

/** Fits swatches and puts the new curves on the shelf. @throws CliError */
export function fitOnto(
  shelf: Shelf,
  white: string,
  swatches: readonly PaintedSwatch[],
  { unnamed, date }: { readonly unnamed: boolean; readonly date: string | null },
): Fitted {
  const used = new Set([white, ...swatches.flatMap(({ parts }) => parts.map((p) => p.pigment))]);
  const missing = [...used].find((name) => !shelf.paints.some((p) => p.pigment === name));
  const known = missing === undefined ? shelf.paints : [...shelf.paints, ...strangers(used, shelf)];
  const paints = known
    .filter(({ pigment }) => used.has(pigment))
    .map(({ pigment, label, ...rest }) => ({
      pigment,
      label,
      named: unnamed || !('paint' in rest) ? null : rest.paint,
    }));
  const result = calibratePaints(white, paints, swatches, shelf.surface);
  if (!result.ok) throw new CliError(calibrationFaultWords(result.fault, plainNumber));
  const calibration = result.value;
  const curves = new Map(calibration.paints.map((fitted) => [fitted.pigment, fitted.paint]));
  return {
    shelf: {
      ...shelf,
      name: `${shelf.name}, calibrated`,
      white,
      paints: known.flatMap((each) => {
        const paint = curves.get(each.pigment) ?? ('paint' in each ? each.paint : undefined);
        return paint ? [{ pigment: each.pigment, label: each.label, paint }] : [];
      }),
    },
    calibration,
    suggestions: suggestSwatches(calibration),
    date,
  };
}

const strangers = (used: ReadonlySet<string>, shelf: Shelf) =>
  [...used]
    .filter((pigment) => !shelf.paints.some((paint) => paint.pigment === pigment))
    .map((pigment) => ({ pigment, label: pigment }));

/** Writes the shelf where asked, and what was found to standard output. @throws CliError */
export async function writeFitted(
  { shelf, calibration, suggestions, date }: Fitted,
  options: Parsed,
  { out: write }: Output,
  about: object,
): Promise<void> {
  const out = options.value('out');
  if (out !== undefined) await written(out, writeShelfJson(shelf));
  const paints = calibration.paints.map((fitted) => ({
    fitted,
    trust: evidenceOfFit(fitted, date ?? ''),
  }));
  if (options.has('json')) {
    const document = {
      ...about,
      white: calibration.white,
      paints: paints.map(({ fitted, trust }) => ({
        pigment: fitted.pigment,
        label: fitted.label,
        ...trust,
        date,
        K: Array.from(fitted.paint.K),
        S: Array.from(fitted.paint.S),
      })),
      swatches: calibration.swatches.map(({ painted, foreseen, deltaE00, unlikely }) => ({
        id: painted.id,
        parts: painted.parts,
        lab: painted.lab,
        foreseen,
        deltaE00,
        unlikely,
      })),
      suggestions: suggestions.map((one) => ({
        ...{ parts: one.parts, before: one.before, after: one.after },
        why: suggestionWords(one, plainNumber),
      })),
      shelf: out ?? null,
    };
    write(`${JSON.stringify(document)}\n`);
    return;
  }
  const lines = [
    'What was seen, and what the new curves foresee:',
    ...calibration.swatches.map(({ painted, foreseen, deltaE00, unlikely }) => {
      const name = swatchLabelOf(painted, calibration.paints).padEnd(40);
      const doubt = unlikely ? '  fits nowhere: is its ratio right, is it opaque?' : '';
      return `  ${name} ${hexOf(painted.lab)} ${hexOf(foreseen)}  ${deltaE00.toFixed(1).padStart(4)}${doubt}`;
    }),
    '',
    ...paints.map(
      ({ fitted, trust }) => `${fitted.label}. ${evidenceWords({ ...trust, date }, plainNumber)}`,
    ),
    ...(suggestions.length > 0 ? ['', 'What to brush out next:'] : []),
    ...suggestions.map(
      (one) => `  ${swatchLabelOf(one, calibration.paints)}: ${suggestionWords(one, plainNumber)}`,
    ),
    ...(out === undefined
      ? ['', 'Nothing was kept: --out FILE writes the shelf with these curves.']
      : ['', `${out} holds the shelf with these curves.`]),
  ];
  write(`${lines.join('\n')}\n`);
}
