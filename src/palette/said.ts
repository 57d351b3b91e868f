import { dayWords } from './calendar.ts';
import type { Clash } from './clash.ts';
import { type Dryness, groundDryness } from './drying.ts';
import { MOST_PALETTES } from './faults.ts';
import { cm3Words, listed, within } from './figure.ts';
import { FILMS } from './film.ts';
import { labelIn, type PassagePile, type Studio } from './passage.ts';
import type { Day, LeftOff, PalettePlan } from './plan.ts';
import { filmUmOf, spareOilOf } from './quantity.ts';
import { standInWords } from './swap.ts';

/** "touch-dry", "between tacky and touch-dry: your touch decides". */
export function drynessWords({ least, most, felt }: Dryness): string {
  if (felt) return `${least} by touch`;
  return least === most ? `${least} by now` : `between ${least} and ${most}: your touch decides`;
}

/** What became of a palette that was more than one carries, and of a day that is more than a day. */
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

/** How the passages of a palette stand, what waits and why. */
export function todayOf(day: Day, { passages, asked }: PalettePlan): readonly string[] {
  const stand = passages.flatMap(({ name, layers }) => {
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
  return [...boardsWords(day, asked), ...stand];
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

/** What to mind about mixtures and coats; one pair once, with every place where it meets. */
export function mindOf({ piles, slabClashes }: PalettePlan, studio: Studio): readonly string[] {
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
    for (const { words } of warnings) coats.set(words, [...(coats.get(words) ?? []), pile.name]);
  return [
    ...together,
    ...[...coats].map(([words, names]) => `${listed(names.map((name) => `“${name}”`))}: ${words}`),
    ...piles.flatMap(({ pile }) => laidRemarks(pile)),
  ];
}

/** Three times the oil that most pastes are ground in. */
const MUCH_OIL = 1.3;

/** What to mind of a thickness or an amount of oil that is out of the usual. */
function laidRemarks(pile: PassagePile): readonly string[] {
  const um = filmUmOf(pile);
  const { least, most } = FILMS[pile.film];
  const remarks: string[] = [];
  if (um < least || um > most)
    remarks.push(
      `“${pile.name}” is laid ${um} µm thick, where ${pile.film} is usually ${least} to ${most}.`,
    );
  if (spareOilOf(pile) > MUCH_OIL)
    remarks.push(
      `“${pile.name}” takes more than three times the usual oil: thin the film, not the pigment.`,
    );
  return remarks;
}

function pairWords(group: readonly Clash[], studio: Studio): string {
  const { pigments, severity, why } = group[0]!;
  const names = listed([labelIn(studio, pigments[0]), within(labelIn(studio, pigments[1]))]);
  const where = [
    ...new Set(
      group.map(
        ({ where, in: place }) => `${WHERE[where]} ${where === 'slab' ? place : `“${place}”`}`,
      ),
    ),
  ];
  const ask = severity === 'avoid' ? 'Do not join' : 'With care';
  return `${ask}: ${names} (${listed(where)}). ${why.join(' ')}`;
}
const WHERE = { pile: 'in', layers: 'over the last coat in', slab: 'prepared' } as const;

/** Beyond this CIEDE2000 another mixture is another colour. */
const NEAR = 6;

/** What of a pigment lacks, and what could take its place on a palette. */
export function lackWords(lack: Day['lacks'][number], index: number, studio: Studio): string {
  const piles = lack.piles.filter(({ palette }) => palette === index);
  const stands = standInWords(lack.pigment);
  const start = lack.dryRefused
    ? `${lack.label}: only dry powder is there, and that is not handled here. ${cm3Words(lack.lackCm3)} of ready-wetted paste is wanted${stands.length > 0 ? `; a safe stand-in is ${listed(stands)}` : ''}.`
    : `${lack.label}: the shelf lacks ${cm3Words(lack.lackCm3)}.`;
  const near = piles.filter(({ other }) => other !== null && other.deltaE00 <= NEAR);
  const far = piles.filter((one) => !near.includes(one)).map(({ pile }) => `“${pile}”`);
  const others = near.map(
    ({ pile, other }) =>
      `Nearest other for “${pile}”: ${other!.parts
        .map(
          ({ pigment, parts, letDown }) =>
            `${parts} ${within(labelIn(studio, pigment))}${letDown ? ' let down' : ''}`,
        )
        .join(' + ')}, ${other!.deltaE00.toFixed(1)} away.`,
  );
  if (far.length > 0) others.push(`Nothing else comes near ${listed(far)}.`);
  return [start, ...others].join(' ');
}
