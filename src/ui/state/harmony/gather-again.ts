import { batch, computed, effect, signal, untracked } from '@preact/signals';
import type { NeutralWish } from '../../../../workers/photo.ts';
import type { Entry } from '../../../book/schema/record.ts';
import { saveGathering } from '../../../book/store/save-specimen.ts';
import type { EditedHarmony } from '../../../harmony/manual-edits.ts';
import { reapplyEdits } from '../../../harmony/reapply-edits.ts';
import { bookFaultWords } from '../../../messages/book-faults.ts';
import { photographRemarkWords } from '../../../messages/photograph-messages.ts';
import { photographTexts } from '../../texts/photograph-texts.ts';
import { abortPhotographJob, faultWords, gatherFrom, gathering } from '../photograph-import.ts';
import { book, bookReady, showError, showNotice } from '../studio.ts';
import {
  currentSnapshot,
  type HarmonySnapshot,
  harmonyColours,
  isWritingSpecimen,
  loadingStage,
  pushUndoStep,
  regionLabels,
  showSnapshot,
  specimen,
  storedSnapshot,
  undoHarmonyChange,
} from './current-harmony.ts';
import {
  type AppliedWhiteBalance,
  type GatheringSettings,
  gatheringMask,
  gatheringSettings,
  rebalanceMatrix,
  storedMask,
  whiteBalanceFromSpot,
} from './gathering-settings.ts';

/** The current harmony as input of manual edits. */
export const editedHarmony = (): EditedHarmony => ({
  width: Math.max(1, gatheringSettings.value.width),
  height: Math.max(1, gatheringSettings.value.height),
  colours: harmonyColours.value.map(({ gathered }) => gathered),
  labels: regionLabels.value ?? { width: 1, height: 1, data: new Uint8Array([255]) },
});

/** The specimen's stored photograph; null after an error, which the painter sees. */
export async function readPhotograph(entry: Entry<'specimen'>): Promise<Blob | null> {
  const here = await bookReady;
  if (!here) return null;
  const photo = await here.photograph(entry.body.photo.file);
  if (photo.ok) return new Blob([photo.value.bytes], { type: photo.value.type });
  showError(bookFaultWords(photo.fault));
  return null;
}

/** Changed settings of a gathering; absent fields stay as they are. */
interface GatheringChange {
  /** White balance; null for none. */
  readonly light?: AppliedWhiteBalance | null;
  /** Neutral spot from which to compute the white balance. */
  readonly neutral?: NeutralWish;
  /** Number of colours; null for automatic. */
  readonly wanted?: number | null;
}

/**
 * Gathers again from the stored photograph and reapplies manual edits. The screen changes only when
 * the new harmony is ready, as one undo step.
 * @param isMarked the caller has already added the undo step
 * @returns whether there is a new harmony
 */
export async function regather(change: GatheringChange = {}, isMarked = false): Promise<boolean> {
  const entry = specimen.value;
  if (!entry) return false;
  const file = await readPhotograph(entry);
  if (!file || specimen.value?.id !== entry.id) return false;
  const { neutral } = change;
  const light = change.light === undefined ? gatheringSettings.value.light : change.light;
  const wanted = change.wanted === undefined ? gatheringSettings.value.colourCount : change.wanted;
  const mask = gatheringMask(gatheringSettings.value);
  const result = await gatherFrom(
    {
      file,
      keep: false,
      ...(wanted === null ? {} : { colours: wanted }),
      ...(mask ? { mask } : {}),
      ...(neutral ? { neutral } : light ? { adapt: light.matrix } : {}),
    },
    entry.id,
  );
  if (!result || specimen.value?.id !== entry.id) return false;
  if (!result.ok) {
    showError(faultWords(result.fault));
    return false;
  }
  const { gathered, setting } = result.value;
  const remarks = [...result.value.remarks, ...gathered.remarks].map(photographRemarkWords);
  const was = currentSnapshot();
  const lightNow =
    neutral && setting ? whiteBalanceFromSpot(setting, neutral, result.value) : light;
  const { harmony, lost } = reapplyEdits(editedHarmony(), gathered, {
    lightChange: lightNow === was.look.light ? null : rebalanceMatrix(was.look.light, lightNow),
    keepsShape: change.wanted === undefined,
  });
  const fromCopy = photographTexts.fromCopy(gathered.width, gathered.height);
  const isFromCopy = was.look.width > gathered.width || was.look.remarks.includes(fromCopy);
  const next: GatheringSettings = {
    ...was.look,
    light: lightNow,
    width: gathered.width,
    height: gathered.height,
    remarks: isFromCopy ? [...remarks, fromCopy] : remarks,
    colourCount: wanted,
    isOutdated: false,
    hasDropped: false,
  };
  batch(() => {
    if (!isMarked && was.studied.length > 0) pushUndoStep(was);
    showSnapshot({
      studied: harmony.colours.map((colour) => ({ gathered: colour, taken: [] })),
      labels: harmony.labels,
      look: next,
    });
  });
  if (lost.length > 0 || was.look.hasDropped)
    showNotice(photographTexts.notCarried(lost, was.look.hasDropped));
  return true;
}

