import type { NumberFormat } from '../number-format.ts';
import type { Day, LeftOff, PalettePlan, Shortage } from '../palette/day-plan.ts';
import { type Dryness, groundDryness } from '../palette/drying-time.ts';
import { FILMS } from '../palette/film-kinds.ts';
import { dayWords } from '../palette/iso-date.ts';
import type { LayerWarning } from '../palette/layer-rules.ts';
import type { LeftoverState } from '../palette/leftovers.ts';
import { MOST_PALETTES } from '../palette/palette-faults.ts';
import { baseOf, labelIn, type PassagePile, type Studio } from '../palette/passage.ts';
import type { Clash } from '../palette/pigment-clashes.ts';
import { factsOf } from '../palette/pigment-lookup.ts';
import { filmUmOf, spareOilOf } from '../palette/pile-quantity.ts';
import { type Replacement, standInWords } from '../palette/replacement.ts';
import { joinWords, midSentence } from '../wording.ts';
import { cm3Words } from './amounts.ts';

/** "touch-dry", "between tacky and touch-dry: your touch decides". */
export function drynessWords({ least, most, felt }: Dryness): string {
  if (felt) return `${least} by touch`;
  return least === most ? `${least} by now` : `between ${least} and ${most}: your touch decides`;
}

/**
 * Sentences on palettes divided over several boards, and on too many palettes.
 * @param asked only this requested palette; default: all
 */
export function boardsWords(day: Day, asked?: number): readonly string[] {
  const split = day.palettes.filter(
    ({ part, of, asked: from }) => of > 1 && part === 1 && (asked === undefined || from === asked),
  );
  const words = split.map(
    ({ name, of }) =>
      `“${name.replace(/, \d+ of \d+$/, '')}” is more than one palette carries: it is laid on ${of}, each with its own sheet.`,
  );
  if (split.length > 0 && day.palettes.length > MOST_PALETTES)
    words.push(
      `That makes ${day.palettes.length} palettes, where a day carries ${MOST_PALETTES}: leave some piles for tomorrow.`,
    );
  return words;
}

/** Sentences on the state of a palette's passages, and on what waits and why. */
export function passageStateWords(day: Day, { passages }: PalettePlan): readonly string[] {
  return passages.flatMap(({ name, layers }) => {
    const wettest = groundDryness(layers, day.date);
    const under = wettest
      ? [
          `${name}: the ${wettest.layer.film} of ${dayWords(wettest.layer.date)} is ${drynessWords(wettest.dryness)}.`,
        ]
      : [];
    const waits = day.leftOff
      .filter(({ passage }) => passage === name)
      .map((one) => leftOffWords(one));
    return [...under, ...waits];
  });
}

/** Why a pile is not on the sheet, then what to do. */
export function leftOffWords({ pile, passage, why }: LeftOff): string {
  switch (why.code) {
    case 'mixture-gone':
      return `“${pile}” of ${passage} is left off: its mixture is no longer in the book. Choose another for it.`;
    case 'toxic-alone':
      return `“${pile}” of ${passage} is left off: without toxic pigments the shelf has no mixture for it.`;
    case 'ground-wet':
      return `“${pile}” of ${passage} waits: its ground is ${drynessWords(why.dryness)}. It should be dry between ${dayWords(why.dryness.from)} and ${dayWords(why.dryness.to)}.`;
  }
}

/** Warnings about mixtures and coats; each pair is named once, with every place where it meets. */
export function warningWords(
  { piles, slabClashes, pigments }: PalettePlan,
  studio: Studio,
  number: NumberFormat,
): readonly string[] {
  const pairs = new Map<string, Clash[]>();
  for (const clash of [...piles.flatMap((one) => one.clashes), ...slabClashes]) {
    const key = [...clash.pigments].sort().join('+');
    pairs.set(key, [...(pairs.get(key) ?? []), clash]);
  }
  const together = [...pairs.values()]
    .sort(([a], [b]) => Number(b!.severity === 'avoid') - Number(a!.severity === 'avoid'))
    .map((group) => pairWords(group, studio));
  const coats = new Map<string, string[]>();
  for (const { layerWarnings: warnings, pile } of piles)
    for (const warning of warnings) {
      const words = layerWarningWords(warning, studio);
      coats.set(words, [...(coats.get(words) ?? []), pile.name]);
    }
  return [
    ...together,
    ...[...coats].map(
      ([words, names]) => `${joinWords(names.map((name) => `“${name}”`))}: ${words}`,
    ),
    ...piles.flatMap(({ pile }) => laidRemarks(pile, number)),
    ...pigments
      .filter(({ key }) => isStranger(key, studio))
      .map(({ label }) => strangerWords(label)),
  ];
}

