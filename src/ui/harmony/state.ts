import { batch, computed, effect, signal } from '@preact/signals';
import { compareClocks } from '../../book/clock.ts';
import { canonical } from '../../book/digest.ts';
import { onHide } from '../../book/drafts.ts';
import { bookFaultWords } from '../../book/faults.ts';
import type { HarmonyBody, HarmonyColour } from '../../book/harmony.ts';
import { gatheringOf, maskOf } from '../../book/keep.ts';
import type { Entry } from '../../book/record.ts';
import type { Lab } from '../../colour/lab.ts';
import type { EditedColour } from '../../harmony/edit.ts';
import type { LabelMap } from '../../harmony/harmony.ts';
import { keyOf } from '../../harmony/key.ts';
import { against } from '../../harmony/made.ts';
import type { Mixed } from '../../harmony/variant.ts';
import { AMOUNTS, type Amount, vary, WAYS, type Way } from '../../harmony/vary.ts';
import type { Answer, Mixture } from '../../mixture/mixture.ts';
import { NO_WISH } from '../../mixture/wish.ts';
import { benchOf, keepBench } from '../bench.ts';
import { today } from '../locale.ts';
import { rename, route } from '../route.ts';
import { autosave } from '../state/autosave.ts';
import { history } from '../state/history.ts';
import {
  book,
  complain,
  edition,
  opening,
  shelf,
  watchUnsaved,
  writeBeforeLeaving,
} from '../studio.ts';
import { answerOf, remember, wantAnswers } from './answers.ts';
import { moved } from './drawn.ts';
import { bringMixtures, chosenFor, hasSay, openChoices, wishToKeep } from './mix/decided.ts';
import { isTransposed, move, movedWith, openMove } from './mix/transposing.ts';
import { type Look, look, lookOf, NO_LOOK } from './sight/look.ts';

/** A variant that the painter took. */
export interface Taken {
  readonly way: Way;
  readonly amount: Amount;
}

/** One colour on the screen: as gathered, and what was done to it. */
export interface Studied {
  readonly gathered: EditedColour;
  readonly taken: readonly Taken[];
}

export const specimen = signal<Entry<'specimen'> | null>(null);
/** The harmony as the book has it; null until it is kept. */
export const kept = signal<Entry<'harmony'> | null>(null);
export const stage = signal<'empty' | 'opening' | 'open' | 'missing'>('empty');
export const photoUrl = signal<string | null>(null);
export const labels = signal<LabelMap | null>(null);
export const studied = signal<readonly Studied[]>([]);
export const isKeyed = signal(true);
/** Index of the colour on the bench. */
export const chosen = signal(0);
/** The photograph shows where the chosen colour lives. */
export const isLit = signal(false);
export const name = signal('');
export const note = signal('');

/** Everything that one step can change. */
export interface Step {
  readonly studied: readonly Studied[];
  readonly labels: LabelMap | null;
  readonly look: Look;
}
export const stepNow = (): Step => ({
  studied: studied.value,
  labels: labels.value,
  look: look.value,
});
/** What is on the screen is on its way into the specimen's record. */
export const writing = signal(false);
/** What was last read from the specimen or written there; null while nothing is open. */
export const inBook = signal<Step | null>(null);
const past = history<Step>();
export const { canUndo } = past;

const key = computed(() =>
  keyOf(
    studied.value.map(({ gathered }) => gathered.lab),
    shelf.value,
  ),
);

/** The colours as gathered. */
export const gatheredLabs = computed(() => studied.value.map(({ gathered }) => gathered.lab));

/** How the whole harmony moves: transposed into reach, keyed to the shelf, or as seen. */
const together = computed<(lab: Lab) => Lab>(() => {
  const all = isTransposed.value ? move.value : null;
  if (all) return (lab) => movedWith(lab, gatheredLabs.value, all);
  return isKeyed.value ? key.value : (lab) => lab;
});

/** What one colour starts from. */
const baseOf = ({ gathered }: Studied): Lab => together.value(gathered.lab);