/**
 * Sets the mask, which shows at once, and gathers again.
 * @param mask null for the whole photograph
 */
export function setMask(mask: GatheringSettings['mask']): void {
  batch(() => {
    pushUndoStep();
    gatheringSettings.value = { ...gatheringSettings.value, mask, isOutdated: true };
  });
  void regather({}, true);
}

/** Undoes one step; aborts a running gathering, and gathers again if the harmony is out of date. */
export function undoAndGather(): void {
  abortPhotographJob();
  undoHarmonyChange();
  if (gatheringSettings.value.isOutdated) void regather({}, true);
}

/** A pending write of the specimen's record. Writes run one at a time; only the latest waits. */
interface PendingSpecimenWrite {
  readonly entry: Entry<'specimen'>;
  readonly step: HarmonySnapshot;
  readonly harmony: EditedHarmony;
}
let pendingWrite: PendingSpecimenWrite | null = null;

/** Whether two states give the same specimen record, which holds no variants. */
const hasSameRecord = (one: HarmonySnapshot, other: HarmonySnapshot): boolean =>
  one.labels === other.labels &&
  one.look === other.look &&
  one.studied.length === other.studied.length &&
  one.studied.every(({ gathered }, i) => gathered === other.studied[i]!.gathered);

effect(() => {
  const step = currentSnapshot();
  const before = storedSnapshot.value;
  const entry = specimen.peek();
  if (
    loadingStage.value !== 'open' ||
    !entry ||
    !before ||
    !step.labels ||
    hasSameRecord(step, before)
  )
    return;
  if (step.look.isOutdated || step.studied.length === 0) return;
  untracked(() => {
    pendingWrite = { entry, step, harmony: editedHarmony() };
    if (!isWritingSpecimen.value) void writePending();
  });
});

/** Writes until nothing is pending. */
async function writePending(): Promise<void> {
  isWritingSpecimen.value = true;
  let last: Entry<'specimen'> | null = null;
  try {
    while (pendingWrite) {
      const { entry, step, harmony }: PendingSpecimenWrite = pendingWrite;
      pendingWrite = null;
      const here = book.value;
      if (!here) return;
      const over: Entry<'specimen'> =
        specimen.value?.id === entry.id ? specimen.value : last?.id === entry.id ? last : entry;
      const { light } = step.look;
      const put = await saveGathering(here, over, {
        gathered: { ...harmony, remarks: step.look.remarks },
        mask: storedMask(step.look),
        ...(light?.kind === 'spot' ? { neutral: light.spot } : {}),
        ...(light?.kind === 'stated' ? { stated: light.light } : {}),
      });
      if (!put.ok) {
        showError(bookFaultWords(put.fault));
        continue;
      }
      last = put.value.entry;
      if (specimen.value?.id === entry.id)
        batch(() => {
          specimen.value = put.value.entry;
          storedSnapshot.value = step;
        });
    }
  } finally {
    isWritingSpecimen.value = false;
  }
}

/** Whether the photograph shows without white balance, for comparison. */
export const isUnbalancedShown = signal(false);

/** Whether a gathering runs; manual edits are disabled meanwhile. */
export const isGathering = computed(() => gathering.value !== null);
