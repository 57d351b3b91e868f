import type { Place } from '../state/route.ts';

/** A link at the end of a paragraph: its target and its text. */
interface GuideLink {
  readonly to: readonly [place: Place, open?: string, ...within: string[]];
  readonly words: string;
}
interface GuideItem {
  /** Heading; '' for none. */
  readonly head: string;
  readonly words: string;
  readonly link?: GuideLink;
}
export interface GuidePart {
  /** Its id in the address. */
  readonly id: string;
  readonly heading: string;
  readonly items: readonly GuideItem[];
}

export const guideTexts = {
  heading: 'How Kingcup works',
  lead: 'From what you saw on a walk to the paint on the palette next morning, in six steps; then what the figures mean, what to do when something goes wrong, and what to be careful of.',
  contents: 'In this guide',
  notices: 'Licences of the code that Kingcup includes',
} as const;

/** Contents of the guide, in order. */
export const GUIDE: readonly GuidePart[] = [
  {
    id: 'steps',
    heading: 'From the walk to the morning sheet',
    items: [
      {
        head: 'Keep what you saw',
        words:
          'Take a photograph, or choose one. It is kept at once, with no network; its name and your words can wait for the evening.',
        link: { to: ['walk'], words: 'Walk' },
      },
      {
        head: 'See which colours made it work',
        words:
          'They hang as cloths, each as wide as its share, each with its own folds from light to dark. Touch a cloth to take it to the bench. If the camera saw the light wrong, show it something white or grey in the picture; rub out what does not belong; take a colour by hand that was missed. Then keep the harmony.',
        link: { to: ['harmony'], words: 'Harmony' },
      },
      {
        head: 'Read what mixes it',
        words:
          'Under each colour lie the piles that mix it, in parts by volume. “The simplest” is the easiest pile that comes as near as the eye asks; “the closest” is the nearest of all. Most photographs hold colours that no paint reaches: the harmony is therefore first shown keyed, with lightness and chroma drawn together until your shelf can mix it. “As seen” is one touch away.',
        link: { to: ['book', 'shelf'], words: 'Your shelf' },
      },
      {
        head: 'Give a garment its folds',
        words:
          'A drapery makes six steps of a colour, from the highlight to the deepest fold, each with its pile: deepened in its own hue, shot with another, or underpainted and glazed. What you want to use again, keep as a formula.',
        link: { to: ['drapery'], words: 'Drapery' },
      },
      {
        head: 'Lay out the palette',
        words:
          'Take a harmony, a drapery or a formula to the palette. It becomes a passage: say how large it is and how thickly it is laid, and you see how much of each pile to prepare, where it lies from the thumb hole on, and what must dry first.',
        link: { to: ['palette'], words: 'Palette' },
      },
      {
        head: 'Print the morning sheet',
        words:
          'One page a palette: what to grind or set out, in which order, with cautions and a square beside each pile for a dab of the real one. At the day’s end say what was laid and what is left: it is offered first next time.',
        link: { to: ['palette', 'sheet'], words: 'Morning sheet' },
      },
    ],
  },
  {
    id: 'figures',
    heading: 'What the figures mean, and what they do not',
    items: [
      {
        head: 'Difference',
        words:
          'How far a mixture is from what is wanted, by the standard measure CIEDE2000. Up to 1 nobody sees it, up to 3 a trained eye does, beyond that it is plain. It compares two colours side by side in daylight; under a lamp they can part.',
      },
      {
        head: 'Parts',
        words:
          'Parts are volumes of paste, struck level. Grams are given only where the shelf says what its parts are and how heavy a paste is.',
      },
      {
        head: 'Predictions',
        words:
          'They are for fresh, glossy paint in a layer that hides. Earths and umbers sink when they dry, and a varnish brings them back. The starter shelf is put together from handbooks: it is a good guess at such pigments, not a measurement of your tubes. Brush out swatches of your own, photograph them, and the predictions become true for these paints.',
        link: { to: ['book', 'shelf', 'swatches'], words: 'Your own paints' },
      },
      {
        head: 'The screen',
        words:
          'A screen shows a colour as well as it can, and a lamp in the room changes how you see it. Never match paint to the screen: match it to the thing, or to a dab that you accepted. Every colour also stands there in words.',
      },
      {
        head: 'The photograph',
        words:
          'A camera decides for itself what white is. A piece of white paper or a grey card in the picture lets you set it right. What the camera burnt out or lost in the dark cannot be brought back.',
      },
      {
        head: 'Drying and amounts',
        words:
          'Days of drying are usual ranges, longer in a cold or damp room: the finger decides. Amounts are rounded up to what can be measured, with a little for the tooth of the ground and for waste.',
      },
    ],
  },
  {
    id: 'keeping',
    heading: 'Keeping the book',
    items: [
      {
        head: 'It lives on this device',
        words:
          'There is no account and nothing is sent anywhere. Photographs are kept without the camera’s notes on place and time. That also means: if the device is lost, so is the book, unless there is a copy of it somewhere else.',
        link: { to: ['book', 'copies'], words: 'Make a copy' },
      },
      {
        head: 'Two devices',
        words:
          'Bring the copy of one in on the other: the two books become one. Where both had changed the same entry, both versions are kept and you choose.',
        link: { to: ['book', 'copies'], words: 'Bring in a copy' },
      },
      {
        head: 'On the device like any other app',
        words:
          'Where the browser lets it, Kingcup offers to be put on the device, or you add it to the home screen from the share menu. From then on photographs can be handed to it out of other apps, where the device knows how; everywhere else, choose them under Walk.',
        link: { to: ['walk'], words: 'Walk' },
      },
      {
        head: 'Undo, and the bin',
        words:
          'Nearly everything can be undone on the spot. What you delete waits in the bin for 30 days.',
        link: { to: ['book', 'bin'], words: 'Bin' },
      },
    ],
  },
  {
    id: 'trouble',
    heading: 'When something goes wrong',
    items: [
      {
        head: '“Not a photograph”, or it cannot be read',
        words:
          'Kingcup reads JPEG, PNG, WebP and what else your browser can show. Some telephones save HEIC: set the camera to “most compatible”, or send the picture to yourself as JPEG.',
      },
      {
        head: 'The colours are wrong',
        words:
          'First set the light: under the photograph, touch “Light” and show it something that was white or grey. Then rub out what does not belong. A single colour can be shifted by eye on the bench.',
      },
      {
        head: 'It says that a colour is out of reach',
        words:
          'No pile on your shelf comes nearer. Kingcup says why, and which pigment would bring it nearer. Key the harmony, or transpose it: its intervals are kept, and every colour can be mixed.',
      },
      {
        head: '“Not saved”',
        words:
          'The disk is full, or another window holds the book. The line at the top says which. Make room or close the other window, then touch “Try again”: what you did is still there.',
      },
      {
        head: 'A place does not open with no network',
        words:
          'Everything is on the device once Kingcup was open for some seconds with a network. Open it once more where there is one.',
      },
      {
        head: 'The pile came out wrong',
        words:
          'Paint cannot be taken out of a pile, but added to it. Under the mixture, open “It came out wrong”, say how it looks, and you are told what to add.',
      },
    ],
  },
  {
    id: 'care',
    heading: 'Cautions',
    items: [
      {
        head: 'What outranks this screen',
        words:
          'The safety data sheet of the lot in your hand, the local codes and licensed practice come first, always. What stands here is what studios usually mind. It is no medical, legal or fire-safety advice.',
      },
      {
        head: 'Poisonous pigments',
        words:
          'Lead white, lead-tin yellow, red lead and Naples yellow hold lead; vermilion holds mercury; orpiment and realgar hold arsenic. Keep them as paste, never as dust; do not eat, drink or smoke at work; wash your hands; keep them from children and from anyone who is pregnant. Grinding them dry belongs to licensed practice. On the Palette you can say that pupils are here: then none of them comes on any sheet.',
        link: { to: ['palette'], words: 'Palette' },
      },
      {
        head: 'Dust',
        words:
          'No pigment’s dust is good to breathe. Wet it before you work it, wear what its data sheet asks for, and wipe up wet.',
      },
      {
        head: 'Oily rags',
        words:
          'Rags with drying oil can catch fire by themselves. Spread them flat outdoors until they are hard, or keep them under water in a closed metal can. Never heap them, never put them into a bin.',
      },
      {
        head: 'Solvents and waste',
        words:
          'Use as little as you can, with fresh air and no flame. Collect solvents, scrapings and washings of poisonous pigments, label them, and hand them in where your town takes them; none of it goes down the sink.',
      },
    ],
  },
];