/** What is to be mixed for each colour, CIELAB under D65. */
export const targets = computed(() =>
  studied.value.map((colour) =>
    colour.taken.reduce((lab, { way, amount }) => vary(lab, way, amount).lab, baseOf(colour)),
  ),
);

/** The ladder of each colour, keyed or as seen, moved as its local colour was. */
export const ladders = computed(() =>
  studied.value.map((colour, i) => {
    const { ladder } = colour.gathered;
    const from = ladder.map((step) => ({ ...step, lab: together.value(step.lab) }));
    return moved(from, baseOf(colour), targets.value[i]!);
  }),
);

export const answers = computed<readonly (Answer | null)[]>(() => targets.value.map(answerOf));

// Mixtures for what is on the screen.
effect(() => {
  wantAnswers(targets.value);
});

/** Takes a colour to the bench and shows where it lives; chosen again, the whole photograph is shown. */
export function choose(index: number): void {
  batch(() => {
    isLit.value = chosen.value !== index || !isLit.value;
    chosen.value = index;
  });
}

/**
 * Puts variants in the place of their colours, each with the pile that was shown for it: of the colour
 * on the bench, or of the whole harmony. One step back undoes all.
 */
export function takeVariants(all: readonly { readonly at: number; readonly made: Mixed }[]): void {
  batch(() => {
    mark();
    bringMixtures(
      all.map(({ at, made: { way, amount, mixture } }) => {
        const { lab } = vary(targets.value[at]!, way, amount);
        return [lab, against(lab, mixture)] as const;
      }),
    );
    studied.value = studied.value.map((colour, i) => {
      const made = all.find(({ at }) => at === i)?.made;
      if (!made) return colour;
      const { way, amount } = made;
      return { ...colour, taken: [...colour.taken, { way, amount }] };
    });
  });
}

/** From here one can go back: to be called before a change. */
export function mark(from: Step = stepNow()): void {
  past.push(from);
}

export function undo(): void {
  batch(() => {
    const last = past.pop();
    if (last) show(last);
  });
}

/** Whether something was changed since. */
const isElsewhere = ({ studied: colours, labels: map, look: seen }: Step): boolean =>
  colours !== studied.value || map !== labels.value || seen !== look.value;

/** Puts other colours, another label map or another look in place; the colour on the bench stays if it can. */
export function show(step: Step): void {
  batch(() => {
    const name = studied.value[chosen.value]?.gathered.name;
    const same = step.studied.findIndex(({ gathered }) => gathered.name === name);
    studied.value = step.studied;
    labels.value = step.labels;
    look.value = step.look;
    if (same >= 0) chosen.value = same;
    else chosen.value = Math.max(0, Math.min(chosen.value, step.studied.length - 1));
  });
}

/** Opens what the address names: a harmony that was kept, or a specimen. */
async function open(id: string): Promise<void> {
  const here = await opening;
  if (!here) return;
  // What was open before must not stand there under another name meanwhile.
  const isAgain = specimen.value?.id === id || kept.value?.id === id;
  if (!isAgain) clear();
  stage.value = 'opening';
  const before = stepNow();
  const harmony = await here.get('harmony', id);
  const specimenId = harmony.ok ? harmony.value.body.specimen : id;
  const photographed = specimenId === null ? null : await here.get('specimen', specimenId);
  const entry = photographed?.ok ? photographed.value : null;
  const picture = entry && (await here.photograph(entry.body.photo.file));
  const gathered = entry && (await gatheringOf(here, entry));
  const rubbed = entry && (await maskOf(here, entry));
  if (shown !== id) return;
  if (isAgain && isElsewhere(before)) {
    // The painter went on meanwhile: that is written first.
    stage.value = 'open';
    return;
  }
  if (!harmony.ok && !entry) {
    stage.value = 'missing';
    return;
  }
  batch(() => {
    if (photoUrl.value) URL.revokeObjectURL(photoUrl.value);
    photoUrl.value = picture?.ok
      ? URL.createObjectURL(new Blob([picture.value.bytes], { type: picture.value.type }))
      : null;
    specimen.value = entry;
    labels.value = gathered?.labels ?? null;
    look.value = entry ? lookOf(entry.body, labels.value, rubbed) : NO_LOOK;
    past.clear();
    chosen.value = 0;
    isLit.value = false;
    stage.value = 'open';
    if (harmony.ok) {
      showHarmony(harmony.value);
      // Gathered anew since: where its colours live is no longer known.
      if (!isOf(harmony.value.body, gathered?.colours ?? [])) labels.value = null;
    } else {
      kept.value = null;
      name.value = entry?.body.name ?? '';
      note.value = entry?.body.note ?? '';
      isKeyed.value = true;
      openMove(null);
      openChoices();
      studied.value = (gathered?.colours ?? []).map((colour) => ({ gathered: colour, taken: [] }));
      showBench(entry?.id);
    }
    inBook.value = stepNow();
  });
}

