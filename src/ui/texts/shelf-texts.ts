import type {
  Drying,
  HazardLevel,
  Opacity,
  PigmentFamily,
  Provenance,
  Strength,
} from '../../pigment/pigment-facts.ts';
import type { StockForm } from '../../pigment/stock.ts';
import { formatNumber } from '../state/locale-format.ts';

/** Texts of the shelf screen. */
export const shelfTexts = {
  heading: 'Shelf',
  back: 'Book',
  allOfIt: 'All of the shelf',
  about: 'The pigments that mixtures are made of, with their hazards and how each figure is known.',
  open: 'Open the shelf',
  usesStarter:
    'You have stocked nothing yet. Until you do, mixtures use the starter shelf below: pigments of the old studio, put together from handbooks.',
  usesStarterFor:
    'Nothing on your shelf can be mixed yet, so mixtures still use the starter shelf.',
  uses: (paints: number): string =>
    paints === 1
      ? 'Mixtures use your own shelf, and only the one paint that is on it.'
      : `Mixtures use your own shelf: ${paints} paints.`,
  add: 'Add a paint',
  beginWithStarter: 'Take over the starter shelf',
  beginAbout: 'Take it over and change it, or add your own paints one by one.',
  tookStarter: 'The starter shelf is yours now. Remove what you do not have.',
  seenHeading: 'How the paint is seen',
  seenAs: {
    included: {
      name: 'With its gloss',
      about:
        'As instruments measure fresh paint: what its surface mirrors is counted, and so no black is quite black.',
      said: 'The paint is taken with its gloss now. Mixtures are worked out anew.',
    },
    excluded: {
      name: 'Varnished, without glare',
      about:
        'As a varnished picture in good light: what the surface mirrors is left out. Darks are deeper and colours fuller.',
      said: 'The paint is taken as varnished and seen without glare now. Mixtures are worked out anew.',
    },
  },
  deepest: (name: string, L: number): string =>
    `The deepest paint here, ${name}, is seen at L* ${Math.round(L)}.`,
  search: 'Search the shelf',
  order: 'In which order',
  byLight: 'Light to dark',
  byFamily: 'By family',
  byName: 'By name',
  nothingFound: 'Nothing on the shelf has these words.',
  list: 'What is on the shelf',
  starterList: 'The starter shelf',
  white: "The studio's white",
  noCurve: 'No colour known yet',
  usedUp: 'Used up',
  notWeighed: 'amount not weighed',
  masstone: 'masstone',
  toWhite: (parts: number): string => `1 to ${parts} of white`,
  brushed: (name: string, tints: readonly string[]): string =>
    tints.length === 0
      ? `${name} brushed out: masstone`
      : `${name} brushed out: masstone, then ${tints.join(', then ')}`,

  edit: 'Edit',
  duplicate: 'Another lot of it',
  remove: 'Take it off the shelf',
  markWhite: "Make it the studio's white",
  unmarkWhite: 'Take the mark off',
  isWhite: "This is the studio's white: tints are let down with it.",
  take: 'Put one on my shelf',
  added: (name: string): string => `${name} is on the shelf.`,
  addedWhite: (name: string): string => `${name} is on the shelf, and is the studio's white.`,
  changed: (name: string): string => `${name} is changed.`,
  removed: (name: string): string => `${name} is off the shelf.`,
  marked: (name: string): string => `${name} is the studio's white now.`,
  unmarked: 'No white is marked now.',
  gone: 'This is no longer on the shelf.',

  hazard: 'Hazard',
  dryRefused:
    'Toxic and dry: keep it as paste instead. Grinding or handling it as powder belongs to licensed practice.',
  defers:
    'This is the usual caution, not the whole of it. The safety data sheet of your own lot, local codes and licensed practice come first.',
  listDefers:
    'Hazards are told as studios usually mind them. The safety data sheet of your own lot, local codes and licensed practice come first.',
  figures: 'In the studio',
  hiding: 'Hiding',
  drying: 'Drying',
  light: 'Light',
  strength: 'Tinting strength',
  density: 'Density',
  oil: 'Oil',
  makes: 'Makes',
  densityOf: (value: number): string => `${formatNumber(value, 0, 3)} g/cm³`,
  oilOf: (value: number): string => `${formatNumber(value, 0, 3)} g for 100 g of pigment`,
  makesOf: (cm3: number): string => `about ${formatNumber(cm3, cm3 < 10 ? 1 : 0)} cm³ of paste`,
  between: (min: number, max: number): string =>
    `from ${formatNumber(min, 0, 3)} to ${formatNumber(max, 0, 3)}`,
  ownFigure: "your own lot's figure",
  unknown: 'not known',
  apart: 'Keep apart from',
  withCare: 'With care beside',
  onShelf: (name: string): string => `${name} (on your shelf)`,
  mixing: 'In mixtures',
  identity: 'What it is',
  also: 'Also called',
  chemistry: 'Chemistry',
  colourIndex: 'Colour index',
  look: 'Look',
  use: 'Use',
  used: 'Used',
  usedFrom: (from: string, to: string): string => `${from} to ${to}`,
  standIns: 'Stand-ins',
  curve: 'How its colour is known',
  curveOf: {
    measured: 'K and S of a file that you read in.',
    photographed:
      'From one colour as seen. Its masstone is right; how it tints is an estimate until swatches of it are painted.',
  },
  curveNone: 'Its colour is not known here yet, so nothing is mixed with it. Edit it to give one.',
  note: 'Note',

  replaced: 'If this lot is replaced',
  replacedAbout:
    'Give the new lot as a curve or as its colour brushed out. The recipes in the book that would move by more than 1 are listed before anything is changed.',
  looking: 'Looking through the book…',
  noneUse: 'No recipe in the book uses this paint.',
  noneMove: (count: number): string =>
    count === 1
      ? 'The one recipe that uses it does not move by more than 1.'
      : `None of the ${count} recipes that use it moves by more than 1.`,
  someMove: (moved: number, count: number): string =>
    count === 1
      ? 'The one recipe that uses it moves by more than 1:'
      : `${moved} of the ${count} recipes that use it ${moved === 1 ? 'moves' : 'move'} by more than 1:`,
  movesBy: (difference: number): string => `moves by ${formatNumber(difference, 1)}`,
  moveSeen: {
    'none seen': 'none would see it',
    'a trained eye sees it': 'a trained eye sees it',
    plain: 'that is plain to see',
  },
  before: 'before',
  after: 'after',
  inEntry: (entry: string): string => `in “${entry}”`,
  replaceIt: 'Replace the lot with this one',
  newLot: 'Its lot',

  addHeading: 'Add a paint',
  editHeading: (name: string): string => `Edit ${name}`,
  pigment: 'Pigment',
  choose: 'Choose a pigment…',
  yours: 'Your own',
  oneOfMyOwn: 'A pigment of my own…',
  form: 'It is',
  amount: 'Amount',
  unit: 'Unit',
  amountHelp: 'What is left. Leave it empty if it was not weighed.',
  grade: 'Grade',
  gradeHelp: 'As fine, coarse, first wash. May stay empty.',
  lot: 'Lot',
  more: 'Its own figures and curve',
  moreAbout: 'Where you measured this lot yourself. Left empty, the handbook stands in.',
  densityLabel: 'Density of the dry pigment, g/cm³',
  oilLabel: 'Oil, g for 100 g of pigment',
  save: 'Put it on the shelf',
  saveEdit: 'Keep the change',
  cancel: 'Leave it',
  ownHeading: 'Your own pigment',
  name: 'Name',
  family: 'Family',
  hazardOf: 'How dangerous it is',
  hazardHelp: 'By its safety data sheet. When in doubt, the higher.',
  caution: 'What to mind',
  colour: 'Its colour',
  fromFile: 'A curve file',
  fromColour: 'A colour as seen',
  fromNothing: 'Not yet',
  asBefore: 'As it is',
  asPigment: 'As the pigment',
  file: 'File',
  fileHelp: "K and S (Kingcup's JSON, or CSV), or a measured spectrum of its masstone (CGATS).",
  fileTooLarge: 'This file is larger than any shelf: choose one of up to 5 MB.',
  which: 'Which of them',
  fromScreen: 'Its masstone on screen',
  lab: 'Or in figures: L*, a*, b*',
  labHelp: 'CIELAB under D65, three numbers with spaces between them.',
  labFault: 'These are not the three numbers of a surface: L* from 0 to 100, a* and b* to ±160.',
  hides: 'How it hides',
  nearest: 'No paint can look quite like this: the nearest is taken.',
  estimate:
    'The masstone will be right. How it tints is an estimate from how it hides, until swatches of it are painted.',
  scattersAlike:
    'The masstone will be right. That it hides as the lot before is taken for granted, until swatches of it are painted.',
  measuredCurve: 'Its colour by this curve:',
} as const;

