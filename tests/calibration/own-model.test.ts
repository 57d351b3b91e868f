import { describeShared } from '../shared.ts';
import { recoversItsOwnModel } from './own-model.ts';

// Every third of the paints. All of them, with the bars of the study beside the data:
// tests/simulation/calibration-own-model.test.ts; these are at most a tenth above what was measured here, or the study's.
describeShared('the fit recovers its own model, of nine paints', () => {
  recoversItsOwnModel({
    paints: [0, 3, 6, 9, 12, 15, 18, 21, 24],
    draws: [1, 2],
    piles: 20,
    mixtures: 300,
    bars: { unnamed: [2.5, 5.3], named: [1, 1.7], noiseless: [2, 5], logged: [1.3, 3.4] },
    few: [0, 1, 2, 3, 5, 6, 8],
  });
});
