import { batch, computed, effect, signal } from '@preact/signals';
import { canonical } from '../../../book/schema/digest.ts';
import type { HarmonyBody, HarmonyColour } from '../../../book/schema/harmony.ts';
import { compareClocks } from '../../../book/schema/hybrid-clock.ts';
import type { Entry } from '../../../book/schema/record.ts';
import { onHide } from '../../../book/store/draft-autosave.ts';
import { gatheringOf, maskOf } from '../../../book/store/save-specimen.ts';
import type { Lab } from '../../../colour/lab.ts';
import type { LabelMap } from '../../../harmony/harmony.ts';
import type { EditedColour } from '../../../harmony/manual-edits.ts';
import type { MixedVariant } from '../../../harmony/mixed-variant.ts';
import { rangeMapping } from '../../../harmony/shelf-range.ts';
import {
  AMOUNTS,
  VARIANT_WAYS,
  type VariantAmount,
  type VariantWay,
  variantTarget,
} from '../../../harmony/variant-target.ts';
import { bookFaultWords } from '../../../messages/book-faults.ts';
import { DEFAULT_PREFERENCES } from '../../../mixture/mixing-preferences.ts';
import type { Mixture, MixtureAnswer } from '../../../mixture/mixture-types.ts';
import { rescored } from '../../../mixture/normalise.ts';
import { autosave } from '../autosave.ts';
import { shiftLadder } from '../display-ladder.ts';
import { readDraft, saveDraftOnHide } from '../draft-storage.ts';
import { today } from '../locale-format.ts';
import { replaceAddress, route } from '../route.ts';
import {
  book,
  bookReady,
  bookRevision,
  registerUnsaved,
  shelf,
  showError,
  writeBeforeLeaving,
} from '../studio.ts';
import { undoHistory } from '../undo-history.ts';
import {
  DEFAULT_GATHERING_SETTINGS,
  type GatheringSettings,
  gatheringSettings,
  settingsFromSpecimen,
} from './gathering-settings.ts';
import {
  addChosenMixtures,
  chosenMixtureFor,
  hasOwnDecisions,
  preferencesToStore,
  resetDecisions,
} from './mixing-decisions.ts';
import { cachedAnswerFor, cacheStoredAnswers, searchMissingAnswers } from './mixture-answers.ts';
import { applyMoveTo, harmonyMove, isWithinReachShown, resetMove } from './move-within-reach.ts';

/** A variant that the painter applied to a colour. */
interface AppliedVariant {
  readonly way: VariantWay;
  readonly amount: VariantAmount;
}

/** One colour on the screen: as gathered, with the variants applied to it, in order. */
export interface HarmonyColourState {
  readonly gathered: EditedColour;
  readonly taken: readonly AppliedVariant[];
}

/** The specimen that is open; null for a harmony without one. */
export const specimen = signal<Entry<'specimen'> | null>(null);
/** The harmony as stored in the book; null until it is saved. */
export const savedHarmony = signal<Entry<'harmony'> | null>(null);
/** Loading state of the entry that the address names. */
export const loadingStage = signal<'empty' | 'opening' | 'open' | 'missing'>('empty');
/** Object URL of the stored photograph; revoked when another one opens. */
export const photoUrl = signal<string | null>(null);
/** Region of each colour; null if the regions are unknown. */
export const regionLabels = signal<LabelMap | null>(null);
/** Colours of the harmony, in display order. */
export const harmonyColours = signal<readonly HarmonyColourState[]>([]);
/** Whether the harmony is mapped into the lightness range of the shelf. */
export const isMappedToShelf = signal(true);
/** Index of the selected colour. */
export const selectedIndex = signal(0);
/** Whether the photograph highlights the region of the selected colour. */
export const isRegionHighlighted = signal(false);
export const name = signal('');
export const note = signal('');

