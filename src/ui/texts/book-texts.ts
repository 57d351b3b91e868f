import type { Kind } from '../../book/schema/record.ts';
import type { Sort } from '../../book/store/search-index.ts';
import { formatNumber as decimals, formatCount as number } from '../state/locale-format.ts';

/** Texts of the book screens. */
export const bookTexts = {
  heading: 'Book',
  parts: 'Parts of the book',
  entries: 'Entries',
  bin: 'Bin',
  copies: 'Copies',
  shelf: 'Shelf',

  search: 'Search the book',
  searchHint: 'A name, a place, a pigment…',
  narrow: 'Narrow it down',
  kind: 'Kind',
  everyKind: 'Every kind',
  from: 'From',
  to: 'To',
  pigment: 'Pigment used',
  anyPigment: 'Any pigment',
  sort: 'Order',
  colour: 'Something like this colour',
  colourFromBook: 'Colours of this book',
  colourOther: 'Another colour',
  chosenColour: (name: string) => `Like ${name}`,
  within: 'Within this difference',
  withinNow: (words: string, figure: number) => `${words} (${figure}, CIEDE2000)`,
  withinWords: (figure: number) => {
    if (figure <= 1) return 'no difference to be seen';
    if (figure <= 3) return 'hardly to be told apart';
    if (figure <= 8) return 'close';
    return figure <= 15 ? 'of one sort' : 'distant kin';
  },
  without: (what: string) => `Without: ${what}`,
  clear: 'Clear the search',
  found: (count: number, of: number) =>
    count === of
      ? `${number(count)} ${count === 1 ? 'entry' : 'entries'}`
      : `${number(count)} of ${number(of)} entries`,
  none: 'Nothing in the book is like this. Ask for less, or clear the search.',
  differs: (figure: number) => `differs by ${decimals(figure, 1)}`,
  listOf: 'Entries found',
  moreInBook: 'All of them, in the book',
  twoVersions: (count: number) =>
    count === 1
      ? 'One entry is here in two versions: two devices had changed it.'
      : `${count} entries are here in two versions: two devices had changed them.`,
  showVersions: 'Show them',
  showAll: 'Show all entries',

  gone: 'This entry is not in the book. It may be in the bin.',
  back: 'All entries',
  openInHarmony: 'Open in Harmony',
  openInDrapery: 'Open in Drapery',
  openOnShelf: 'Open on the shelf',
  openInPalette: 'Open in Palette',
  openSheet: 'Open the sheet',
  goneHeading: 'Not in the book',
  toBin: 'Look in the bin',
  rename: 'Rename',
  remove: 'Put into the bin',
  nameless: (kind: string) => `Unnamed ${kind.toLowerCase()}`,
  findLike: (name: string) => `Find entries with a colour like ${name}`,
  noteHeading: 'Words',
  contents: 'What is written',
  outHeading: 'Take it out',
  asCard: 'Card (SVG)',
  asCsv: 'Table (CSV)',
  asJson: 'Data (JSON)',
  asPrint: 'Print',
  copyOne: 'Copy to hand on',
  conflictHeading: 'Two versions',
  conflictAbout:
    'Two devices had changed this entry before they met, so both versions are kept. Here is what differs. Keep one, and the other goes into the bin for 30 days; or keep both as entries of their own.',
  conflictNow: 'In force',
  conflictBeside: 'Kept beside it',
  conflictWritten: (date: string) => `written on ${date}`,
  conflictWhat: 'What differs',
  conflictSame:
    'What can be shown of them is the same: they differ in their photograph’s light or mask, or in figures.',
  conflictMissing: 'not there',
  conflictDiffers: (words: string, figure: number) =>
    `${words} (${decimals(figure, 1)}, CIEDE2000)`,
  conflictDifference: (figure: number) => {
    if (figure <= 1) return 'no difference to be seen';
    return figure <= 3 ? 'a trained eye sees the difference' : 'plainly different';
  },
  keepNow: 'Keep the one in force',
  keepBeside: 'Keep the one beside',
  keepBoth: 'Keep both',
  keptOne: (name: string) => `“${name}” is kept; the other version is in the bin.`,
  keptBoth: 'Both are kept: two entries from now on.',
  fields: {
    name: 'Name',
    note: 'Words',
    date: 'Date',
    light: 'Light',
    place: 'Place',
    walk: 'Walk',
    painting: 'Painting',
    subject: 'Subject',
    keyed: 'Keyed to the shelf',
    shelf: 'Shelf',
    kept: 'How it is kept',
    lot: 'Lot',
  } as Readonly<Record<string, string>>,
  yes: 'yes',
  no: 'no',

  binEmpty: 'The bin is empty. What you delete waits here for 30 days.',
  binAbout: 'What was deleted waits here for 30 days, then it goes for good.',
  binUntil: (kind: string, date: string) => `${kind}, here until ${date}`,
  restore: 'Put back',
  restored: (name: string) => `“${name}” is back in the book.`,
  emptyBin: 'Empty the bin',
  emptyAsk: (count: number) =>
    `${count === 1 ? 'This entry goes' : `These ${number(count)} entries go`} for good, with the photographs that nothing else needs. This cannot be undone.`,
  emptyYes: 'Empty it for good',
  emptied: (count: number) =>
    `${count === 1 ? 'One entry is' : `${count} entries are`} gone for good.`,
  listOfBin: 'Entries in the bin',

  makeHeading: 'Make a copy',
  makeAbout:
    'One file with every entry and photograph. Keep it somewhere else than on this device; brought in on another device, it makes one book of two.',
  make: 'Make a copy of the book',
  making: 'Making the copy…',
  madeOf: (entries: number, size: string) =>
    `The copy is ready: ${number(entries)} ${entries === 1 ? 'entry' : 'entries'}, ${size}.`,
  partOf: (part: number, parts: number) =>
    `This book is large: it goes into ${parts} files. This is file ${part}.`,
  leftOut: (count: number) =>
    `${count === 1 ? 'One entry' : `${count} entries`} could not be read from the book, so the copy is without ${count === 1 ? 'it' : 'them'}.`,
  save: 'Save the file',
  share: 'Hand it on',
  nextPart: 'Make the next file',
  copySaved: 'The copy has left Kingcup. Keep it where you will find it again.',
  copyStopped: 'Stopped. No copy was made.',
  fileFailed: 'The file could not be written. Choose another place for it and try again.',
  lastCopy: (date: string) => `The last copy was made on ${date}.`,
  noCopy: 'No copy of this book has been made on this device.',
  changedSince: (count: number) =>
    count === 0
      ? 'Nothing has changed since.'
      : `${number(count)} ${count === 1 ? 'entry has' : 'entries have'} changed since.`,
  unsavedCopies: (count: number) =>
    `${number(count)} ${count === 1 ? 'entry is' : 'entries are'} on this device only.`,
  reminder: 'Time for a copy.',
  toCopies: 'Make a copy',

  bringHeading: 'Bring in a copy',
  bringAbout:
    'First you see what it would change. It is then brought in as a whole or not at all, and can be undone. The same copy may be brought in as often as you like.',
  bring: 'Choose a copy',
  looking: 'Looking through the copy…',
  previewHeading: (date: string) => `A copy of ${date}`,
  added: 'New',
  changed: 'Newer in the copy',
  deleted: 'Deleted in the copy',
  kept: 'Changed on both sides: both versions are kept',
  settled: 'Second versions no longer needed',
  same: (count: number) =>
    `${number(count)} ${count === 1 ? 'entry is' : 'entries are'} the same here, or newer here.`,
  nothingNew: 'Nothing in this copy is new: your book has all of it.',
  andMore: (count: number) => `and ${number(count)} more`,
  bringIn: 'Bring it in',
  bringing: 'Bringing it in…',
  brought: (count: number) => `Brought in: ${number(count)} ${count === 1 ? 'entry' : 'entries'}.`,
  broughtStopped: 'Stopped. The book is as it was before.',
  bringFailed: 'The copy could not be looked through here. Reload Kingcup and choose it again.',

  keepingHeading: 'How safe it is here',
  keepingLater:
    'When you first save something, Kingcup asks this browser to keep the book; its answer will stand here.',
  keepingAsked:
    'Kingcup has asked this browser to keep the book, and it has not answered yet; perhaps it asks you. Until it does, make copies.',
  room: (used: string, left: string) =>
    `The book and the app take ${used}; the browser says that ${left} are left.`,

  sampleHeading: 'A sample book',
  sampleAbout:
    'A week’s walks along a mill stream, and the garments of a painting made from them: look through it to see how Kingcup works. It is marked wherever it stands, and one touch throws it away.',
  sampleBring: 'Look through the sample book',
  sampleBringing: 'Bringing the sample book in…',
  sampleMissing: 'The sample book is not on this device yet. Try once more with a network.',
  sampleHere: (count: number) =>
    `The sample book is here: ${count === 1 ? 'one entry is' : `${count} entries are`} marked as its own.`,
  sampleThrow: 'Throw the sample book away',
  sampleAway: 'The sample book is in the bin; your own entries are as they were.',
  sampleAwayBut: (count: number) =>
    `The sample book is in the bin, but for ${count === 1 ? 'one entry' : `${count} entries`} that you have changed or made something of.`,
  sampleInUse:
    'All that is left of the sample book is in use: you have changed it or made something of it. Delete it entry by entry.',
  sampleMark: 'sample',

  readOnly: 'Read only',
  giveUp: 'Give up this change',
} as const;

export const KIND_WORDS: Record<Kind, string> = {
  specimen: 'Specimen',
  harmony: 'Harmony',
  drapery: 'Drapery',
  formula: 'Formula',
  passage: 'Passage',
  palette: 'Palette',
  sheet: 'Morning sheet',
  shelf: 'Shelf',
  swatch: 'Swatch',
  card: 'Swatch card',
  curves: 'Measured curves',
  pile: 'Pile',
  leftover: 'Leftover',
};

export const SORT_WORDS: Record<Sort, string> = {
  newest: 'Last changed first',
  oldest: 'Longest unchanged first',
  'by date': 'By day, latest first',
  'by name': 'By name',
  nearest: 'Nearest colour first',
};

/** A file size in kB, MB or GB (powers of 1000). @param bytes at least 0 */
export function fileSizeWords(bytes: number): string {
  if (bytes < 1e5) return `${Math.max(1, Math.round(bytes / 1e3))} kB`;
  if (bytes < 1e9) return `${decimals(bytes / 1e6, bytes < 1e7 ? 1 : 0)} MB`;
  return `${decimals(bytes / 1e9, 1)} GB`;
}
