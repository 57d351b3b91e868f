import { vi } from 'vitest';
import { runs } from '../harmony/piles.ts';
import { variantsOverTheReach } from '../harmony/variants.ts';

vi.setConfig({ testTimeout: process.env.KINGCUP_SOAK === '1' ? 3_600_000 : 600_000 });

// What tests/harmony/mixed-variant.test.ts checks on a few piles by lot, here on more.
variantsOverTheReach({ signs: runs(60), hues: runs(40), returns: runs(60) });
