import { hexOf } from '../colour/hex.ts';
import { weighFaultWords } from '../pigment/weigh.ts';
import { dayWords, fullDay } from './calendar.ts';
import { ALWAYS, type CautionGroup, cautionsOf } from './caution.ts';
import type { Clash } from './clash.ts';
import { cleaningOf } from './clean.ts';
import type { Day, LeftOff, PalettePlan, PigmentPlan, PilePlan } from './day.ts';
import { type Dryness, drynessOf } from './drying.ts';
import { cm3Up, cm3Words, gramsWords, listed, oilWords, within } from './figure.ts';
import { hazardOf, isToxic } from './known.ts';
import { LEFTOVER_WORDS } from './leftover.ts';
import { mixingOrder, mixingSteps } from './mixing.ts';
import { labelIn, type Studio } from './passage.ts';
import { filmUmOf } from './quantity.ts';
import type { Draw } from './supply.ts';
import { standInWords } from './swap.ts';
import { isTempered, TOOLS, TOOLS_WORDS } from './tools.ts';

/** One line of what to prepare: a pigment from one thing on the shelf. */
export interface PrepareRow {
  /** Running number over the sheet: the order of work. */
  readonly number: number;
  readonly pigment: string;
  readonly label: string;
  /** "lot 7", or what to know instead. */
  readonly lot: string;
  /** "set out", "grind", "temper, do not grind". */
  readonly act: string;
  /** cm3 of paste, rounded up; null where a part is no volume. */
  readonly cm3: number | null;
  /** What the scales say: "12.4 g", "by volume", "by parts", "not weighed". */
  readonly weigh: string;
  /** Oil to start from, for powder: "4 g". */
  readonly oil: string | null;
}
export interface PrepareGroup {
  readonly tools: string;
  readonly rows: readonly PrepareRow[];
}

/** One pile as the assistants read it. */
export interface SheetPile {
  readonly key: string;
  readonly name: string;
  /** null where the palette serves one passage alone. */
  readonly passage: string | null;
  /** As an sRGB screen shows it: a guide, not for matching. */
  readonly hex: string;
  readonly mixed: boolean;
  readonly cm3: number;
  /** "body colour, 40 µm, 2 coats". */
  readonly laid: string;
  readonly parts: readonly {
    readonly label: string;
    readonly parts: number;
    readonly letDown: boolean;
    readonly cm3: number | null;
  }[];
  /** Let-downs and oil; the parts are in mixing order. */
  readonly steps: readonly string[];
  /** Lots of the accepted pile in the order of its parts: written beside its dab; – where there is none. */
  readonly lots: string;
  readonly instead: string | null;
}

export interface MorningSheet {
  readonly title: string;
  readonly date: string;
  readonly day: string;
  readonly number: number;
  readonly of: number;
  readonly passages: string;
  readonly pupils: boolean;
  readonly useFirst: readonly string[];
  readonly prepare: readonly PrepareGroup[];
  /** Remarks under the list: oil, estimates, parts without grams. */
  readonly prepareNotes: readonly string[];
  readonly piles: readonly SheetPile[];
  /** How the passages stand, what waits and why. */
  readonly today: readonly string[];
  readonly mind: readonly string[];
  readonly lacks: readonly string[];
  readonly cautions: readonly CautionGroup[];
  readonly always: typeof ALWAYS;
  readonly cleaning: readonly string[];
  readonly acknowledge: readonly {
    readonly lot: string;
    readonly person: string;
    readonly date: string | null;
  }[];
}

/**
 * The morning sheet of one palette of a day.
 * @param index which palette, from 0
 */
