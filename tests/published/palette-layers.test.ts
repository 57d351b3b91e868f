import { describe, expect, test } from 'vitest';
import { layerWarningWords } from '../../src/messages/palette-messages.ts';
import {
  type CoatRecipe,
  fatnessOf,
  type LayerRule,
  layerWarnings,
} from '../../src/palette/layer-rules.ts';
import { partsOf, WHOLE } from '../palette/made.ts';

const coat = (
  film: CoatRecipe['film'],
  parts: Record<string, number>,
  more: Partial<CoatRecipe> = {},
): CoatRecipe => ({ film, parts: partsOf(parts), ...more });

// Pairs of coats and what practice says of them. Sources of the facts: drying words from Massey 1967,
// Field and Gettens & Stout 1942 p.149, 168; black underneath from a handbook statement and Gardner
// 1911; Cassel earth, fat over lean: common practice; zinc white from Mecklenburg & Tumosa; glazes over
// dry lean underpaint: Excellency of the Pen and Pencil 1668 and MS Fr. 640.
const PAIRS: [name: string, over: CoatRecipe, under: CoatRecipe, expected: LayerRule[]][] = [
  [
    'lead white over a dead colour of umber and lead white',
    coat('body colour', { lead_white: 1 }),
    coat('dead colour', { raw_umber: 1, lead_white: 2 }),
    [],
  ],
  [
    'red lake glaze over vermilion: the scarlet of 1668',
    coat('glaze', { madder_lake: 1 }),
    coat('body colour', { vermilion: 1 }),
    [],
  ],
  [
    'lead white over pure bone black',
    coat('body colour', { lead_white: 1 }),
    coat('dead colour', { bone_black: 1 }),
    ['quick over slow', 'black underneath'],
  ],
  [
    'ochre over Cassel earth',
    coat('body colour', { yellow_ochre: 1 }),
    coat('dead colour', { cassel_earth: 1 }),
    ['quick over slow', 'Cassel earth underneath'],
  ],
  [
    'lead-tin yellow over a coat of madder lake',
    coat('body colour', { lead_tin_yellow: 1 }),
    coat('body colour', { madder_lake: 1 }),
    ['quick over slow', 'lake underneath'],
  ],
  [
    'a second thin glaze of the same lake: two coats hold where one dies back',
    coat('glaze', { madder_lake: 1 }),
    coat('glaze', { madder_lake: 1 }),
    [],
  ],
  [
    'lean body colour over an oily glaze of umber',
    coat('body colour', { raw_umber: 1 }),
    coat('glaze', { burnt_umber: 1 }),
    ['lean over fat'],
  ],
  [
    'a fat coat over a leaner one of the same paint',
    coat('body colour', { yellow_ochre: 1 }, { spareOil: 0.2 }),
    coat('body colour', { yellow_ochre: 1 }, { spareOil: 0.05 }),
    [],
  ],
  [
    'lead white over raw umber: umber holds more oil by weight, yet both are as ground',
    coat('body colour', { lead_white: 1 }),
    coat('body colour', { raw_umber: 1 }),
    [],
  ],
  [
    'umber laid thick underneath',
    coat('body colour', { lead_white: 1 }),
    coat('loaded', { raw_umber: 1 }),
    ['umber thick underneath'],
  ],
  [
    'lead white over zinc white',
    coat('body colour', { lead_white: 1 }),
    coat('body colour', { zinc_white: 1 }),
    ['quick over slow', 'zinc white underneath'],
  ],
  [
    'vermilion, slow, over lead white, quick',
    coat('body colour', { vermilion: 1 }),
    coat('body colour', { lead_white: 1 }),
    [],
  ],
];

describe('layer pairs give the warning that practice gives', () => {
  test.each(PAIRS)('%s', (_, over, under, expected) => {
    const warnings = layerWarnings(over, under);
    expect(warnings.map(({ rule }) => rule).sort()).toEqual([...expected].sort());
    for (const warning of warnings)
      expect(layerWarningWords(warning, WHOLE)).toMatch(/^[A-Z].{30,}\.$/);
  });
});

test('fatness is oil beyond the paste, never bare oil per cent', () => {
  // Section 4.3 of the handbook sheet: as ground, lead white is 48 % oil by volume, lamp black 77 %.
  expect(fatnessOf(coat('body colour', { lamp_black: 1 }))).toBe(0);
  expect(fatnessOf(coat('body colour', { lead_white: 1 }))).toBe(0);
});
