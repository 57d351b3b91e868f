import type { VariantWay } from '../../harmony/variant-target.ts';
import type { NamedLight } from '../../photo/white-balance.ts';
import { formatNumber } from '../state/locale-format.ts';

/** Texts of the photograph editor. */
export const photographTexts = {
  tools: 'Work on the photograph',
  light: 'Light',
  keep: 'Keep',
  hand: 'By hand',
  surface: 'The photograph, with a marker',
  hint: {
    none: 'Arrow keys move the marker, with Shift in small steps. Enter chooses the colour there.',
    light:
      'Arrow keys move the marker, with Shift in small steps. Enter says that the spot was white or grey.',
    rub: 'Arrow keys move the brush, with Shift in small steps. Enter rubs out under it.',
    again: 'Arrow keys move the brush, with Shift in small steps. Enter keeps what is under it.',
    outline:
      'Arrow keys move the marker, with Shift in small steps. Enter sets a corner, Backspace takes the last one back.',
    hand: 'Arrow keys move the marker, with Shift in small steps. Enter gathers the spot under it.',
  },
  byKeys: 'Move the marker by keys',
  at: (x: number, y: number, what: string) =>
    `${Math.round(x * 100)} % across, ${Math.round(y * 100)} % down: ${what}`,
  nothingHere: 'not looked at',
  rubbedHere: 'rubbed out',

  lightAbout:
    'Touch a spot that was white or neutral grey: a card, a cloth, a pebble. Everything is then seen as in daylight.',
  itWas: 'The spot was',
  whiteOrGrey: 'white or grey',
  greyCard: 'an 18 % grey card (exposure too)',
  patch: 'Patch',
  patches: { small: 'small', middle: 'middle', large: 'large' },
  patchSide: (side: number) => `The mean of ${side} × ${side} pixels is taken.`,
  orLight: 'Or say what the light was',
  lights: {
    'open shade': 'Open shade',
    overcast: 'Overcast',
    'low sun': 'Low sun',
    lamp: 'Lamp',
  } satisfies Record<NamedLight, string>,
  lightNone: 'The light is as the camera gave it.',
  lightBySpot: 'The light is set right by a spot.',
  lightByCard: 'Light and exposure are set right by a grey card.',
  lightStated: (light: string) => `The light is taken for: ${light.toLowerCase()}.`,
  before: 'Compare: as the camera gave it',
  lightOff: 'Leave it as the camera gave it',
  gains: ([red = 1, green = 1, blue = 1]: readonly number[]) =>
    `There red was multiplied by ${formatNumber(red, 2)}, green by ${formatNumber(green, 2)}, blue by ${formatNumber(blue, 2)}.`,

  keepAbout: 'Only what is kept is gathered. Rub out what does not belong.',
  way: 'What the touch does',
  rub: 'Rub out',
  again: 'Keep again',
  outline: 'Outline',
  outlineAbout: 'Draw round what is to stay, or touch its corners one by one.',
  brush: 'Brush',
  brushSize: (share: number) => `${Math.round(share * 200)} % of the longer edge`,
  corners: (n: number) => (n === 1 ? 'One corner.' : `${n} corners.`),
  close: 'Close the outline',
  lastCorner: 'Take the last corner back',
  middle: 'Keep the middle',
  turnAbout: 'Turn it about',
  everything: 'Keep everything',
  kept: (share: number) =>
    share >= 0.9995
      ? 'Everything is kept.'
      : `${formatNumber(share * 100, share < 0.0095 ? 1 : 0)} % of the photograph is kept.`,
  behind: 'The harmony has not followed yet.',
  follow: 'Gather it now',

  handAbout: 'Touch a spot of the photograph to add its colour.',
  ofThe: (name: string) => `The ${name}`,
  nameOf: 'Its name',
  rename: 'Rename',
  joinWith: 'Join it with',
  join: 'Join',
  split: 'Part it in two',
  drop: 'Drop it',
  byEye: 'By eye: it was',
  uncorrect: 'As it was gathered',
  asGathered: 'as gathered',
  corrected: 'as it was',
  sheen: 'Sheen that shifts with the angle: beyond paint',
  marks: 'By hand and by eye',
  markEye: (name: string, words: string) => `${name}: corrected ${words}.`,
  markSpot: (name: string, side: number) =>
    `${name}: gathered by hand, the mean of ${side} × ${side} pixels.`,
  markSheen: (name: string) =>
    `${name}: its sheen shifts with the angle. Paint gives one of its looks, never the shift.`,
  fromCopy: (width: number, height: number) =>
    `Gathered anew from the book’s own copy of the photograph, ${width} × ${height} pixels.`,
  notCarried: (names: readonly string[], hasDropped: boolean) =>
    [
      'The harmony was gathered anew.',
      ...(names.length > 0
        ? [`What you did by hand to these could not be carried over: ${names.join(', ')}.`]
        : []),
      ...(hasDropped ? ['What you dropped may be there again.'] : []),
      'Undo brings it all back.',
    ].join(' '),
} as const;

/** The six corrections by eye, in pairs of opposites. */
export const EYE_WAYS: readonly VariantWay[] = [
  'cooler',
  'warmer',
  'deeper',
  'lighter',
  'duller',
  'brighter',
];
