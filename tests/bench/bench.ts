import { benchBook } from './book.ts';
import { benchGather } from './gather.ts';
import { benchHeld } from './held.ts';
import { benchMixture } from './mixture.ts';

const cell = (value: number, digits: number, width: number) =>
  value.toFixed(digits).padStart(width);

console.log('Gathering: file to harmony in a worker, against decoding alone in the same browser');
const rows = await benchGather();
if (rows === null) console.log('  skipped: no Chromium');
else {
  console.log(
    '  photograph          MB   decode ms   harmony ms   ratio   page held up ms   most memory MB',
  );
  for (const { photo, megabytes, decodeMs, wholeMs, ratio, heldUpMs, mostMb } of rows)
    console.log(
      `  ${photo.padEnd(16)}${cell(megabytes, 1, 6)}${cell(decodeMs, 0, 12)}${cell(wholeMs, 0, 13)}${cell(ratio, 2, 8)}${cell(heldUpMs, 0, 18)}${mostMb === null ? '' : cell(mostMb, 0, 17)}`,
    );
}

console.log('\nThe story of gathering on the screen: longest task of the page’s own thread');
const heldRows = await benchHeld();
if (heldRows === null) console.log('  skipped: no Chromium');
for (const { step, longestMs, workMs } of heldRows ?? [])
  console.log(
    `  ${step.padEnd(56)}${cell(longestMs, 0, 6)} ms of the clock ${cell(workMs, 0, 6)} ms of the processor`,
  );

console.log('\nMixing: 5 colours with up to 4 pigments, in Node');
for (const { what, ms, ratio, note } of benchMixture()) {
  const times = ratio === null ? '' : `${ratio.toFixed(2)} times`;
  console.log(`  ${what.padEnd(44)}${cell(ms, 0, 8)} ms  ${times.padEnd(14)}${note}`);
}

console.log('\nThe book, with 10,000 harmonies, in Chromium');
const bookRows = await benchBook();
if (bookRows === null) console.log('  skipped: no Chromium');
for (const { what, ms, ratio, note } of bookRows ?? []) {
  const times = ratio === null ? '' : `${ratio.toFixed(2)} times`;
  console.log(`  ${what.padEnd(44)}${cell(ms, 1, 8)} ms  ${times.padEnd(14)}${note}`);
}
