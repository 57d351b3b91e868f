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

/** A variant that the painter applied to a colour. */
export interface Taken {
  readonly way: Way;
  readonly amount: Amount;
}

/** One colour on the screen: as gathered, with the variants applied to it, in order. */
export interface Studied {
  readonly gathered: EditedColour;
  readonly taken: readonly Taken[];
}

/** The specimen that is open; null for a harmony without one. */
export const specimen = signal<Entry<'specimen'> | null>(null);
/** The harmony as stored in the book; null until it is saved. */
export const kept = signal<Entry<'harmony'> | null>(null);
/** Loading state of the entry that the address names. */
export const stage = signal<'empty' | 'opening' | 'open' | 'missing'>('empty');
/** Object URL of the stored photograph; revoked when another one opens. */
export const photoUrl = signal<string | null>(null);
/** Region of each colour; null if the regions are unknown. */
export const labels = signal<LabelMap | null>(null);
/** Colours of the harmony, in display order. */
export const studied = signal<readonly Studied[]>([]);
/** Whether the harmony is mapped into the lightness range of the shelf. */
export const isKeyed = signal(true);
/** Index of the selected colour. */
export const chosen = signal(0);
/** Whether the photograph highlights the region of the selected colour. */
export const isLit = signal(false);
export const name = signal('');
export const note = signal('');

/** State that undo restores. */
export interface Step {
  readonly studied: readonly Studied[];
  readonly labels: LabelMap | null;
  readonly look: Look;
}
/** Current state, for an undo step. */
export const stepNow = (): Step => ({
  studied: studied.value,
  labels: labels.value,
  look: look.value,
});
/** Whether the specimen's record is being written. */
export const writing = signal(false);
/** State as last read from or written to the specimen; null while nothing is open. */
export const inBook = signal<Step | null>(null);
const past = history<Step>();
export const { canUndo } = past;

/** Mapping of the gathered colours into the shelf's range. */
const key = computed(() =>
  keyOf(
    studied.value.map(({ gathered }) => gathered.lab),
    shelf.value,
  ),
);

/** The colours as gathered, CIELAB under D65. */
export const gatheredLabs = computed(() => studied.value.map(({ gathered }) => gathered.lab));

/** Mapping of the whole harmony: moved within reach, mapped into the shelf's range, or identity. */
const together = computed<(lab: Lab) => Lab>(() => {
  const all = isTransposed.value ? move.value : null;
  if (all) return (lab) => movedWith(lab, gatheredLabs.value, all);
  return isKeyed.value ? key.value : (lab) => lab;
});

/** A colour after the mapping of the whole harmony and before its variants. */
const baseOf = ({ gathered }: Studied): Lab => together.value(gathered.lab);

/** Target of the mixture for each colour, CIELAB under D65. */
export const targets = computed(() =>
  studied.value.map((colour) =>
    colour.taken.reduce((lab, { way, amount }) => vary(lab, way, amount).lab, baseOf(colour)),
  ),
);

/** Value ladder of each colour, mapped with the harmony and shifted with its target. */
export const ladders = computed(() =>
  studied.value.map((colour, i) => {
    const { ladder } = colour.gathered;
    const from = ladder.map((step) => ({ ...step, lab: together.value(step.lab) }));
    return moved(from, baseOf(colour), targets.value[i]!);
  }),
);

/** Answer for each target; null until found. */
export const answers = computed<readonly (Answer | null)[]>(() => targets.value.map(answerOf));

// Searches for mixtures of the current targets.
effect(() => {
  wantAnswers(targets.value);
});

/** Selects a colour and highlights its region; selecting it again toggles the highlight. */
export function choose(index: number): void {
  batch(() => {
    isLit.value = chosen.value !== index || !isLit.value;
    chosen.value = index;
  });
}