/** State that undo restores. */
export interface HarmonySnapshot {
  readonly studied: readonly HarmonyColourState[];
  readonly labels: LabelMap | null;
  readonly look: GatheringSettings;
}
/** Current state, for an undo step. */
export const currentSnapshot = (): HarmonySnapshot => ({
  studied: harmonyColours.value,
  labels: regionLabels.value,
  look: gatheringSettings.value,
});
/** Whether the specimen's record is being written. */
export const isWritingSpecimen = signal(false);
/** State as last read from or written to the specimen; null while nothing is open. */
export const storedSnapshot = signal<HarmonySnapshot | null>(null);
const harmonyHistory = undoHistory<HarmonySnapshot>();
export const { canUndo } = harmonyHistory;

/** Mapping of the gathered colours into the shelf's range. */
const shelfMapping = computed(() =>
  rangeMapping(
    harmonyColours.value.map(({ gathered }) => gathered.lab),
    shelf.value,
  ),
);

/** The colours as gathered, CIELAB under D65. */
export const gatheredLabs = computed(() =>
  harmonyColours.value.map(({ gathered }) => gathered.lab),
);

/** Mapping of the whole harmony: moved within reach, mapped into the shelf's range, or identity. */
const harmonyMapping = computed<(lab: Lab) => Lab>(() => {
  const all = isWithinReachShown.value ? harmonyMove.value : null;
  if (all) return (lab) => applyMoveTo(lab, gatheredLabs.value, all);
  return isMappedToShelf.value ? shelfMapping.value : (lab) => lab;
});

/** A colour after the mapping of the whole harmony and before its variants. */
const mappedColour = ({ gathered }: HarmonyColourState): Lab => harmonyMapping.value(gathered.lab);

/** Target of the mixture for each colour, CIELAB under D65. */
export const targets = computed(() =>
  harmonyColours.value.map((colour) =>
    colour.taken.reduce(
      (lab, { way, amount }) => variantTarget(lab, way, amount).lab,
      mappedColour(colour),
    ),
  ),
);

/** Value ladder of each colour, mapped with the harmony and shifted with its target. */
export const ladders = computed(() =>
  harmonyColours.value.map((colour, i) => {
    const { ladder } = colour.gathered;
    const from = ladder.map((step) => ({ ...step, lab: harmonyMapping.value(step.lab) }));
    return shiftLadder(from, mappedColour(colour), targets.value[i]!);
  }),
);

/** Answer for each target; null until found. */
export const answers = computed<readonly (MixtureAnswer | null)[]>(() =>
  targets.value.map(cachedAnswerFor),
);

// Searches for mixtures of the current targets.
effect(() => {
  searchMissingAnswers(targets.value);
});

/** Selects a colour and highlights its region; selecting it again toggles the highlight. */
export function selectColour(index: number): void {
  batch(() => {
    isRegionHighlighted.value = selectedIndex.value !== index || !isRegionHighlighted.value;
    selectedIndex.value = index;
  });
}

/**
 * Applies variants to their colours, each with the mixture that was shown for it. One undo step
 * restores all.
 * @param all index of each colour, with its variant
 */
export function applyVariants(
  all: readonly { readonly at: number; readonly made: MixedVariant }[],
): void {
  batch(() => {
    pushUndoStep();
    addChosenMixtures(
      all.map(({ at, made: { way, amount, mixture } }) => {
        const { lab } = variantTarget(targets.value[at]!, way, amount);
        return [lab, rescored(lab, mixture)] as const;
      }),
    );
    harmonyColours.value = harmonyColours.value.map((colour, i) => {
      const made = all.find(({ at }) => at === i)?.made;
      if (!made) return colour;
      const { way, amount } = made;
      return { ...colour, taken: [...colour.taken, { way, amount }] };
    });
  });
}

/** Adds an undo step. Call it before a change. */
export function pushUndoStep(from: HarmonySnapshot = currentSnapshot()): void {
  harmonyHistory.push(from);
}

