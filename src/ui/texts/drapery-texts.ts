import type { BlackWhy } from '../../drapery/black-rule.ts';
import type { DraperyWay } from '../../drapery/cloth-types.ts';
import type { Fabric } from '../../drapery/fabric.ts';
import type { GarmentPart } from '../state/drapery/drapery-scheme.ts';
import { formatNumber } from '../state/locale-format.ts';

/** Texts of the drapery screens. */
export const draperyTexts = {
  heading: 'Drapery',
  lead: 'Give a garment its colour, and it becomes six steps from the highlight to the deepest fold, each with its pile.',
  fromOpen: (name: string) => `Make a drapery of “${name}”`,
  makeOf: 'Make a drapery of it',
  fromHarmonies: 'From a harmony in the book',
  noHarmonies: 'No harmony has been kept yet.',
  fromWorked: 'From a worked formula',
  workedAbout: 'Six cloths that show the practice. Take one and make it yours.',
  keptDraperies: 'Draperies and formulas in the book',
  beginFormula: 'Make a drapery of it',
  noPassages: (name: string) => `“${name}” has no passage to make a drapery of.`,
  formulaIn: 'formula',
  draperyIn: 'drapery',
  missing: 'This drapery is no longer in the book. It may be in the bin.',
  another: 'Begin another',
  putAside: (name: string) => `“${name}” was not in the book and is put aside.`,
  unnamed: 'A drapery',

  wall: 'The cloths hung',
  notDrawn: 'not worked out yet',
  working: 'Working out the folds…',
  stop: 'Stop',
  stoppedWords: 'Stopped. What was worked out stays.',
  goOn: 'Go on',
  undo: 'Undo',
  print: 'Print',
  keep: 'Keep this drapery',
  keepChanges: 'Keep the changes',
  kept: 'This drapery is in the book.',
  keptNow: (name: string) => `“${name}” is in the book.`,
  keepFormula: 'Keep it as a formula',
  formulaThere: (name: string) => `The formula “${name}” is in the book already, just so.`,
  formulaAnew: (name: string) => `The formula “${name}” in the book is brought up to date.`,
  formulaKept: (name: string) => `The formula “${name}” is in the book, passage by passage.`,
  nameOf: 'Name of the drapery',
  subject: (stuffs: string) => `drapery of ${stuffs}`,

  garment: 'Name of the garment',
  way: 'Its way',
  stuff: 'Its stuff',
  glazeOf: 'Its glaze',
  glazeChosen: 'One of its hue',
  even: 'Steps evenly spaced',
  insist: 'Let black deepen it all the same',
  reflects: (name: string) => `Light thrown back from the ${name}`,
  shadowsOf: 'Colour of its shadows',
  noLadder: 'No photograph has this colour: “as nature had it” wants its six steps.',
  colourOf: 'Another colour',
  more: 'More of it',
  less: 'Less of it',
  removeGarment: 'Take this garment away',
  addGarment: 'Add a garment',
  addLining: 'Add a lining',
  addTrim: 'Add a trim',
  removePart: (part: string) => `Take the ${part} away`,
  partOf: (part: string, garment: string) => `${part} of the ${garment}`,
  whichPart: 'Which part of the garment',

  pick: {
    garment: 'Choose the colour of the garment',
    cloth: 'Choose another colour for it',
    lining: 'Choose the colour of the lining',
    trim: 'Choose the colour of the trim',
    shadows: 'Choose the colour of its shadows',
  },
  source: 'Colours from',
  sourceOpen: (name: string) => `the open harmony: ${name}`,
  sourceWorked: 'the worked formulas',
  leave: 'Leave it',

  steps: 'From the highlight to the deepest fold',
  film: (pigment: string, micrometres: number) =>
    `glazed with ${pigment}, about ${micrometres} micrometres`,
  filmAbout: (pigment: string, micrometres: number) =>
    `Over it, when dry: a film of ${pigment}, about ${micrometres} micrometres as laid.`,
  beneath: 'Beneath the glaze',
  mixed: 'mixed',
  wanted: 'wanted',
  ciede: (difference: number) => `(CIEDE2000 ${formatNumber(difference, 1)}.)`,
  outOfReach: 'No pile that keeps its place in the order comes nearer.',
  blackHeading: 'Black',
  blackMay: (why: string) => `Black may deepen it: ${why}.`,
  blackNone:
    'No black deepens it: its own hue goes down instead. Charcoal with white, as a cool tint, is always allowed.',
  blackNoneHere: 'The shelf has no black.',
  blackLoss: (black: string, step: string, keeps: number, has: number) =>
    `Deepened with ${black} to the same lightness, the ${step} would have chroma ${keeps} where it has ${has}.`,
  remarks: 'What to mind',

  relations: 'How they stand to one another',
  temperature: (words: string) => `In temperature it is ${words}.`,
  pair: (one: string, other: string) => `The ${one} beside the ${other}`,
  periodSilent: 'Period practice, as far as we read it, does not speak of this pair.',
  score: (score: string) =>
    `Two-colour score ${score} (Ou and Luo 2006, from about ${formatNumber(-1.2, 1)} to ${formatNumber(1.5, 1)}). Only for information: it rewards likeness.`,
  meanScore: (score: string) => `Mean of the two-colour scores: ${score}.`,
} as const;

export const DRAPERY_WAY_HELP: Record<DraperyWay, string> = {
  'as nature had it': 'The ladder of the photograph, brought within reach of the shelf.',
  'deepened in its own hue': "Down to its hue's deepest pigment, without turning.",
  'shot cloth': 'Lights of one hue, shadows of another.',
  'underpaint and glaze': 'Modelled in body colour; then a film that thickens into the folds.',
};
export const DRAPERY_WAY_NAMES: Record<DraperyWay, string> = {
  'as nature had it': 'As nature had it',
  'deepened in its own hue': 'Deepened in its own hue',
  'shot cloth': 'Shot cloth',
  'underpaint and glaze': 'Underpaint and glaze',
};
export const FABRIC_NAMES: Record<Fabric, string> = {
  linen: 'Linen',
  wool: 'Wool',
  satin: 'Satin',
  velvet: 'Velvet',
};
export const PART_NAMES: Record<GarmentPart, string> = {
  cloth: 'Cloth',
  lining: 'Lining',
  trim: 'Trim',
};
export const BLACK_WHY: Record<BlackWhy, string> = {
  'white cloth': 'it is white cloth',
  'grey cloth': 'it is grey cloth',
  'black cloth': 'it is black cloth',
  'brown cloth': 'it is brown cloth',
  'earth red cloth': 'it is earth red cloth',
  'its local colour holds it': 'its local colour holds it already',
  'the painter insists': 'you let it',
};