/** A warning of practice about a coat over another, then what to do. */
export function layerWarningWords({ rule, pigments }: LayerWarning, studio: Studio): string {
  const names = joinWords(pigments.map((pigment) => midSentence(labelIn(studio, pigment))));
  switch (rule) {
    case 'quick over slow':
      return 'A quick drier over a slow one: the skin sets while the coat below still moves, and cracks. Let the lower coat dry through, or take a slower pigment.';
    case 'black underneath':
      return `There is much ${names} underneath: it stays soft for long, and what lies over it cracks.`;
    case 'Cassel earth underneath':
      return 'There is Cassel earth underneath: it hardly ever dries, wrinkles and cracks. Keep it for the last coat.';
    case 'lake underneath':
      return `There is much ${names} underneath: lakes dry slowly and keep best as the last glaze.`;
    case 'zinc white underneath':
      return 'There is zinc white underneath: its film turns brittle and may part from what lies over it.';
    case 'umber thick underneath':
      return `There is ${names} in a thick coat underneath: it holds much oil, and darkens and moves. Keep it thin in lower coats.`;
    case 'lean over fat':
      return 'Lean over fat: the coat below holds more spare oil for its thickness than this one. Stir a little oil in, or leave oil out below next time.';
  }
}

/** What to do with a leftover. */
export const LEFTOVER_WORDS = {
  fresh: 'fresh: use it first',
  ageing: 'ageing: use it first, unless it has a skin',
  past: 'too old: discard it',
  skinned: 'has a skin: discard it, do not stir it in',
  spoilt: 'lost its colour under water: discard it',
} as const satisfies Record<LeftoverState, string>;

/** Whether a paint is unknown to the shelf, the studio and the handbooks. */
const isStranger = (pigment: string, { shelf, stock }: Studio): boolean =>
  !shelf.paints.some((one) => one.pigment === pigment) &&
  !stock?.own.some(({ id }) => id === baseOf(pigment)) &&
  factsOf(pigment) === null;
const strangerWords = (label: string): string =>
  `“${label}” is no paint of this shelf and of no handbook: look whether its name is right. It is drawn in grey, and measured by volume.`;

/** Spare oil that gives three times the oil of most pastes. */
const MUCH_OIL = 1.3;

/** Remarks on unusual thicknesses or amounts of oil. */
function laidRemarks(pile: PassagePile, number: NumberFormat): readonly string[] {
  const um = filmUmOf(pile);
  const { least, most } = FILMS[pile.film];
  const remarks: string[] = [];
  if (um < least || um > most)
    remarks.push(
      `“${pile.name}” is laid ${number(um, 0, 2)} µm thick, where ${pile.film} is usually ${least} to ${most}.`,
    );
  if (spareOilOf(pile) > MUCH_OIL)
    remarks.push(
      `“${pile.name}” takes more than three times the usual oil: thin the film, not the pigment.`,
    );
  return remarks;
}

function pairWords(group: readonly Clash[], studio: Studio): string {
  const { pigments, severity, why } = group[0]!;
  const names = joinWords([
    labelIn(studio, pigments[0]),
    midSentence(labelIn(studio, pigments[1])),
  ]);
  const where = [
    ...new Set(
      group.map(
        ({ where, in: place }) => `${WHERE[where]} ${where === 'slab' ? place : `“${place}”`}`,
      ),
    ),
  ];
  const ask = severity === 'avoid' ? 'Do not join' : 'With care';
  return `${ask}: ${names} (${joinWords(where)}). ${why.join(' ')}`;
}
const WHERE = { pile: 'in', layers: 'over the last coat in', slab: 'prepared' } as const;

/** CIEDE2000 beyond which another mixture counts as another colour. */
const NEAR = 6;

/**
 * Sentences on what the shelf lacks for a palette, and the nearest other mixture of each pile,
 * once.
 */
export function lacksWords(
  day: Day,
  index: number,
  studio: Studio,
  number: NumberFormat,
): readonly string[] {
  const here = day.lacks.filter(({ piles }) => piles.some(({ palette }) => palette === index));
  const others = new Map(
    here.flatMap(({ piles }) =>
      piles
        .filter(({ palette }) => palette === index)
        .map(({ pile, other }) => [pile, other] as const),
    ),
  );
  const near: string[] = [];
  const far: string[] = [];
  for (const [pile, other] of others) {
    if (other === null || other.deltaE00 > NEAR) far.push(`“${pile}”`);
    else near.push(`Nearest other for “${pile}”: ${otherWords(other, studio, number)}.`);
  }
  if (far.length > 0) near.push(`Nothing else comes near ${joinWords(far)}.`);
  return [...here.map((lack) => lackWords(lack, number)), ...near];
}

/** How much of a pigment is missing; for toxic powder, what to use instead. */
function lackWords(
  { label, lackCm3, dryRefused, pigment }: Shortage,
  number: NumberFormat,
): string {
  if (!dryRefused) return `${label}: the shelf lacks ${cm3Words(lackCm3, number)}.`;
  const stands = standInWords(pigment);
  const safe = stands.length > 0 ? `; a safe stand-in is ${joinWords(stands)}` : '';
  return `${label}: only dry powder is there, and that is not handled here. ${cm3Words(lackCm3, number)} of ready-wetted paste is wanted${safe}.`;
}

const otherWords = (
  { parts, deltaE00 }: Replacement,
  studio: Studio,
  number: NumberFormat,
): string =>
  `${parts
    .map(
      ({ pigment, parts: count, letDown }) =>
        `${count} ${midSentence(labelIn(studio, pigment))}${letDown ? ' let down' : ''}`,
    )
    .join(' + ')}, ${number(deltaE00, 1)} away`;