export function sheetOf(day: Day, index: number, studio: Studio): MorningSheet {
  const palette = day.palettes[index];
  if (palette === undefined) throw new RangeError(`the day has no palette ${index}`);
  return {
    title: palette.name,
    date: day.date,
    day: fullDay(day.date),
    number: index + 1,
    of: day.palettes.length,
    passages: listed(palette.passages.map(({ name }) => name)),
    pupils: day.rules.pupils,
    useFirst: palette.offers.map(({ leftover, state, piles }) => {
      const to = piles.length > 0 ? ` for ${listed(piles.map((name) => `“${name}”`))}` : '';
      const heap = `“${leftover.name}”, ${leftover.cm3} cm³, ${leftover.kept} since ${dayWords(leftover.date)}`;
      return `${heap}: ${LEFTOVER_WORDS[state]}${to}.`;
    }),
    ...preparing(day, palette, studio),
    piles: [...palette.mixed, ...palette.piles.filter((one) => one.pure)].map((plan) =>
      sheetPile(plan, day, palette, studio),
    ),
    today: todayOf(day, palette),
    mind: mindOf(palette, studio),
    lacks: day.lacks
      .filter(({ piles }) => piles.some((one) => one.palette === index))
      .map((lack) => lackWords(lack, index, studio)),
    cautions: cautionsOf(palette.pigments, studio.stock),
    always: ALWAYS,
    cleaning: cleaningOf(palette.pigments),
    acknowledge: acknowledgements(day, palette, studio),
  };
}

function preparing(
  day: Day,
  palette: PalettePlan,
  studio: Studio,
): Pick<MorningSheet, 'prepare' | 'prepareNotes'> {
  let number = 0;
  const prepare = TOOLS.map((tools) => ({
    tools: TOOLS_WORDS[tools],
    rows: palette.preparing
      .filter((one) => one.tools === tools)
      .flatMap((plan) => {
        number++;
        return plan.supply.draws.map((draw) => rowOf(number, plan, draw, day, studio));
      }),
  })).filter(({ rows }) => rows.length > 0);
  const draws = palette.pigments.flatMap(({ supply }) => supply.draws);
  const notes: string[] = [];
  if (!day.weighable)
    notes.push('The shelf does not say that its parts are volumes: parts are given, but no grams.');
  if (draws.some(({ weighed }) => weighed.as === 'powder'))
    notes.push('Oil: begin with about three quarters, then by drops until it comes together.');
  if (draws.some(({ entry }) => entry?.form !== 'powder'))
    notes.push('Paste and tubes: as they come, no oil added.');
  if (draws.some(({ weighed }) => 'about' in weighed && weighed.about))
    notes.push('“About”: an estimate; weigh what your lot takes.');
  return { prepare, prepareNotes: [...notes, ...unweighedWords(palette)] };
}

function rowOf(
  number: number,
  plan: PigmentPlan,
  { entry, cm3, weighed }: Draw,
  day: Day,
  studio: Studio,
): PrepareRow {
  const powder = entry?.form === 'powder';
  const act = powder ? (isTempered(plan.key) ? 'temper, do not grind' : 'grind') : 'set out';
  return {
    number,
    pigment: plan.key,
    label: plan.label,
    lot: lotWords(plan, entry, studio),
    act,
    cm3: day.weighable ? cm3Up(cm3) : null,
    weigh: day.weighable ? weighWords(weighed) : 'by parts',
    oil: day.weighable && weighed.as === 'powder' ? oilWords(weighed.oilGrams, false) : null,
  };
}

function lotWords({ supply }: PigmentPlan, entry: Draw['entry'], { stock }: Studio): string {
  if (entry === null) {
    if (stock === null) return '';
    return supply.dryRefused ? 'wetted paste only, to be bought' : 'not on the shelf';
  }
  const lot = entry.lot === '' ? '' : /^lot\b/i.test(entry.lot) ? entry.lot : `lot ${entry.lot}`;
  return [entry.grade, lot].filter((word) => word !== '').join(', ');
}

function weighWords(weighed: Draw['weighed']): string {
  switch (weighed.as) {
    case 'paste':
      return weighed.grams === null ? 'by volume' : gramsWords(weighed.grams, weighed.about);
    case 'powder':
      return gramsWords(weighed.pigmentGrams, weighed.about);
    case 'unweighed':
      return 'not weighed';
  }
}

