import { expect, test } from 'vitest';
import { calibrationFaultWords, cardRemarkWords } from '../../src/messages/calibration-messages.ts';
import { accuracyWords, errorWords } from '../../src/messages/curve-evidence-text.ts';
import { startAgainWords } from '../../src/messages/mixture-messages.ts';
import { paletteFaultWords } from '../../src/messages/palette-faults.ts';
import { shelfFaultWords, shelfRemarkWords } from '../../src/messages/shelf-file-faults.ts';
import { stockFaultWords } from '../../src/messages/stock-faults.ts';
import { type NumberFormat, plainNumber } from '../../src/number-format.ts';
import { comma } from '../comma.ts';

test.each<[words: (number: NumberFormat) => string, figure: string]>([
  [(number) => calibrationFaultWords({ code: 'card-small', pixelsPerMm: 1.26 }, number), '1.3'],
  [(number) => cardRemarkWords({ code: 'light-corrected', ratio: 1.456 }, number), '1.46'],
  [
    (number) => errorWords({ median: 0.84, tenth: 2.25 }, number),
    '0.8; one in ten is worse than 2.3',
  ],
  [
    (number) =>
      accuracyWords(
        { piles: [], lately: { median: 1.24, tenth: 3 }, atFirst: { median: 2.36, tenth: 5 } },
        number,
      ),
    '2.4',
  ],
  [(number) => startAgainWords({ why: 'too-much', fresh: 3.14 }, number), 'within 3.1'],
  [(number) => paletteFaultWords({ code: 'area-share', pile: 'Sky', share: 1.5 }, number), '1.5'],
  [
    (number) =>
      shelfFaultWords({ code: 'shelf-K-negative', pigment: 'x', nm: 402.5, value: -0.25 }, number),
    'K -0.25 at 402.5 nm',
  ],
  [(number) => shelfRemarkWords({ code: 'grid-resampled', stepNm: 3.333 }, number), '3.3'],
  [
    (number) => stockFaultWords({ code: 'stock-density', field: 'density', density: 0.25 }, number),
    '0.25',
  ],
])('a sentence has the decimals that its shell writes: %#', (words, figure) => {
  expect(words(plainNumber)).toContain(figure);
  expect(words(comma)).toContain(figure.replaceAll('.', ','));
});
