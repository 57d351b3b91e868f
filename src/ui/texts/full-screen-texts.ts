/** Texts of the full-screen colours, which the painter compares with paint. */
export const fullScreenTexts = {
  open: 'Hold the screen to the pile',
  heading: 'Hold it against the dry pile',
  which: 'What fills the screen',
  both: 'Both, edge to edge',
  only: 'Only the colour',
  leave: 'Leave',
  help: 'Touch the colour, press Escape or go back to leave.',
  note: 'Turn the brightness up, and night colours and automatic tints off. Look in the light in which you paint, with the edge of the screen at the edge of the dry paint.',
  screens: 'Screens and lamps',
  about: [
    'A screen glows and paint does not: they agree in one light only. Kingcup reckons in daylight (D65); under a lamp or beside a warm wall the same screen looks bluer than the pile.',
    'No two screens show a colour alike, and most tint themselves in the evening. Trust the numbers and a painted swatch before any screen.',
    'A corner turned down marks a colour that this screen cannot show; what you see is then the nearest, of the same lightness and hue.',
    'Colours are judged on a grey of middle lightness (L* 50 around one colour, L* 82 or 21 on the wall), for a light ground makes them look deeper and a dark one lighter.',
  ],
} as const;