function sheetPile(plan: PilePlan, day: Day, palette: PalettePlan, studio: Studio): SheetPile {
  const { pile, amount, swap, passage, pure } = plan;
  const coats = pile.coats ?? 1;
  const total = pile.parts.reduce((sum, one) => sum + one.parts, 0);
  const parts = mixingOrder(plan);
  const lots = [...new Set(parts.map(({ pigment }) => pigment))].map((pigment) => {
    const draws = palette.pigments.find(({ key }) => key === pigment)?.supply.draws ?? [];
    return [...new Set(draws.map(({ entry }) => entry?.lot ?? '').filter((lot) => lot !== ''))];
  });
  return {
    key: plan.key,
    name: pile.name,
    passage: palette.passages.length > 1 ? passage.name : null,
    hex: hexOf(plan.lab),
    mixed: !pure,
    cm3: cm3Up(amount.prepare),
    laid: `${pile.film}, ${filmUmOf(pile)} µm${coats > 1 ? `, ${coats} coats` : ''}`,
    parts: parts.map(({ pigment, parts: count, letDown = false }) => ({
      label: labelIn(studio, pigment),
      parts: count,
      letDown,
      cm3: day.weighable ? cm3Up((amount.paste * count) / total) : null,
    })),
    steps: mixingSteps(plan, studio),
    lots: lots.map((of) => (of.length === 0 ? '–' : of.join(' and '))).join(', '),
    instead:
      swap === null
        ? null
        : `Without toxic pigments: ${swap.deltaE00.toFixed(1)} from the colour that was planned.`,
  };
}

/** "touch-dry", "between tacky and touch-dry: your touch decides". */
export function drynessWords({ least, most, felt }: Dryness): string {
  if (felt) return `${least} by touch`;
  return least === most ? `${least} by now` : `between ${least} and ${most}: your touch decides`;
}

function todayOf(day: Day, { passages }: PalettePlan): readonly string[] {
  return passages.flatMap(({ name, layers }) => {
    const last = layers.at(-1);
    const under = last
      ? [
          `${name}: the ${last.film} of ${dayWords(last.date)} is ${drynessWords(drynessOf(last, day.date))}.`,
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

/** What to mind about mixtures and coats; one pair once, with every place where it meets. */
function mindOf({ piles, slabClashes }: PalettePlan, studio: Studio): readonly string[] {
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
  ];
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

function lackWords(lack: Day['lacks'][number], index: number, studio: Studio): string {
  const piles = lack.piles.filter(({ palette }) => palette === index);
  const stands = standInWords(lack.pigment);
  const start = lack.dryRefused
    ? `${lack.label}: only dry powder is there, and that is not handled here. ${cm3Words(lack.lackCm3)} of ready-wetted paste is wanted${stands.length > 0 ? `; a safe stand-in is ${listed(stands)}` : ''}.`
    : `${lack.label}: the shelf lacks ${cm3Words(lack.lackCm3)}.`;
  const others = piles.map(({ pile, other }) =>
    other === null
      ? `No other mixture serves “${pile}”.`
      : `Nearest other for “${pile}”: ${other.parts
          .map(
            ({ pigment, parts, letDown }) =>
              `${parts} ${within(labelIn(studio, pigment))}${letDown ? ' let down' : ''}`,
          )
          .join(' + ')}, ${other.deltaE00.toFixed(1)} away.`,
  );
  return [start, ...others].join(' ');
}

function acknowledgements(
  { rules }: Day,
  { pigments }: PalettePlan,
  { stock }: Studio,
): MorningSheet['acknowledge'] {
  return pigments
    .filter(({ key }) => isToxic(hazardOf(stock, key)))
    .flatMap(({ key, label, supply }) =>
      [...new Set(supply.draws.map(({ entry }) => entry?.lot ?? ''))].flatMap((lot) =>
        rules.people.map((person) => ({
          lot: lot === '' ? label : `${label}, lot ${lot.replace(/^lot\s*/i, '')}`,
          person,
          date:
            rules.acknowledged.find(
              (one) => one.pigment === key && one.lot === lot && one.person === person,
            )?.date ?? null,
        })),
      ),
    );
}

/** Reasons why a pigment of the palette is not weighed, each with what to do. */
const unweighedWords = ({ pigments }: PalettePlan): readonly string[] =>
  pigments.flatMap(({ supply }) =>
    supply.draws.flatMap(({ weighed }) =>
      weighed.as === 'unweighed' ? [weighFaultWords(weighed.why)] : [],
    ),
  );
