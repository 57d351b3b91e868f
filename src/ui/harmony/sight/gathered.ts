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

/** The harmony on the screen as hands work on it. */
export const harmonyNow = (): EditedHarmony => ({
  width: Math.max(1, look.value.width),
  height: Math.max(1, look.value.height),
  colours: studied.value.map(({ gathered }) => gathered),
  labels: labels.value ?? { width: 1, height: 1, data: new Uint8Array([255]) },
  remarks: look.value.remarks,
});

/** The stored picture of the specimen, or null with a word to the painter. */
export async function pictureOf(entry: Entry<'specimen'>): Promise<Blob | null> {
  const here = await opening;
  if (!here) return null;
  const photo = await here.photograph(entry.body.photo.file);
  if (photo.ok) return new Blob([photo.value.bytes], { type: photo.value.type });
  complain(bookFaultWords(photo.fault));
  return null;
}

/** How the next gathering differs from the last. */
export interface Change {
  readonly light?: Light | null;
  /** A spot to set the light by. */
  readonly neutral?: NeutralWish;
  readonly wanted?: number | null;
}

/**
 * Gathers anew from the stored picture. Nothing changes until the new harmony is there; then it is
 * one step, or no step of its own where the change that asked for it has been marked already.
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

/** Rubs out or keeps: what is kept is shown at once, the harmony follows. */
export function keepOnly(mask: Look['mask']): void {
  batch(() => {
    mark();
    look.value = { ...look.value, mask, behind: true };
  });
  void gatherAnew({}, true);
}

/** One step back, whatever it was. What was under way gives way; a harmony left behind is caught up with. */
export function stepBack(): void {
  giveUp();
  undo();
  if (look.value.behind) void gatherAnew({}, true);
}

// Into the specimen's record with everything that changed, one write after another.
interface Writing {
  readonly entry: Entry<'specimen'>;
  readonly step: Step;
  readonly harmony: EditedHarmony;
}
let waiting: Writing | null = null;

/** Whether two steps are the same to the record, which knows nothing of variants. */
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

/** The photograph as the camera gave it, while the painter compares. */
export const isBefore = signal(false);

/** The photograph is being looked at: hands wait. */
export const isBusy = computed(() => gathering.value !== null);