/** Restores the state before the latest change; without one it does nothing. */
export function undoHarmonyChange(): void {
  batch(() => {
    const last = harmonyHistory.pop();
    if (last) showSnapshot(last);
  });
}

/** Whether the screen differs from a state. */
const hasChangedSince = ({ studied: colours, labels: map, look: seen }: HarmonySnapshot): boolean =>
  colours !== harmonyColours.value ||
  map !== regionLabels.value ||
  seen !== gatheringSettings.value;

/** Replaces colours, label map and photograph settings; keeps the selection by name. */
export function showSnapshot(step: HarmonySnapshot): void {
  batch(() => {
    const name = harmonyColours.value[selectedIndex.value]?.gathered.name;
    const same = step.studied.findIndex(({ gathered }) => gathered.name === name);
    harmonyColours.value = step.studied;
    regionLabels.value = step.labels;
    gatheringSettings.value = step.look;
    if (same >= 0) selectedIndex.value = same;
    else selectedIndex.value = Math.max(0, Math.min(selectedIndex.value, step.studied.length - 1));
  });
}

/** Opens the entry that the address names. @param id of a harmony or of a specimen */
async function open(id: string): Promise<void> {
  const here = await bookReady;
  if (!here) return;
  // The previous entry must not stay visible under the new address while this one loads.
  const isAgain = specimen.value?.id === id || savedHarmony.value?.id === id;
  if (!isAgain) clear();
  loadingStage.value = 'opening';
  const before = currentSnapshot();
  const harmony = await here.get('harmony', id);
  const specimenId = harmony.ok ? harmony.value.body.specimen : id;
  const photographed = specimenId === null ? null : await here.get('specimen', specimenId);
  const entry = photographed?.ok ? photographed.value : null;
  const picture = entry && (await here.photograph(entry.body.photo.file));
  const gathered = entry && (await gatheringOf(here, entry));
  const rubbed = entry && (await maskOf(here, entry));
  if (openedId !== id) return;
  if (isAgain && hasChangedSince(before)) {
    // The painter made changes during loading; keep them, they are written first.
    loadingStage.value = 'open';
    return;
  }
  if (!harmony.ok && !entry) {
    loadingStage.value = 'missing';
    return;
  }
  batch(() => {
    if (photoUrl.value) URL.revokeObjectURL(photoUrl.value);
    photoUrl.value = picture?.ok
      ? URL.createObjectURL(new Blob([picture.value.bytes], { type: picture.value.type }))
      : null;
    specimen.value = entry;
    regionLabels.value = gathered?.labels ?? null;
    gatheringSettings.value = entry
      ? settingsFromSpecimen(entry.body, regionLabels.value, rubbed)
      : DEFAULT_GATHERING_SETTINGS;
    harmonyHistory.clear();
    selectedIndex.value = 0;
    isRegionHighlighted.value = false;
    loadingStage.value = 'open';
    if (harmony.ok) {
      showHarmony(harmony.value);
      // The specimen was gathered again since, so its label map does not fit these colours.
      if (!hasColoursOf(harmony.value.body, gathered?.colours ?? [])) regionLabels.value = null;
    } else {
      savedHarmony.value = null;
      name.value = entry?.body.name ?? '';
      note.value = entry?.body.note ?? '';
      isMappedToShelf.value = true;
      resetMove(null);
      resetDecisions();
      harmonyColours.value = (gathered?.colours ?? []).map((colour) => ({
        gathered: colour,
        taken: [],
      }));
      restoreDraft(entry?.id);
    }
    storedSnapshot.value = currentSnapshot();
  });
}

function clear(): void {
  batch(() => {
    if (photoUrl.value) URL.revokeObjectURL(photoUrl.value);
    photoUrl.value = null;
    specimen.value = null;
    savedHarmony.value = null;
    regionLabels.value = null;
    gatheringSettings.value = DEFAULT_GATHERING_SETTINGS;
    storedSnapshot.value = null;
    harmonyColours.value = [];
    harmonyHistory.clear();
    name.value = '';
    note.value = '';
    resetMove(null);
    resetDecisions();
  });
}