function clear(): void {
  batch(() => {
    if (photoUrl.value) URL.revokeObjectURL(photoUrl.value);
    photoUrl.value = null;
    specimen.value = null;
    kept.value = null;
    labels.value = null;
    look.value = NO_LOOK;
    inBook.value = null;
    studied.value = [];
    past.clear();
    name.value = '';
    note.value = '';
    openMove(null);
    openChoices();
  });
}

function showHarmony(entry: Entry<'harmony'>): void {
  const { body } = entry;
  remember(
    body.colours.flatMap(({ answer }) => answer ?? []),
    body.wish ?? NO_WISH,
  );
  kept.value = entry;
  name.value = body.name;
  note.value = body.note;
  isKeyed.value = body.keyed;
  openMove(body.transposed ?? null);
  openChoices(
    body.colours.flatMap(({ answer, mixture }) =>
      answer && mixture && !isSame(mixture, answer.simplest) ? [[answer.target, mixture]] : [],
    ),
    body.wish ?? null,
  );
  studied.value = body.colours.map(({ taken, answer: _a, mixture: _m, ...gathered }) => ({
    gathered,
    taken: taken ?? [],
  }));
}

/** Whether a harmony has the colours that its specimen has now. */
const isOf = ({ colours }: HarmonyBody, gathered: readonly EditedColour[]): boolean =>
  colours.length === gathered.length &&
  colours.every(({ lab }, i) => canonical(lab) === canonical(gathered[i]!.lab));

// The address says what is open.
let shown: string | null = null;
effect(() => {
  const { place, open: id } = route.value;
  if (place !== 'harmony' || id === null || id === shown) return;
  void saving.flush().then(() => {
    shown = id;
    return open(id);
  });
});

// What was gathered meanwhile, here or in another window, appears by itself.
effect(() => {
  edition.value;
  // Read, not peeked: what was gathered while it was still being opened appears too.
  const current = specimen.value;
  const here = book.peek();
  if (!current || !here || kept.peek()) return;
  void here.get('specimen', current.id).then((found) => {
    if (!found.ok || specimen.peek()?.id !== current.id || kept.peek()) return;
    // What this screen wrote itself is here already, though it was read before the last of it was written.
    const has = specimen.peek()!.clock;
    if (compareClocks(found.value.clock, has) > 0 && !writing.peek()) void open(current.id);
  });
});

/** A harmony without a name is called by its colours. */
const calledByColours = (): string =>
  studied.value
    .slice(0, 3)
    .map(({ gathered }) => gathered.name)
    .join(', ');

const isSame = (one: Mixture, other: Mixture): boolean =>
  canonical([one.parts, one.recipe]) === canonical([other.parts, other.recipe]);

