import { formatNumber } from '../state/locale-format.ts';
/** Texts of the calibration screens. */
export const calibrationTexts = {
  heading: 'Your own paints',
  toShelf: 'Shelf',
  toAll: 'Your own paints',
  link: 'Learn your own paints from swatches',
  lead: 'A curve from a handbook is a guess about somebody else’s tube. Brush out your paints once, photograph them beside a white and a grey, and mixtures are foreseen for yours.',
  notStocked:
    'The shelf is still the starter shelf. Put your own paints on it first: a swatch teaches one tube, not a pigment in general.',
  noWhite:
    'No white is marked on the shelf. Mark the one that you let tints down with: all of them are seen through it.',

  cardsHeading: 'Swatch cards',
  cardsAbout:
    'A page to print, paint and photograph. Its numbers are kept until the photograph comes.',
  newCard: 'Brush out a card',
  noCards: 'No card has been made yet.',
  cardName: (number: number, day: string): string => `Card ${number}, ${day}`,
  pageOf: (page: number, pages: number): string => `page ${page} of ${pages}`,
  waits: (places: number): string =>
    `${countWithNoun(places, 'place')} to paint; waits for its photograph`,
  wasRead: (day: string, places: number): string =>
    `photographed on ${day}: ${countWithNoun(places, 'swatch', 'swatches')}`,
  lefts: (count: number): string => `${count} left out`,
  readIt: 'Read its photograph',
  readAgain: 'Read it again',
  seeIt: 'See and print it',
  remove: 'Remove',
  removed: (name: string): string => `“${name}” is in the bin.`,

  whichPaints: 'Which paints',
  whichAbout: (white: string): string =>
    `Each is brushed out alone and in ${white}, the studio’s white, which is always on the card.`,
  all: 'All',
  none: 'None',
  onlyNew: 'Only those not yet brushed out',
  tints: 'Tints',
  tintOf: (white: number): string => `1 part to ${white} of white`,
  tintsAbout: 'One tint teaches most of what tints can. A second helps little.',
  tintsMissing:
    'Without a tint nobody can tell how strong a paint is: its curve will be called rough.',
  paper: 'Paper',
  suggested: 'What would teach most',
  cardNothing: 'Choose at least one paint for the card.',
  pagesOf: (pages: number): string => (pages === 1 ? 'One page.' : `${pages} pages.`),
  print: 'Print it',
  file: 'Take it as a file (SVG)',
  fileFailed: 'The file could not be written. Choose another place for it and try again.',
  cardKept: (name: string): string => `“${name}” is kept: come back with its photograph.`,
  sheet: (name: string): string => `Swatch card, ${name}`,
  gone: 'This card is not in the book. It may be in the bin.',

  readHeading: 'Read the photograph',
  readLead:
    'The whole page from above, in one even daylight: no lamp beside it, no gloss, no shadow of hand or camera, all four rings in the picture.',
  take: 'Take a photograph',
  choose: 'Choose a photograph',
  reading: 'Reading the card…',
  photoOf: (name: string): string => `The photograph of ${name}`,
  stopped: 'Stopped. Nothing was changed.',
  known: 'What white and grey lie on it',
  knownAbout:
    'Lightness L* of the references that you glued on. White card without brightener is about 95, a photographer’s 18 % grey 49.5.',
  whiteIs: 'White, L*',
  greyIs: 'Grey, L*',
  chart: 'A chart of 24 patches lies in the picture',
  chartAbout:
    'It corrects what the camera makes of strong colours. Give the file of values that came with it, then touch the centres of its four corner patches, one after the other round the chart.',
  chartFile: 'Values of the chart (CGATS)',
  chartTouch: 'Touch its four corner patches',
  chartUsed: (mean: number): string =>
    `The chart comes out within ${formatNumber(mean, 1)} on average.`,
  byCorners: 'Touch the four rings',
  byPlaces: 'Touch each place by hand',
  withoutPlace: (number: number): string => `Leave place ${number} out and read the others`,
  cornerTurns: [
    'Touch the ring with the black pupil.',
    'Touch the next ring, clockwise.',
    'Touch the third ring.',
    'Touch the last ring.',
  ],
  chartTurns: [
    'Touch the centre of one corner patch.',
    'Touch the next corner patch, round the chart.',
    'Touch the third corner patch.',
    'Touch the last corner patch.',
  ],
  placeTurn: (number: number, label: string): string => `Touch place ${number}: ${label}.`,
  turnOf: (turn: number, turns: number): string => `${turn} of ${turns}`,
  surface:
    'The photograph. The arrow keys move the cross, with Shift finely; Enter sets the point.',
  at: (x: number, y: number): string =>
    `${Math.round(100 * x)} % from the left, ${Math.round(100 * y)} % from the top`,
  skip: 'It is not in the picture',
  stepBack: 'One step back',
  giveUp: 'Leave it',
  byKeys: 'Move the cross by keys',
  placesHeading: 'What was seen',
  placesRead: (count: number): string => `${countWithNoun(count, 'place')} read`,
  even: (ratio: number): string =>
    ratio < 1.02
      ? 'the light lies even'
      : `the light falls off by ${Math.round(100 * (ratio - 1))} %`,
  residual: (difference: number): string =>
    `white and grey come out within ${formatNumber(difference, 1)} of what they are`,
  readKept: 'The swatches are kept.',
  toFit: 'Compare with what was foreseen',

  fitHeading: 'Seen and foreseen',
  fitLead: (swatches: number, piles: number): string =>
    `Curves of your own paints, from ${countWithNoun(swatches, 'swatch', 'swatches')}${piles > 0 ? ` and ${countWithNoun(piles, 'pile')}` : ''}. Nothing on the shelf changes until you accept them.`,
  fitting: 'Finding the curves…',
  fitAgain: 'Find the curves',
  fitNothing:
    'There is nothing to learn from yet: photograph a card, bring in measured curves, or log a pile.',
  ofOthers: (count: number): string =>
    `${countWithNoun(count, 'swatch', 'swatches')} ${count === 1 ? 'tells' : 'tell'} of paints that are off the shelf or of another lot now, and ${count === 1 ? 'is' : 'are'} left out.`,
  fitSum: (now: number, before: number): string =>
    `Half of the swatches now come out within ${formatNumber(now, 1)} of what was seen; with the shelf’s curves it was ${formatNumber(before, 1)}.`,
  seen: 'seen',
  foreseen: 'foreseen',
  differs: {
    'none seen': 'no difference to be seen',
    'a trained eye sees it': 'a trained eye sees a difference',
    plain: 'the difference is plain',
  },
  wasBefore: {
    'none seen': 'before: none seen',
    'a trained eye sees it': 'before: a trained eye saw one',
    plain: 'before: plain',
  },
  unlikely: 'It fits nowhere: is its ratio right, is it opaque, is it in its own place?',
  leaveOut: 'Leave it out',
  leftOut: 'It is left out.',
  takeIn: 'Take all places in again',
  takenIn: 'All its places are taken in again.',
  trustHeading: 'How each paint is known',
  now: 'On the shelf',
  handbook: 'From the handbook.',
  afterwards: 'If you accept',
  recipesMove: (moved: number, all: number): string =>
    moved === 0
      ? `None of the ${countWithNoun(all, 'recipe')} in the book comes out otherwise by more than 1.`
      : `${moved} of the ${countWithNoun(all, 'recipe')} in the book ${moved === 1 ? 'comes' : 'come'} out otherwise by more than 1: ask for ${moved === 1 ? 'it' : 'them'} again on the bench.`,
  accept: 'Accept these curves',
  leave: 'Leave the shelf as it is',
  accepted: (count: number): string =>
    `${countWithNoun(count, 'paint')} of the shelf ${count === 1 ? 'has' : 'have'} your own curve now. Mixtures are sought with ${count === 1 ? 'it' : 'them'}.`,
  swatchesHeading: 'Each swatch',

  learntHeading: 'What they teach',
  learntOf: (known: number, paints: number): string =>
    known === 0
      ? `None of the ${paints} paints on your shelf is known from swatches yet.`
      : known === paints
        ? 'Every paint on your shelf is known from swatches or measurements.'
        : `${known} of the ${paints} paints on your shelf ${known === 1 ? 'is' : 'are'} known from swatches or measurements.`,
  news: 'There is something that the shelf has not learnt yet.',
  compare: 'Compare and accept',
  nextHeading: 'What would teach most next',
  nextAsk: 'Ask which swatch would teach most',
  nextCard: 'Put these on a card',
  nextNone: 'Nothing more would teach much.',

  curvesHeading: 'Measured curves',
  curvesAbout: 'Reflectances from an instrument: CGATS text, or CSV with wavelengths.',
  bringCurves: 'Bring in a file',
  noCurves: 'No measured curves yet.',
  curvesFile: 'File of measured reflectances',
  curvesFileHelp:
    'CGATS or ISO 28178 text, or CSV with a column or a row for each wavelength from 400 to 700 nm. Decimal commas and per cent are understood.',
  fileTooLarge: 'This file is larger than 5 MB: choose one with fewer samples.',
  tableHeading: 'What each sample is',
  tableAbout:
    'One paint: its masstone. Two or more: a mixture, by volume. Samples without a paint are left out.',
  paintOf: (sample: string, at: number): string => `Paint ${at} in “${sample}”`,
  partsIn: (sample: string, at: number): string => `Parts of paint ${at} in “${sample}”`,
  notUsed: 'Left out',
  onePaint: 'Paint…',
  another: 'Another paint',
  rowParts: 'The parts must be numbers above 0, each paint once.',
  keepCurves: 'Keep these curves',
  curvesFaulty: 'Mend the marked rows first, or leave those samples out.',
  curvesNone: 'No sample was told what it is: choose a paint for at least one.',
  samplesOf: (used: number, all: number): string =>
    `${used} of ${countWithNoun(all, 'sample')} used`,
  curvesKept: (name: string): string => `“${name}” is kept.`,
  asCgats: 'As CGATS text',
  asCsv: 'As CSV',
  measuredOn: (day: string): string => `brought in on ${day}`,

  pilesHeading: 'Piles that came out',
  pilesAbout:
    'Keep what a mixture looked like when it was on the palette. Every pile makes the next one surer.',
  logPile: 'Log a pile',
  noPiles: 'No pile has been logged yet.',
  pileHeading: 'It came out like this',
  pileMixed: 'What was mixed',
  pileAbout: 'In parts by volume, as it lay on the palette.',
  pileSeen: 'How it came out',
  byPhoto: 'From a photograph',
  byFigures: 'As measured',
  byFile: 'From a spectrum file',
  asJudged: 'As judged by eye',
  pilePhotoAbout:
    'The pile with a white and a grey card beside it, in one light. Touch the three in turn.',
  pileTurns: ['Touch the white card.', 'Touch the grey card.', 'Touch the pile.'],
  lab: 'L*, a*, b* (CIELAB, D65)',
  labFault: 'These are not the three numbers of a surface: L* from 0 to 100, a* and b* to ±160.',
  whichSample: 'Which sample',
  pileNote: 'A word about it',
  pileNoteHelp: 'Which picture it was for, how it was laid. May stay empty.',
  pileWanting:
    'Say first what was mixed: at least one paint, each once and with a known colour, in parts above 0.',
  pileUnseen: 'Say how it came out first: by a photograph or by figures.',
  keepPile: 'Keep it',
  pileKept: 'The pile is kept.',
  pileForeseen: 'foreseen',
  pileCameOut: 'came out',
  accuracyHeading: 'How well piles were foreseen',
  accuracyChart: (count: number, worst: string): string =>
    `${countWithNoun(count, 'pile')} in the order of their days; the furthest from what was foreseen: ${worst}.`,
  bandNone: 'none seen',
  bandTrained: 'a trained eye',
  bandPlain: 'plain',
  keepAs: 'Keep what it came out as',

  trustOne: 'How its colour is known',
  handbookBack: 'Put the handbook’s curve back',
  backTo: (name: string): string => `${name} has the handbook’s curve again.`,
  tags: { photographed: 'Own curve, from swatches', measured: 'Own curve, measured' },
  roughTag: 'rough',
  expectedHandbook:
    'Foreseen from handbooks: a mixture of your own tubes may differ plainly until they are brushed out.',
  expected: (near: string): string => `From your own curves: ${near.toLowerCase()}.`,
  expectedGuess: (names: readonly string[]): string =>
    `${names.join(', ')} ${names.length === 1 ? 'is' : 'are'} known from the handbook only.`,
  expectedLink: 'Brush out your own paints',
} as const;

/** A count with its noun: "1 place", "12 places". */
function countWithNoun(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

export { dateWords as dayWords, today } from '../state/locale-format.ts';