/**
 * Applies variants to their colours, each with the mixture that was shown for it. One undo step
 * restores all.
 * @param all index of each colour, with its variant
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

/** Adds an undo step. Call it before a change. */
export function mark(from: Step = stepNow()): void {
  past.push(from);
}

/** Restores the state before the latest change; without one it does nothing. */
export function undo(): void {
  batch(() => {
    const last = past.pop();
    if (last) show(last);
  });
}

/** Whether the screen differs from a state. */
const isElsewhere = ({ studied: colours, labels: map, look: seen }: Step): boolean =>
  colours !== studied.value || map !== labels.value || seen !== look.value;

/** Replaces colours, label map and photograph settings; keeps the selection by name. */
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

/** Opens the entry that the address names. @param id of a harmony or of a specimen */
async function open(id: string): Promise<void> {
  const here = await opening;
  if (!here) return;
  // The previous entry must not stay visible under the new address while this one loads.
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
    // The painter made changes during loading; keep them, they are written first.
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
      // The specimen was gathered again since, so its label map does not fit these colours.
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

/** Whether a stored harmony has the current colours of its specimen. */
const isOf = ({ colours }: HarmonyBody, gathered: readonly EditedColour[]): boolean =>
  colours.length === gathered.length &&
  colours.every(({ lab }, i) => canonical(lab) === canonical(gathered[i]!.lab));

// Opens the entry named by the address.
let shown: string | null = null;
effect(() => {
  const { place, open: id } = route.value;
  if (place !== 'harmony' || id === null || id === shown) return;
  void saving.flush().then(() => {
    shown = id;
    return open(id);
  });
});

// Reloads a specimen that was gathered again here or in another window.
effect(() => {
  edition.value;
  // `.value`, not `peek()`: a gathering that ends while the specimen opens must show too.
  const current = specimen.value;
  const here = book.peek();
  if (!current || !here || kept.peek()) return;
  void here.get('specimen', current.id).then((found) => {
    if (!found.ok || specimen.peek()?.id !== current.id || kept.peek()) return;
    // Ignore this screen's own writes, including one that was still running during the read.
    const has = specimen.peek()!.clock;
    if (compareClocks(found.value.clock, has) > 0 && !writing.peek()) void open(current.id);
  });
});

/** Default name of a harmony: the names of its first three colours. */
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

/** Saves the harmony in the book; from then on changes are saved automatically. */
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

/**
 * Canonical text of the painter's decisions. Mixtures are derived from them and from the current
 * shelf, so they count only once the painter has set preferences or chosen a mixture.
 */
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

/** Whether the stored harmony lacks an answer or a decision. */
function isUnsaved(): boolean {
  const entry = kept.value;
  if (!entry) return false;
  const hasAll = entry.body.colours.every(({ answer }) => answer !== undefined);
  return !hasAll || decided(bodyNow()) !== decided(entry.body);
}

watchUnsaved(isUnsaved);

// Autosave of a stored harmony: after a pause, or at once when the page hides. A change of shelf is
// not a change of the harmony: the stored recipes stay until the painter changes something.
effect(() => {
  if (!isUnsaved()) return;
  // Do not overwrite a stored mixture while its search runs.
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

/** Draft in localStorage of a harmony that is not in the book yet. */
interface Bench {
  /** Id of the specimen. */
  readonly of: string;
  readonly name: string;
  readonly note: string;
  readonly isKeyed: boolean;
  /** Variants of each colour, in the order of the colours. */
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

/** Restores the draft from before the page was closed. @param of id of the specimen */
function showBench(of: string | undefined): void {
  const bench = readBench(benchOf('harmony'));
  if (bench?.of !== of || bench?.taken.length !== studied.value.length) return;
  name.value = bench.name;
  note.value = bench.note;
  isKeyed.value = bench.isKeyed;
  studied.value = studied.value.map((colour, i) => ({ ...colour, taken: bench.taken[i]! }));
}

/** Parses a draft; null if it is missing or malformed. */
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