const bodyNow = (): HarmonyBody => ({
  name: name.value.trim() || calledByColours(),
  note: note.value,
  date: specimen.value?.body.date ?? kept.value?.body.date ?? today(),
  specimen: specimen.value?.id ?? kept.value?.body.specimen ?? null,
  keyed: isKeyed.value,
  ...(isTransposed.value && move.value ? { transposed: move.value } : {}),
  shelf: shelf.value.name,
  ...(wishToKeep.value ? { wish: wishToKeep.value } : {}),
  colours: studied.value.map(({ gathered, taken }, i): HarmonyColour => {
    const answer = answers.value[i];
    return {
      ...gathered,
      ...(taken.length > 0 ? { taken } : {}),
      ...(answer ? { answer, mixture: chosenFor(answer.target) ?? answer.simplest } : {}),
    };
  }),
});

/** Writes the harmony into the book; from then on every change is kept. */
export async function keep(): Promise<void> {
  const here = book.value;
  if (!here || studied.value.length === 0) return;
  const before = kept.value;
  const put = await here.put({
    kind: 'harmony',
    body: bodyNow(),
    ...(before ? { id: before.id, over: before } : {}),
  });
  if (!put.ok) return complain(bookFaultWords(put.fault));
  const { entry } = put.value;
  kept.value = entry;
  if (before) return;
  name.value = entry.body.name;
  shown = entry.id;
  if (route.peek().place === 'harmony') rename('harmony', entry.id);
}

const saving = autosave(400, keep);

/** What the painter decided; mixtures follow from it, and from the shelf of the day, until the painter has a say in them. */
const decided = (body: HarmonyBody): string =>
  canonical({
    ...body,
    shelf: '',
    wish: hasSay.value ? (body.wish ?? null) : null,
    colours: body.colours.map((colour) => ({
      ...colour,
      answer: null,
      mixture: hasSay.value && colour.mixture ? colour.mixture.parts : null,
    })),
  });

/** Whether the painter decided something that the book does not have yet. */
function isUnsaved(): boolean {
  const entry = kept.value;
  if (!entry) return false;
  const hasAll = entry.body.colours.every(({ answer }) => answer !== undefined);
  return !hasAll || decided(bodyNow()) !== decided(entry.body);
}

watchUnsaved(isUnsaved);

// A kept harmony keeps every later change: soon, and at once when the page hides. Another shelf is no
// change of the harmony: the recipes that were kept stay until the painter alters it.
effect(() => {
  if (!isUnsaved()) return;
  // A mixture that is still being looked for must not replace one that the book has.
  if (answers.value.includes(null)) return;
  saving.schedule();
});
onHide(window, () => {
  if (!isUnsaved()) return;
  saving.cancel();
  void keep();
  book.peek()?.note();
});
writeBeforeLeaving(saving.flush);

/** What was said and done to a harmony that is not in the book yet. */
interface Bench {
  readonly of: string;
  readonly name: string;
  readonly note: string;
  readonly isKeyed: boolean;
  readonly taken: readonly (readonly Taken[])[];
}
keepBench('harmony', (): Bench | null | undefined => {
  const of = specimen.peek()?.id;
  if (kept.peek()) return null;
  if (of === undefined) return undefined;
  return {
    of,
    name: name.peek(),
    note: note.peek(),
    isKeyed: isKeyed.peek(),
    taken: studied.peek().map(({ taken }) => taken),
  };
});

/** Puts back what lay there when the page was closed. */
function showBench(of: string | undefined): void {
  const bench = readBench(benchOf('harmony'));
  if (bench?.of !== of || bench?.taken.length !== studied.value.length) return;
  name.value = bench.name;
  note.value = bench.note;
  isKeyed.value = bench.isKeyed;
  studied.value = studied.value.map((colour, i) => ({ ...colour, taken: bench.taken[i]! }));
}

function readBench(text: string | null): Bench | null {
  try {
    const bench = JSON.parse(text ?? 'null');
    const isTaken = ({ way, amount }: Taken) => WAYS.includes(way) && AMOUNTS.includes(amount);
    const isBench =
      [bench?.of, bench?.name, bench?.note].every((one) => typeof one === 'string') &&
      typeof bench.isKeyed === 'boolean' &&
      bench.taken?.every((taken: readonly Taken[]) => taken.every(isTaken));
    return isBench ? bench : null;
  } catch {
    return null;
  }
}
