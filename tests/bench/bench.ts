import { benchBook } from './book.ts';
import { benchGather } from './gather.ts';
import { benchHeld } from './held.ts';
import { benchMixing } from './mixing.ts';
import { benchMixture, type Row } from './mixture.ts';
import { benchSheet } from './sheet.ts';

const cell = (value: number, digits: number, width: number) =>
  value.toFixed(digits).padStart(width);

function printRows(rows: readonly Row[] | null, width: number, digits: number): void {
  if (rows === null) console.log('  skipped: no Chromium');
  for (const { what, ms, ratio, note } of rows ?? []) {
    const times = ratio === null ? '' : `${ratio.toFixed(2)} times`;
    console.log(`  ${what.padEnd(width)}${cell(ms, digits, 8)} ms  ${times.padEnd(14)}${note}`);
  }
}

async function gathering(): Promise<void> {
  console.log(
    '\nGathering: file to harmony in a worker, against decoding alone in the same browser',
  );
  const measured = await benchGather();
  if (measured === null) return console.log('  skipped: no Chromium');
  console.log(
    '  photograph              MB   decode ms   harmony ms   ratio   the first ms   page held up ms   most memory MB',
  );
  for (const {
    photo,
    megabytes,
    decodeMs,
    wholeMs,
    ratio,
    firstMs,
    heldUpMs,
    mostMb,
  } of measured.rows)
    console.log(
      `  ${photo.padEnd(20)}${cell(megabytes, 1, 6)}${cell(decodeMs, 0, 12)}${cell(wholeMs, 0, 13)}${cell(ratio, 2, 8)}${cell(firstMs, 0, 15)}${cell(heldUpMs, 0, 18)}${mostMb === null ? '' : cell(mostMb, 0, 17)}`,
    );
  for (const { without, firstMs, wholeMs, ratio } of measured.gains)
    console.log(
      `  smooth, 12 MP without the ${without}: harmony ${wholeMs.toFixed(0)} ms, ratio ${ratio.toFixed(2)}, the first ${firstMs.toFixed(0)} ms`,
    );
  console.log('\nGathering on the screen: longest task of the page’s own thread');
  for (const { step, longestMs, workMs } of (await benchHeld()) ?? [])
    console.log(
      `  ${step.padEnd(56)}${cell(longestMs, 0, 6)} ms of the clock ${cell(workMs, 0, 6)} ms of the processor`,
    );
}

async function mixing(): Promise<void> {
  console.log('\nMixing: 5 colours with up to 4 pigments, in Node');
  printRows(benchMixture(), 68, 0);
  console.log('\nThe same in a worker of Chromium');
  printRows(await benchMixing(), 68, 0);
}

async function keeping(): Promise<void> {
  console.log('\nThe book, with 10,000 harmonies, in Chromium');
  printRows(await benchBook(), 44, 1);
}

async function sheet(): Promise<void> {
  console.log('\nThe sheet: estimated widths of its texts, against the browser’s');
  const rows = await benchSheet();
  if (rows === null) return console.log('  skipped: no Chromium');
  const percent = (error: number) => `${cell(100 * error, 1, 6)} %`;
  for (const { by, lowest, highest } of rows)
    console.log(`  ${by.padEnd(30)}${percent(lowest)} to ${percent(highest)}`);
}

/** Named on the command line only some are measured. */
const ALL = { gathering, mixing, book: keeping, sheet };
const named = process.argv.slice(2);
for (const [name, measure] of Object.entries(ALL))
  if (named.length === 0 || named.includes(name)) await measure();
