import { batch, computed, effect, signal, untracked } from '@preact/signals';
import type { NeutralWish } from '../../../../workers/photo.ts';
import { bookFaultWords } from '../../../book/faults.ts';
import { keepGathering } from '../../../book/keep.ts';
import type { Entry } from '../../../book/record.ts';
import { carried } from '../../../harmony/carry.ts';
import type { EditedHarmony } from '../../../harmony/edit.ts';
import { faultWords, gatherFrom, gathering, giveUp } from '../../gathering.ts';
import { book, complain, opening, tell } from '../../studio.ts';
import { saySight } from '../../words/sight.ts';
import {
  inBook,
  labels,
  mark,
  type Step,
  show,
  specimen,
  stage,
  stepNow,
  studied,
  undo,
  writing,
} from '../state.ts';
import { type Light, type Look, look, lookedAt, spotLight, storedMask, turnOf } from './look.ts';

/** The current harmony as input of manual edits. */
export const harmonyNow = (): EditedHarmony => ({
  width: Math.max(1, look.value.width),
  height: Math.max(1, look.value.height),
  colours: studied.value.map(({ gathered }) => gathered),
  labels: labels.value ?? { width: 1, height: 1, data: new Uint8Array([255]) },
  remarks: look.value.remarks,
});

/** The specimen's stored photograph; null after an error, which the painter sees. */
export async function pictureOf(entry: Entry<'specimen'>): Promise<Blob | null> {
  const here = await opening;
  if (!here) return null;
  const photo = await here.photograph(entry.body.photo.file);
  if (photo.ok) return new Blob([photo.value.bytes], { type: photo.value.type });
  complain(bookFaultWords(photo.fault));
  return null;
}

/** Changed settings of a gathering; absent fields stay as they are. */
export interface Change {
  /** White balance; null for none. */
  readonly light?: Light | null;
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
export async function gatherAnew(change: Change = {}, isMarked = false): Promise<boolean> {
  const entry = specimen.value;
  if (!entry) return false;
  const file = await pictureOf(entry);
  if (!file || specimen.value?.id !== entry.id) return false;
  const { neutral } = change;
  const light = change.light === undefined ? look.value.light : change.light;
  const wanted = change.wanted === undefined ? look.value.wanted : change.wanted;
  const mask = lookedAt(look.value);
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
    complain(faultWords(result.fault));
    return false;
  }
  const { gathered, remarks, setting } = result.value;
  const was = stepNow();
  const lightNow = neutral && setting ? spotLight(setting, neutral, result.value) : light;
  const { harmony, lost } = carried(harmonyNow(), gathered, {
    turn: lightNow === was.look.light ? null : turnOf(was.look.light, lightNow),
    keepsShape: change.wanted === undefined,
  });
  const fromCopy = saySight.fromCopy(gathered.width, gathered.height);
  const isFromCopy = was.look.width > gathered.width || was.look.remarks.includes(fromCopy);
  const next: Look = {
    ...was.look,
    light: lightNow,
    width: gathered.width,
    height: gathered.height,
    remarks: isFromCopy ? [...remarks, fromCopy] : remarks,
    wanted,
    behind: false,
    hasDropped: false,
  };
  batch(() => {
    if (!isMarked && was.studied.length > 0) mark(was);
    show({
      studied: harmony.colours.map((colour) => ({ gathered: colour, taken: [] })),
      labels: harmony.labels,
      look: next,
    });
  });
  if (lost.length > 0 || was.look.hasDropped) tell(saySight.notCarried(lost, was.look.hasDropped));
  return true;
}

/**
 * Sets the mask, which shows at once, and gathers again.
 * @param mask null for the whole photograph
 */
export function keepOnly(mask: Look['mask']): void {
  batch(() => {
    mark();
    look.value = { ...look.value, mask, behind: true };
  });
  void gatherAnew({}, true);
}

/** Undoes one step; aborts a running gathering, and gathers again if the harmony is out of date. */
export function stepBack(): void {
  giveUp();
  undo();
  if (look.value.behind) void gatherAnew({}, true);
}

/** A pending write of the specimen's record. Writes run one at a time; only the latest waits. */
interface Writing {
  readonly entry: Entry<'specimen'>;
  readonly step: Step;
  readonly harmony: EditedHarmony;
}
let waiting: Writing | null = null;

/** Whether two states give the same specimen record, which holds no variants. */
const same = (one: Step, other: Step): boolean =>
  one.labels === other.labels &&
  one.look === other.look &&
  one.studied.length === other.studied.length &&
  one.studied.every(({ gathered }, i) => gathered === other.studied[i]!.gathered);

effect(() => {
  const step = stepNow();
  const before = inBook.value;
  const entry = specimen.peek();
  if (stage.value !== 'open' || !entry || !before || !step.labels || same(step, before)) return;
  if (step.look.behind || step.studied.length === 0) return;
  untracked(() => {
    waiting = { entry, step, harmony: harmonyNow() };
    if (!writing.value) void write();
  });
});

/** Writes until nothing is pending. */
async function write(): Promise<void> {
  writing.value = true;
  let last: Entry<'specimen'> | null = null;
  try {
    while (waiting) {
      const { entry, step, harmony }: Writing = waiting;
      waiting = null;
      const here = book.value;
      if (!here) return;
      const over: Entry<'specimen'> =
        specimen.value?.id === entry.id ? specimen.value : last?.id === entry.id ? last : entry;
      const { light } = step.look;
      const put = await keepGathering(here, over, {
        gathered: harmony,
        mask: storedMask(step.look),
        ...(light?.kind === 'spot' ? { neutral: light.spot } : {}),
        ...(light?.kind === 'stated' ? { stated: light.light } : {}),
      });
      if (!put.ok) {
        complain(bookFaultWords(put.fault));
        continue;
      }
      last = put.value.entry;
      if (specimen.value?.id === entry.id)
        batch(() => {
          specimen.value = put.value.entry;
          inBook.value = step;
        });
    }
  } finally {
    writing.value = false;
  }
}

/** Whether the photograph shows without white balance, for comparison. */
export const isBefore = signal(false);

/** Whether a gathering runs; manual edits are disabled meanwhile. */
export const isBusy = computed(() => gathering.value !== null);
