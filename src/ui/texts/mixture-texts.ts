import { differenceWords } from '../../colour/describe-colour.ts';
import type { PreservedAxis } from '../../mixture/search/target-metric.ts';
import type { HazardLevel, Opacity } from '../../pigment/pigment-facts.ts';
import { formatNumber } from '../state/locale-format.ts';

/** Texts about mixtures on the harmony screen. */
export const mixtureTexts = {
  yours: 'Your choice',
  useIt: 'Use this mixture',
  backToSimplest: 'Go back to the simplest',
  showYours: 'Show the one in use',
  mixStopped: 'The search for mixtures was stopped.',
  mixAgain: 'Find the mixtures',
  undo: (what: string) => `Undo: ${what}`,
  choseMixture: (colour: string) => `another mixture for ${colour}`,
  backToSimplestSaid: (colour: string) => `the simplest for ${colour}`,
  transposingMade: 'Transposing made it',
  allHeading: 'All its mixtures',
  letDown: (pigment: string, whiteParts: number, white: string) =>
    `${pigment} is let down first, for so little of it cannot be measured: 1 part of it with ${whiteParts} parts of ${white}, well mixed, in a pile of its own. The recipe takes its parts from that pile.`,

  measureHeading: 'Measure and mix it',
  inAll: 'For a pile of so many millilitres',
  by: 'Measured by',
  measures: {
    spoon: 'level spoons',
    ribbon: 'ribbons',
    scale: 'a scale',
  },
  measureAbout: {
    spoon: 'One part is one level spoon; use the same spoon for every pigment.',
    ribbon: 'One part is one length of ribbon: equal lengths, from tubes whose mouths are equal.',
    scale: 'Weigh it: the same volume of two pastes can differ in weight by half.',
  },
  noWeights: 'The density of one of these pastes is not known, so there are no weights.',
  order:
    'In this order: the weakest and lightest first, the strong colour last, by knife-tips, looking in between.',
  columns: {
    order: 'Order',
    paint: 'Paint',
    spoon: 'Spoons',
    ribbon: 'Lengths',
    scale: 'Grams',
    volume: 'By volume',
    weight: 'By weight',
    ml: 'Millilitres',
  },
  coarse: 'Coarser parts: at most 12 in all',

  othersHeading: (count: number) =>
    count === 0
      ? 'Other ways to mix it'
      : count === 1
        ? 'Another way to mix it'
        : `${count} other ways to mix it`,
  noOthers:
    'The shelf has no other way to come as near with other pigments. More pigments, or fewer wishes, may bring some.',
  inUse: 'In use.',
  pigments: (count: number) => (count === 1 ? 'One pigment' : `${count} pigments`),
  covers: {
    transparent: 'a brushed film is transparent',
    'semi-transparent': 'a brushed film is half transparent',
    'semi-opaque': 'a brushed film nearly covers',
    opaque: 'a brushed film covers',
  } satisfies Record<Opacity, string>,
  lasting: (pigment: string, word: string, all: boolean) =>
    `In light: the weakest${all ? '' : ' of those that are known'} is ${pigment}, ${word}.`,
  lastingUnknown: 'In light: nothing is known of these pigments.',
  lamp: {
    'none seen': 'By lamp-light it stays with its neighbours.',
    'a trained eye sees it': 'By lamp-light a trained eye sees it part from its neighbours.',
    plain: 'By lamp-light it parts plainly from its neighbours.',
  },
  lampAlone: {
    'none seen': 'By lamp-light it looks the same.',
    'a trained eye sees it': 'By lamp-light it changes a little.',
    plain: 'By lamp-light it changes plainly.',
  },
  slip: {
    'none seen': (pigment: string) => `Forgiving: a tenth too much ${pigment} would not be seen.`,
    'a trained eye sees it': (pigment: string) =>
      `Measure ${pigment} with care: a tenth too much is seen by a trained eye.`,
    plain: (pigment: string) =>
      `Touchy: a tenth too much ${pigment} changes it plainly. Add that one last, by knife-tips.`,
  },
  film: (pigment: string) =>
    `${pigment} hardly scatters light: alone it is a glaze, not a masstone.`,
  hazardWords: {
    low: 'mild',
    caution: 'calls for care',
    toxic: 'toxic',
    very_toxic: 'very toxic',
  } satisfies Record<HazardLevel, string>,
  noHazard: 'Nothing in it is more than a dust to keep out of the breath.',
  unknownHazard: (names: string) =>
    `How dangerous ${names} may be is not known here: read its data sheet.`,
  ownHazard: "One of the studio's own, as its entry on the shelf says.",
  ownCaution: 'Read its safety data sheet.',
  cautionsHeading: 'What to mind',
  sheets: 'Follow the safety data sheet of the lot in your hand, and the rules where you live.',
  figuresHeading: 'Its figures',
  figure: {
    difference: 'Difference from what is wanted',
    contrast: 'Contrast ratio of a film of 0.08 mm',
    lampDrift: 'Shift by lamp-light beside its neighbours',
    lampShift: 'Shift by lamp-light alone',
    slip: 'A tenth more or less of the strongest',
    lasting: 'Lightfastness of the weakest',
  },
  ciede: (difference: number) => `${formatNumber(difference, 1)} (CIEDE2000)`,

  reachHeading: 'Out of reach: what to keep',
  keepLegend: 'Of a colour that is out of reach, keep first',
  keeps: {
    nearest: 'the whole, as near as can be',
    hue: 'its hue',
    lightness: 'its lightness',
  } satisfies Record<PreservedAxis, string>,
  keepSaid: { nearest: 'nearest', hue: 'hue first', lightness: 'lightness first' },
  lacksAsk: 'Which pigment would reach it?',
  lacksWork: 'Trying pigments that are not on the shelf…',
  lacksNone: 'No single pigment that Kingcup knows would bring it plainly nearer.',
  lackReaches: (label: string) => `${label} would reach it.`,
  lackNearer: (label: string) => `${label} would bring it nearer.`,

  mendHeading: 'It came out wrong',
  mendAbout:
    'You cannot take paint out of a pile, but you can add to it. Say what is in the pile and which way it went, and Kingcup says what to add.',
  mendPile: 'In the pile, in parts',
  mendVolume: 'How much of it there is, in millilitres (may stay empty)',
  mendSeen: 'Beside what was promised it is',
  mendPromised: 'just as promised so far',
  mendSteps: 'Touch until the right half looks like your pile',
  mendStepBack: 'One touch back',
  mendBack: 'As promised',
  cameOut: 'came out',
  mendNumbers: 'I have measured it',
  mendAsk: 'What to add',
  mendWork: 'Looking for what to add…',
  mendRight: 'It is as it should be. Add nothing.',
  mendNone: 'Nothing that could be added brings it nearer.',
  mendAdd: (what: string) => `Add ${what}.`,
  mendOf: (share: string) => `That is ${share} of the pile.`,
  mendThen: {
    'none seen': 'Then no difference would be seen.',
    'a trained eye sees it': 'Then a trained eye would still see a difference.',
    plain: 'Then it would still differ plainly.',
  },
  mendSlip: (pigment: string, times: string) =>
    `It looks as if ${times} as much ${pigment} went into it as the recipe says.`,
  mendChanged: 'The pile or the colour has changed since: look again.',

  wishHeading: 'What may go into a pile',
  wishAbout:
    'For all mixtures of this sitting; a harmony that is kept remembers it. Pigments that spoil each other never meet in one pile, and a pile has one white: that holds without asking.',
  wishNow: 'Asked of all mixtures:',
  wishClear: 'Ask for nothing',
  wishCleared: 'asking for nothing',
  noBlack: 'no black',
  noBlackLabel: 'No black in any pile',
  hazardLabel: 'Leave out by danger',
  hazards: {
    none: 'nothing',
    very_toxic: 'what is very toxic',
    toxic: 'what is toxic',
    caution: 'all that calls for care',
  },
  hazardSaid: (what: string) => `without ${what}`,
  mostLabel: 'At most so many pigments in a pile',
  mostSaid: (most: number) => (most === 1 ? 'one pigment only' : `at most ${most} pigments`),
  coarseSaid: 'coarse parts',
  onlySaid: (names: string) => `only ${names}`,
  withoutSaid: (name: string) => `without ${name}`,
  maySaid: (name: string) => `${name} as it comes`,
  withSaid: (name: string) => `${name} in every pile`,
  eachHeading: 'Pigment by pigment',
  each: { may: 'may go in', out: 'left out', must: 'in every pile' },

  fewestHeading: 'The fewest pigments for all of it',
  fewestAbout:
    'A limited palette: which few pigments mix every colour of this harmony, and where one more stops helping.',
  within: 'The difference that is allowed',
  withins: { '1': 'none seen', '2': 'hardly seen', '3': 'a trained eye sees it', '5': 'plain' },
  forWhat: 'What they must mix',
  forWhats: {
    none: 'the colours alone',
    small: 'each also a little warmer, cooler, lighter, deeper, brighter and duller',
    middle: 'each also clearly warmer, cooler, lighter, deeper, brighter and duller',
    large: 'each also much warmer, cooler, lighter, deeper, brighter and duller',
  },
  fewestAsk: 'Find the fewest',
  fewestWork: 'Trying palettes…',
  fewestChanged: 'The harmony or the shelf has changed since: look again.',
  enough: (count: string, names: string) =>
    `${count} ${count === 'One' ? 'is' : 'are'} enough: ${names}.`,
  notEnough: 'No number of pigments on this shelf comes so near.',
  beyond: (count: number, all: number, varied: boolean) =>
    `${count} of the ${all} colours ${varied ? 'and variants ' : ''}${count === 1 ? 'is' : 'are'} out of reach of the whole shelf; there the palette comes nearly as near as the shelf does.`,
  useSetOf: (count: number) => (count === 1 ? 'Mix with it alone' : `Mix with these ${count} only`),
  setSaid: (count: number) => (count === 1 ? 'one pigment only' : `only ${count} pigments`),
  everyNumber: 'Every number of pigments',
  curveTitle: (worst: string) =>
    `Difference against number of pigments. The worst colour: ${worst}.`,
  curveX: 'pigments',
  curveY: 'difference',
  curveWorst: 'worst colour',
  curveMean: 'all together',
  curveAllowed: 'allowed',
  howMany: 'How many',
  count: 'Pigments',
  worst: 'Worst',
  mean: 'Mean',

  transposed: 'Transposed into reach',
  transposedAbout:
    'All colours moved together, as little as possible, until the shelf reaches every one. Their intervals stay.',
  transposeWork: 'Transposing the harmony…',
  movedHeading: 'What moved, and by how much',
  wayColumn: 'Way',
  movedColumn: 'From what was seen',
  reachedColumn: 'Every colour reached',
  lostColumn: 'Intervals',
  ways: { transposed: 'Transposed', keyed: 'Keyed', alone: 'Each colour alone' },
  yes: 'yes',
  no: 'no',
  intervals: { kept: 'kept', nearly: 'nearly kept', lost: 'partly lost' },
  differsFromSeen: {
    'none seen': 'none seen',
    'a trained eye sees it': 'a trained eye sees it',
    plain: 'plain',
  },
  lostFigures: 'Lost of lightness (L*), hue (degrees), chroma (logarithm)',
  compareAgain: 'Compare it with the other ways',
} as const;

/** Key of the tables above for a difference. @see differenceWords */
export const differenceKey = differenceWords;
