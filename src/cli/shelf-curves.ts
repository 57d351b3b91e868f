import { basename } from 'node:path';
import { guessTable, measuredSwatches, type SampleRow } from '../calibration/measured-samples.ts';
import type { Part } from '../calibration/painted-swatch.ts';
import { hexOf } from '../colour/gamut-mapping.ts';
import { labOf } from '../colour/lab.ts';
import { sampleFaultWords } from '../messages/calibration-messages.ts';
import { curvesFaultWords, shelfRemarkWords } from '../messages/shelf-file-faults.ts';
import { plainNumber } from '../number-format.ts';
import { readNumber } from '../pigment/import/parse-number.ts';
import { readSpectra, spectraCgats, spectraCsv } from '../pigment/import/read-spectra.ts';
import { pigmentOf } from '../pigment/pigment-facts.ts';
import type { Shelf } from '../pigment/shelf.ts';
import { CliError } from './cli-error.ts';
import { dayOf, written } from './dates-and-files.ts';
import { type Parsed, readOptions } from './options.ts';
import type { Output } from './output.ts';
import { readText } from './read-text.ts';
import { fitOnto, shelfToCalibrate, writeFitted } from './shelf-fit.ts';

const CURVES_HELP = `kingcup shelf curves FILE [--is "SAMPLE = PIGMENT 1, PIGMENT 4"]... [--white ID]
            [--shelf FILE] [--out SHELF.json] [--json]
kingcup shelf curves FILE --as csv|cgats [--out FILE]

Reads measured reflectances (CGATS.17 text, or CSV with wavelengths), maps its samples to the
shelf's paints by their names or as --is says, and fits K and S of them.

  --is "S = P 1, Q 4"  what a sample is: one pigment, or a mixture by volume; “S =” leaves it out
  --white ID           the studio white (the shelf's own)
  --shelf FILE         the shelf that the paints are of (without it: every pigment of Kingcup's)
  --unnamed            learn from the samples alone, not from the curves that the shelf has
  --date DAY           the day of the measurement, like 2026-05-01
  --as csv|cgats       write the samples again in one of these forms, and fit nothing
  --out FILE           where the shelf with its new curves, or the samples, are written
`;

/** shelf curves: measured spectra, fitted or written again. */
export async function shelfCurves(args: readonly string[], output: Output): Promise<void> {
  const options = readOptions('shelf', args, {
    is: { type: 'string', multiple: true },
    white: { type: 'string' },
    shelf: { type: 'string' },
    unnamed: { type: 'boolean' },
    date: { type: 'string' },
    as: { type: 'string' },
    out: { type: 'string' },
    json: { type: 'boolean' },
    help: { type: 'boolean', short: 'h' },
  });
  if (options.has('help')) {
    output.out(CURVES_HELP);
    return;
  }
  const [file, stray] = options.files;
  if (file === undefined) throw new CliError('Name a file of curves: kingcup shelf curves FILE.');
  if (stray !== undefined) throw new CliError(`“${stray}” is one too many: one file at a time.`);
  const spectra = readSpectra(await readText(file));
  if (!spectra.ok)
    throw new CliError(`${basename(file)}: ${curvesFaultWords(spectra.fault, plainNumber)}`);
  const { samples, geometry } = spectra.value;
  const remarks = spectra.value.remarks.map((one) => shelfRemarkWords(one, plainNumber));
  for (const remark of remarks) output.err(`${basename(file)}: ${remark}\n`);

  const form = options.value('as');
  if (form !== undefined) {
    if (form !== 'csv' && form !== 'cgats')
      throw new CliError(`--as takes csv or cgats, not “${form}”.`);
    const text = form === 'csv' ? spectraCsv(samples) : spectraCgats(samples, geometry);
    const out = options.value('out');
    if (out === undefined) output.out(text);
    else await written(out, text);
    return;
  }

  const shelf = await shelfToCalibrate(options.value('shelf'));
  const white = options.value('white') ?? shelf.white;
  if (white === null) throw new CliError('This shelf has no white: name one with --white ID.');
  const table = tableOf(options, shelf, white, samples);
  const understood = table.filter(({ parts }) => parts.length > 0);
  if (understood.length === 0) {
    const seen = samples.map(({ name, R }) => `  ${name}  ${hexOf(labOf(R))}`).join('\n');
    throw new CliError(
      `None of these samples is named after a paint of the shelf: say what each is with --is "SAMPLE = PIGMENT".\n${seen}`,
    );
  }
  for (const { sample, parts } of table)
    if (parts.length === 0) output.err(`“${sample}” is left out.\n`);
  const swatches = measuredSwatches(spectra.value, table, shelf.surface);
  if (!swatches.ok) throw new CliError(sampleFaultWords(swatches.fault));
  const date = dayOf(options.value('date'));
  const fitted = fitOnto(shelf, white, swatches.value, { unnamed: options.has('unnamed'), date });
  await writeFitted(fitted, options, output, { curves: file, table, remarks });
}

function tableOf(
  options: Parsed,
  shelf: Shelf,
  white: string,
  samples: Parameters<typeof guessTable>[0],
): SampleRow[] {
  const named = shelf.paints.map(({ pigment, label }) => ({
    pigment,
    label,
    synonyms: pigmentOf(pigment)?.synonyms ?? [],
  }));
  const said = new Map(
    options.given
      .filter(({ name }) => name === 'is')
      .map(({ value }) => {
        const at = value.lastIndexOf('=');
        if (at < 0)
          throw new CliError(`--is takes "SAMPLE = PIGMENT 1, PIGMENT 4", not “${value}”.`);
        return [value.slice(0, at).trim(), partsOf(value.slice(at + 1), shelf)] as const;
      }),
  );
  for (const sample of said.keys())
    if (!samples.some(({ name }) => name === sample))
      throw new CliError(sampleFaultWords({ code: 'sample-unknown', sample }));
  return guessTable(samples, named, white).map((row) => {
    const parts = said.get(row.sample);
    return parts === undefined ? row : { ...row, parts };
  });
}

/** "ultramarine 1, lead_white 4"; a single name is one part of it. @throws CliError */
function partsOf(text: string, shelf: Shelf): Part[] {
  const pieces = text.split(',').map((piece) => piece.trim());
  return pieces
    .filter((piece) => piece !== '')
    .map((piece) => {
      const [, name, amount = '1'] = /^(.*?)(?:\s+(\d+(?:\.\d+)?))?$/.exec(piece)!;
      const found = shelf.paints.find(
        ({ pigment, label }) => pigment === name || label.toLowerCase() === name!.toLowerCase(),
      );
      const parts = readNumber(amount);
      if (!(parts !== null && parts > 0))
        throw new CliError(`“${piece}” needs parts above 0, like “ultramarine 1”.`);
      return { pigment: found?.pigment ?? name!, parts };
    });
}
