import { vi } from 'vitest';
import { recoversItsOwnModel } from '../calibration/own-model.ts';
import { describeShared } from '../shared.ts';

const soak = process.env.KINGCUP_SOAK === '1';
vi.setConfig({ testTimeout: 900_000 });

// No simulation, though it takes as long as one: truth and fit share one model. The bars are those that
// the study beside the data found possible, section 3: of 27 paints, 2.5 and 6.5 with noise 1, 1.5 and 3 with
// the pigments named, 1.6 and 5 without noise, 1.3 and 2.8 with 60 logged mixtures.
describeShared('the fit recovers its own model, of 27 paints', () => {
  recoversItsOwnModel({
    paints: Array.from({ length: 27 }, (_, i) => i),
    draws: soak ? [1, 2, 3, 4, 5, 6, 7, 8, 9] : [1, 2, 3],
    piles: 60,
    mixtures: soak ? 2000 : 300,
    bars: { unnamed: [2.5, 6.5], named: [1.5, 3], noiseless: [1.6, 5], logged: [1.3, 2.8] },
    few: [0, 2, 5, 9, 14, 18, 22],
  });
});
