import type { CalibrationFault } from '../calibration/calibration-fault.ts';
import type { SampleFault } from '../calibration/measured-samples.ts';
/** Message for a fault, then what to do. */
export function calibrationFaultWords(fault: CalibrationFault): string {
  switch (fault.code) {
    case 'card-none':
      return 'No swatch card was found in this photograph: its four corner marks (black rings) must all be seen. Take it again from above, or touch the places one by one.';
    case 'card-cut':
      return `Only ${fault.marks} of the four corner marks ${fault.marks === 1 ? 'is' : 'are'} in the picture: step back until the whole card is in it, with nothing lying on its corners.`;
    case 'card-corners':
      return 'The four corners that were given do not make a page: touch the centres of the corner marks clockwise, beginning with the one that has a black pupil.';
    case 'card-small':
      return `The card is too small in this photograph (${fault.pixelsPerMm.toFixed(1)} pixels to a millimetre, and 2 are needed): go nearer, so that the page fills the picture.`;
    case 'card-out':
      return `Place ${fault.place} lies outside the photograph: take it again with the whole page in the picture.`;
    case 'card-light-uneven':
      return `The light is too uneven: one side of the card gets ${fault.ratio.toFixed(1)} times the light of the other. Turn it towards the window, or go further from it.`;
    case 'card-shadow':
      return 'A shadow or a reflection lies over the card: stand so that neither you nor the camera shades it, and take it again.';
    case 'card-two-lights':
      return `Two lights of different colour fall on the card (their red and blue differ by ${Math.round(100 * (fault.ratio - 1))} per cent across the page). Put out the lamp or draw the blind, and take it again in one light.`;
    case 'card-light-coloured':
      return `The light is too strongly coloured (a factor of ${fault.ratio.toFixed(1)} between its strongest and weakest primary) to be set right. Take it by daylight.`;
    case 'card-clipped':
      return `${placeWords(fault)} is overexposed, so its colour is lost: take the photograph again with less exposure.`;
    case 'card-dark':
      return 'The photograph is too dark to read: the grey reference has almost no light. Take it again with more exposure.';
    case 'card-reference':
      return `${placeWords(fault)} does not look like what it should be, beside the other references: check that white, grey and black lie in their own places, unshaded.`;
    case 'card-tone':
      return `White and grey lie too far apart or too close for a camera (a contrast of ${fault.exponent.toFixed(2)} where 1 is faithful): check the lightness that you gave for each, and switch off the camera's filters.`;
    case 'card-blank':
      return `${placeWords(fault)} looks like bare paper: paint it, or leave that swatch out.`;
    case 'card-gloss':
      return `Gloss or dirt covers most of ${placeWords(fault).toLowerCase()}: turn the card until no light is reflected, and take it again.`;
    case 'card-mixed':
      return `${placeWords(fault)} is not one colour: paint it evenly and opaque up to its frame, or touch it by hand.`;
    case 'touch-reference-missing':
      return `Touch the ${fault.kind} reference too: without it the colours cannot be set right.`;
    case 'touch-outside':
      return `The point for place ${fault.place} is outside the photograph: touch it again.`;
    case 'chart-values':
      return 'These are no chart values: give the file that came with your chart, with LAB_L, LAB_A and LAB_B, or XYZ, or spectra for each patch.';
    case 'chart-count':
      return `The file holds ${fault.patches} patches, and a chart of 24 is needed.`;
    case 'chart-place':
      return 'The chart was not found where its corners were touched: touch the centres of its four corner patches in turn round the chart.';
    case 'chart-poor':
      return `The colours of the chart cannot be set right (they are still ${fault.mean.toFixed(1)} off on average): check that the values belong to this chart, and that it lies in the same light as the card.`;
    case 'tint-impossible':
      return `${fault.tint} cannot be right: a tint lies between its paint alone (${fault.alone}) and the white, and this one does not. Check which place is which.`;
    case 'tint-order':
      return `${fault.weaker} holds more white than ${fault.stronger} but looks stronger: one of the two ratios is wrong, or their places are swapped.`;
    case 'swatch-white-missing':
      return `There is no swatch of ${fault.label} alone, and its curve is not known: the studio white comes first, for all tints are seen through it.`;
    case 'swatch-paint-unknown':
      return `A swatch holds "${fault.pigment}", which is not among the paints to be calibrated: choose its pigment, or leave the swatch out.`;
    case 'swatch-nothing':
      return 'There is no swatch to learn from: photograph a card, measure one, or log a pile.';
    case 'stopped':
      return 'Stopped. Nothing was changed.';
  }
}

const placeWords = ({ place, label }: { place: number; label: string }): string =>
  `Place ${place}${label === '' ? '' : ` (${label})`}`;

/** Message for a fault, then what to do. */
export function sampleFaultWords(fault: SampleFault): string {
  switch (fault.code) {
    case 'sample-unknown':
      return `There is no sample called "${fault.sample}" in this file: choose one that is.`;
    case 'sample-parts':
      return `The parts of "${fault.sample}" must be numbers above 0, each pigment once.`;
    case 'sample-none':
      return 'No sample was told what it is: choose a pigment for at least one.';
  }
}