export const STOCK_FORM_WORDS: Record<StockForm, string> = {
  tube: 'Tube',
  paste: 'Own-ground paste',
  powder: 'Dry powder',
};
export const FAMILY_WORDS: Record<PigmentFamily, string> = {
  white: 'Whites',
  yellow: 'Yellows',
  red: 'Reds',
  green: 'Greens',
  blue: 'Blues',
  brown: 'Browns',
  black: 'Blacks',
};
export const HAZARD_WORDS: Record<HazardLevel, string> = {
  low: 'Mild',
  caution: 'With caution',
  toxic: 'Toxic',
  very_toxic: 'Very toxic',
};
export const HIDING_WORDS: Record<Opacity, string> = {
  opaque: 'opaque: a coat hides what is under it',
  'semi-opaque': 'half opaque',
  'semi-transparent': 'half transparent',
  transparent: 'transparent: a glaze',
};
export const DRYING_WORDS: Record<Drying, string> = {
  fast: 'fast',
  medium: 'at a middling pace',
  slow: 'slowly',
  'very slow': 'very slowly',
};
export const STRENGTH_WORDS: Record<Strength, string> = {
  'very low': 'very low',
  low: 'low',
  medium: 'middling',
  high: 'high',
  'very high': 'very high: a little goes far',
};
/** Short provenance of a figure, displayed beside it. */
export const SHORT_PROVENANCE_WORDS: Record<Provenance, string> = {
  seen: 'read in its source',
  seen2: 'read in a later text',
  calc: 'worked out',
  mem: 'from memory: check it',
  est: 'an estimate',
  'common practice': 'common practice',
};

/** "class I (ASTM)"; other values unchanged. */
export const lightfastnessClassWords = (lightClass: string): string =>
  /^I+V?$/.test(lightClass) ? `class ${lightClass} (ASTM)` : lightClass;