function showHarmony(entry: Entry<'harmony'>): void {
  const { body } = entry;
  cacheStoredAnswers(
    body.colours.flatMap(({ answer }) => answer ?? []),
    body.wish ?? DEFAULT_PREFERENCES,
  );
  savedHarmony.value = entry;
  name.value = body.name;
  note.value = body.note;
  isMappedToShelf.value = body.keyed;
  resetMove(body.transposed ?? null);
  resetDecisions(
    body.colours.flatMap(({ answer, mixture }) =>
      answer && mixture && !isSame(mixture, answer.simplest) ? [[answer.target, mixture]] : [],
    ),
    body.wish ?? null,
  );
  harmonyColours.value = body.colours.map(({ taken, answer: _a, mixture: _m, ...gathered }) => ({
    gathered,
    taken: taken ?? [],
  }));
}

/** Whether a stored harmony has the current colours of its specimen. */
const hasColoursOf = ({ colours }: HarmonyBody, gathered: readonly EditedColour[]): boolean =>
  colours.length === gathered.length &&
  colours.every(({ lab }, i) => canonical(lab) === canonical(gathered[i]!.lab));

// Above the effects: the first run of each is at once.
const harmonyAutosave = autosave(400, saveHarmony);

// Opens the entry named by the address.
let openedId: string | null = null;
effect(() => {
  const { place, open: id } = route.value;
  if (place !== 'harmony' || id === null || id === openedId) return;
  void harmonyAutosave.flush().then(() => {
    openedId = id;
    return open(id);
  });
});

// Reloads a specimen that was gathered again here or in another window.
effect(() => {
  bookRevision.value;
  // `.value`, not `peek()`: a gathering that ends while the specimen opens must show too.
  const current = specimen.value;
  const here = book.peek();
  if (!current || !here || savedHarmony.peek()) return;
  void here.get('specimen', current.id).then((found) => {
    if (!found.ok || specimen.peek()?.id !== current.id || savedHarmony.peek()) return;
    // Ignore this screen's own writes, including one that was still running during the read.
    const has = specimen.peek()!.clock;
    if (compareClocks(found.value.clock, has) > 0 && !isWritingSpecimen.peek())
      void open(current.id);
  });
});

/** Default name of a harmony: the names of its first three colours. */
const defaultHarmonyName = (): string =>
  harmonyColours.value
    .slice(0, 3)
    .map(({ gathered }) => gathered.name)
    .join(', ');

const isSame = (one: Mixture, other: Mixture): boolean =>
  canonical([one.parts, one.recipe]) === canonical([other.parts, other.recipe]);

const bodyNow = (): HarmonyBody => ({
  name: name.value.trim() || defaultHarmonyName(),
  note: note.value,
  date: specimen.value?.body.date ?? savedHarmony.value?.body.date ?? today(),
  specimen: specimen.value?.id ?? savedHarmony.value?.body.specimen ?? null,
  keyed: isMappedToShelf.value,
  ...(isWithinReachShown.value && harmonyMove.value ? { transposed: harmonyMove.value } : {}),
  shelf: shelf.value.name,
  ...(preferencesToStore.value ? { wish: preferencesToStore.value } : {}),
  colours: harmonyColours.value.map(({ gathered, taken }, i): HarmonyColour => {
    const answer = answers.value[i];
    return {
      ...gathered,
      ...(taken.length > 0 ? { taken } : {}),
      ...(answer ? { answer, mixture: chosenMixtureFor(answer.target) ?? answer.simplest } : {}),
    };
  }),
});

