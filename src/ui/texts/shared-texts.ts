import type { VariantWay } from '../../harmony/variant-target.ts';
import { formatCount, formatNumber } from '../state/locale-format.ts';
import type { Place } from '../state/route.ts';

/** Names of the app's places. */
export const PLACE_NAMES: Record<Place, string> = {
  walk: 'Walk',
  harmony: 'Harmony',
  drapery: 'Drapery',
  palette: 'Palette',
  book: 'Book',
};

/** Texts of the frame, the walk and the harmony screen. */
export const sharedTexts = {
  skip: 'Go to the contents',
  places: 'Places',
  saved: 'Saved in this browser',
  saving: 'Saving…',
  notSaved: 'Not saved',
  tryAgain: 'Try again',
  undo: 'Undo',
  undone: 'Undone.',
  close: 'Close',
  coming: 'One moment…',
  notComing:
    'This place could not be opened: part of the app is not on this device yet. Try again with a network.',
  stop: 'Stop',
  stopped: 'Stopped. The photograph is kept; gather it again when you like.',
  updateWaits: 'A newer Kingcup is ready. Your work is saved first.',
  updateNow: 'Change to it now',
  later: 'Later',
  bookOpening: 'Opening the book…',
  installLabel: 'Kingcup on this device',
  installAsks:
    'Kingcup can be put on this device and opened like any other app. The browser then keeps the book longer.',
  installByHand:
    'Before you save anything: put Kingcup on the home screen, and begin there. Open the browser’s share menu and choose to add it to the home screen. The book there is a book of its own: what is saved in this tab stays in this tab, and may be cleared after some days without a visit.',
  installByHandLater:
    'On the home screen Kingcup has a book of its own. To move there: make a copy here, add Kingcup to the home screen through the browser’s share menu, and bring the copy in there.',
  install: 'Put it on this device',

  take: 'Take a photograph',
  choose: 'Choose a photograph',
  walkHeading: 'What did you see?',
  walkEmpty:
    'A bird, a flower, a lichened stone, an evening sky: take its photograph or choose one. It is kept at once, with no network; its name and your words can wait.',
  samplesHeading: 'Or begin with one of our photographs',
  sampleMissing: 'The sample is not on this device yet. Try once more with a network.',
  sampleNames: {
    'jay-feather': 'A jay’s feather',
    'rowan-branch': 'A rowan branch',
    'lichened-wall': 'A lichened wall',
  },
  specimensHeading: 'Specimens',
  unnamed: 'Not yet named',
  keeping: 'Reading the photograph…',
  gathering: 'Gathering its colours…',
  looking: 'Looking at the photograph again…',

  harmonyEmpty: 'No photograph is open. Bring one from a walk, or open one from the book.',
  lostHeading: 'No such page',
  lost: 'This address leads nowhere: it may have been cut off on its way. Everything that was kept is in the book.',
  toWalk: 'Go to Walk',
  toBook: 'Open the book',
  notFound: 'This specimen is no longer in the book. It may be in the bin.',
  gatherAgain: 'Gather its colours',
  fewer: 'Fewer colours',
  more: 'More colours',
  keyed: 'Keyed to the shelf',
  asSeen: 'As seen',
  keyedAbout:
    'Lightness and chroma are drawn together so that the whole harmony fits what these pigments can reach.',
  asSeenAbout: 'The colours as the photograph has them. Paint reaches few of them.',
  simplest: 'The simplest',
  closest: 'The closest',
  mixing: 'Finding mixtures…',
  wanted: 'wanted',
  mixed: 'mixed',
  number: 'The figures',
  showSimplest: 'Show the simplest',
  showClosest: 'Show the closest',
  photoOf: (name: string) => `Photograph: ${name}`,
  livesWhere: (colour: string) => `Show where the ${colour} lives`,
  harmonyHung: 'The harmony',
  keyedOrSeen: 'How the colours are shown',
  ofThePhotograph: (share: string) => `${share} of what was looked at.`,
  accent: 'The accent.',
  keyingMade: 'Keying made it',
  madeOfSeen: 'Beside what was seen it is',
  figureWanted: 'Wanted (CIELAB, D65)',
  figureSeen: 'As the photograph has it',
  figureBest: 'Nearest of all, up to four pigments',
  ciede: (difference: number) => `difference ${formatNumber(difference, 1)} (CIEDE2000)`,
  differs: {
    'none seen': 'No difference from what is wanted would be seen.',
    'a trained eye sees it': 'A trained eye would see that it differs from what is wanted.',
    plain: 'It differs plainly from what is wanted.',
  },
  closestReaches: 'The shelf does reach it, with another pile: the closest.',
  outOfReach: 'Out of reach of this shelf: this is the nearest that it mixes.',
  layOut: 'Lay it out on the palette',
  onward: 'And then',
  onwardHarmony:
    'Make a drapery of it, to give a garment its folds; or lay its mixtures out on today’s palette as they are.',
  keepHarmony: 'Keep this harmony',
  kept: 'This harmony is in the book, changes and all.',
  wordsHeading: 'In words',
  nameOf: 'Name',
  noteOf: 'Your words',
  notePlaceholder: 'What made it work? Where, in what light?',

  bookEmpty: 'The book is empty. What you photograph and the harmonies you keep are written here.',
  open: 'Open',
  rename: 'Rename',
  remove: 'Delete',
  removed: (name: string) => `“${name}” is in the bin for 30 days.`,
  renamed: (name: string) => `It is called “${name}” now.`,
  cancel: 'Leave it',
  shelf: 'Shelf',
  guide: 'How Kingcup works',
  screenCannot: 'This screen cannot show it: drawn as near as it can.',
} as const;

export const VARIANT_WAY_WORDS: Record<VariantWay, string> = {
  warmer: 'warmer',
  cooler: 'cooler',
  lighter: 'lighter',
  deeper: 'deeper',
  brighter: 'brighter',
  duller: 'duller',
};
export const VARIANT_AMOUNT_WORDS = {
  small: 'a little',
  middle: 'clearly',
  large: 'much',
} as const;

/** A share, 0…1, in per cent, with one decimal below 1 %. */
export function shareWords(share: number): string {
  if (share < 0.001) return 'a trace';
  return share < 0.01 ? `${formatNumber(share * 100, 1)} %` : `${formatCount(share * 100)} %`;
}
