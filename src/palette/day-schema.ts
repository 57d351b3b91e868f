import * as v from 'valibot';
import { FILM_WORDS } from './film-kinds.ts';

const number = v.pipe(v.number(), v.finite());
const words = v.pipe(v.string(), v.trim(), v.minLength(1), v.maxLength(120));
const parts = v.record(v.string(), number);
const film = v.picklist(FILM_WORDS);
const PILE = v.strictObject({
  name: words,
  parts: v.nullable(parts),
  letDowns: v.optional(parts, {}),
  letDownWhite: v.optional(v.string(), 'lead_white'),
  lab: v.optional(v.strictTuple([number, number, number])),
  cm2: v.optional(number),
  share: v.optional(number),
  film: v.optional(film, 'body colour'),
  filmUm: v.optional(number),
  coats: v.optional(number),
  spareOil: v.optional(number),
  tooth: v.optional(number),
  waste: v.optional(number),
  heapCm3: v.optional(number),
});
const LAYER = v.strictObject({
  date: v.string(),
  film,
  filmUm: v.optional(number),
  parts,
  spareOil: v.optional(number),
  felt: v.optional(
    v.strictObject({ date: v.string(), state: v.picklist(['wet', 'tacky', 'touch-dry']) }),
  ),
});
export const PASSAGE = v.strictObject({
  name: words,
  palette: v.optional(words),
  canvas: v.optional(v.strictObject({ widthCm: number, heightCm: number })),
  layers: v.optional(v.array(LAYER), []),
  piles: v.pipe(v.array(PILE), v.maxLength(60)),
  order: v.optional(v.array(v.string())),
});
const RULES_FORM = v.strictObject({
  seats: v.optional(v.array(v.string())),
  shape: v.optional(v.picklist(['oval', 'square'])),
  hand: v.optional(v.picklist(['left', 'right'])),
  tooth: v.optional(v.pipe(number, v.minValue(0), v.maxValue(5))),
  waste: v.optional(v.pipe(number, v.minValue(0), v.maxValue(5))),
  heapCm3: v.optional(v.pipe(number, v.minValue(0), v.maxValue(100))),
  edgeCm3: v.optional(v.pipe(number, v.minValue(0), v.maxValue(100))),
  oil: v.optional(v.picklist(['linseed', 'walnut'])),
  pupils: v.optional(v.boolean()),
  people: v.optional(v.pipe(v.array(words), v.maxLength(12))),
  acknowledged: v.optional(
    v.array(
      v.strictObject({
        pigment: v.string(),
        lot: v.string(),
        person: v.string(),
        date: v.string(),
      }),
    ),
  ),
});
const LEFTOVER = v.strictObject({
  name: words,
  parts,
  lab: v.optional(v.strictTuple([number, number, number])),
  cm3: v.pipe(number, v.minValue(0)),
  kept: v.picklist(['under water', 'under film', 'in a tube', 'open']),
  date: v.string(),
  skinned: v.optional(v.boolean()),
});
export const ENTRY = v.strictObject({
  pigment: v.string(),
  form: v.optional(v.picklist(['powder', 'paste', 'tube']), 'tube'),
  lot: v.optional(v.string()),
  grade: v.optional(v.string()),
  amount: v.optional(v.nullable(number)),
  unit: v.optional(v.picklist(['g', 'ml'])),
  density: v.optional(number),
  oil: v.optional(number),
});
/**
 * The JSON form of a day, version 1. Only `kind`, `version`, `date` and `passages` are required.
 *
 * ```json
 * {
 *   "kind": "kingcup-day",
 *   "version": 1,
 *   "date": "2026-05-14",
 *   "rules": {
 *     "seats": ["lead_white", "yellow_ochre", "raw_umber"],
 *     "shape": "oval", "hand": "left",
 *     "tooth": 0.1, "waste": 0.2, "heapCm3": 0.5, "edgeCm3": 0.5,
 *     "oil": "linseed", "pupils": false,
 *     "people": ["Ines"],
 *     "acknowledged": [{ "pigment": "lead_white", "lot": "3", "person": "Ines", "date": "2026-05-02" }]
 *   },
 *   "stock": [{ "pigment": "lead_white", "form": "paste", "lot": "3", "amount": 400, "unit": "g" }],
 *   "passages": [{
 *     "name": "Water under the alders",
 *     "palette": "Mill stream",
 *     "canvas": { "widthCm": 60, "heightCm": 45 },
 *     "layers": [{ "date": "2026-05-04", "film": "dead colour", "parts": { "raw_umber": 1, "lead_white": 2 } }],
 *     "piles": [
 *       { "name": "still water", "parts": { "lead_white": 3, "ultramarine": 1 }, "share": 0.2, "film": "body colour" },
 *       { "name": "deep glaze", "parts": { "madder_lake": 1 }, "cm2": 300, "film": "glaze", "coats": 2 }
 *     ]
 *   }],
 *   "leftovers": [{ "name": "still water", "parts": { "lead_white": 3, "ultramarine": 1 }, "cm3": 1.5, "kept": "under film", "date": "2026-05-13" }]
 * }
 * ```
 *
 * - `parts` are by volume of paste, under the shelf's names; null if the mixture was deleted.
 *   `letDowns` takes a pigment's parts from a let-down pile: {"prussian_blue": 10} is 1 part to 10 of
 *   the white in `letDownWhite`, by default lead white.
 * - A pile covers `cm2`, or a `share` (0…1) of the passage's `canvas`. `film` is imprimatura, dead
 *   colour, body colour, loaded, impasto, glaze or scumble; `filmUm` (wet, micrometres), `coats`,
 *   `spareOil` (cm3 to 1 cm3 of paste), `tooth`, `waste` and `heapCm3` override the defaults.
 * - Passages with the same `palette` share it; without one a passage has its own. `order`, on any
 *   passage of a palette, lists its mixed piles in a manual order.
 * - `stock` is what is on the shelf: pigment, `form` (powder, paste or tube), `lot`, `grade`,
 *   `amount` with its `unit`, the lot's own `density` and `oil`. Without `stock`, nothing is counted.
 * - `felt` on a layer ({"date", "state": "wet" | "tacky" | "touch-dry"}) is a touch test.
 * - `kept` (storage) is under water, under film, in a tube or open; `skinned` marks a leftover to
 *   discard.
 */
export const DAY_FORM = v.strictObject({
  kind: v.literal('kingcup-day'),
  version: v.pipe(v.number(), v.integer()),
  date: v.string(),
  rules: v.optional(RULES_FORM, {}),
  stock: v.optional(v.pipe(v.array(ENTRY), v.maxLength(500))),
  passages: v.array(PASSAGE),
  leftovers: v.optional(v.array(LEFTOVER), []),
});