/** Saves the harmony in the book; from then on changes are saved automatically. */
export async function saveHarmony(): Promise<void> {
  const here = book.value;
  if (!here || harmonyColours.value.length === 0) return;
  const before = savedHarmony.value;
  const put = await here.put({
    kind: 'harmony',
    body: bodyNow(),
    ...(before ? { id: before.id, over: before } : {}),
  });
  if (!put.ok) return showError(bookFaultWords(put.fault));
  const { entry } = put.value;
  savedHarmony.value = entry;
  if (before) return;
  name.value = entry.body.name;
  openedId = entry.id;
  if (route.peek().place === 'harmony') replaceAddress('harmony', entry.id);
}

/**
 * Canonical text of the painter's decisions. Mixtures are derived from them and from the current
 * shelf, so they count only once the painter has set preferences or chosen a mixture.
 */
const decisionKey = (body: HarmonyBody): string =>
  canonical({
    ...body,
    shelf: '',
    wish: hasOwnDecisions.value ? (body.wish ?? null) : null,
    colours: body.colours.map((colour) => ({
      ...colour,
      answer: null,
      mixture: hasOwnDecisions.value && colour.mixture ? colour.mixture.parts : null,
    })),
  });

/** Whether the stored harmony lacks an answer or a decision. */
function isUnsaved(): boolean {
  const entry = savedHarmony.value;
  if (!entry) return false;
  const hasAll = entry.body.colours.every(({ answer }) => answer !== undefined);
  return !hasAll || decisionKey(bodyNow()) !== decisionKey(entry.body);
}

registerUnsaved(isUnsaved);

// Autosave of a stored harmony: after a pause, or at once when the page hides. A change of shelf is
// not a change of the harmony: the stored recipes stay until the painter changes something.
effect(() => {
  if (!isUnsaved()) return;
  // Do not overwrite a stored mixture while its search runs.
  if (answers.value.includes(null)) return;
  harmonyAutosave.schedule();
});
onHide(window, () => {
  if (!isUnsaved()) return;
  harmonyAutosave.cancel();
  void saveHarmony();
  book.peek()?.journalPendingWrites();
});
writeBeforeLeaving(harmonyAutosave.flush);

/** Draft in localStorage of a harmony that is not in the book yet. */
interface HarmonyDraft {
  /** Id of the specimen. */
  readonly of: string;
  readonly name: string;
  readonly note: string;
  readonly isKeyed: boolean;
  /** Variants of each colour, in the order of the colours. */
  readonly taken: readonly (readonly AppliedVariant[])[];
}
saveDraftOnHide('harmony', (): HarmonyDraft | null | undefined => {
  const of = specimen.peek()?.id;
  if (savedHarmony.peek()) return null;
  if (of === undefined) return undefined;
  return {
    of,
    name: name.peek(),
    note: note.peek(),
    isKeyed: isMappedToShelf.peek(),
    taken: harmonyColours.peek().map(({ taken }) => taken),
  };
});

/** Restores the draft from before the page was closed. @param of id of the specimen */
function restoreDraft(of: string | undefined): void {
  const bench = parseDraft(readDraft('harmony'));
  if (bench?.of !== of || bench?.taken.length !== harmonyColours.value.length) return;
  name.value = bench.name;
  note.value = bench.note;
  isMappedToShelf.value = bench.isKeyed;
  harmonyColours.value = harmonyColours.value.map((colour, i) => ({
    ...colour,
    taken: bench.taken[i]!,
  }));
}

/** Parses a draft; null if it is missing or malformed. */
function parseDraft(text: string | null): HarmonyDraft | null {
  try {
    const bench = JSON.parse(text ?? 'null');
    const isTaken = ({ way, amount }: AppliedVariant) =>
      VARIANT_WAYS.includes(way) && AMOUNTS.includes(amount);
    const isBench =
      [bench?.of, bench?.name, bench?.note].every((one) => typeof one === 'string') &&
      typeof bench.isKeyed === 'boolean' &&
      bench.taken?.every((taken: readonly AppliedVariant[]) => taken.every(isTaken));
    return isBench ? bench : null;
  } catch {
    return null;
  }
}
