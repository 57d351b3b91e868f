import type { CalibrationFault } from '../calibration/calibration-fault.ts';
import type { SampleFault } from '../calibration/measured-samples.ts';
import type { Suggestion } from '../calibration/suggest-swatches.ts';
import type { CardRemark } from '../calibration/swatch-card-reading.ts';
import type { NumberFormat } from '../number-format.ts';

/** Message for a fault, then what to do. */
export function calibrationFaultWords(fault: CalibrationFault, number: NumberFormat): string {
  switch (fault.code) {
    case 'card-none':
      return 'No swatch card was found in this photograph: its four corner marks (black rings) must all be seen. Take it again from above, or touch the places one by one.';
    case 'card-cut':
      return `Only ${fault.marks} of the four corner marks ${fault.marks === 1 ? 'is' : 'are'} in the picture: step back until the whole card is in it, with nothing lying on its corners.`;
    case 'card-corners':
      return 'The four corners that were given do not make a page: touch the centres of the corner marks clockwise, beginning with the one that has a black pupil.';
    case 'card-small':
      return `The card is too small in this photograph (${number(fault.pixelsPerMm, 1)} pixels to a millimetre, and 2 are needed): go nearer, so that the page fills the picture.`;
    case 'card-out':
      return `Place ${fault.place} lies outside the photograph: take it again with the whole page in the picture.`;
    case 'card-light-uneven':
      return `The light is too uneven: one side of the card gets ${number(fault.ratio, 1)} times the light of the other. Turn it towards the window, or go further from it.`;
    case 'card-shadow':
      return 'A shadow or a reflection lies over the card: stand so that neither you nor the camera shades it, and take it again.';
    case 'card-two-lights':
      return `Two lights of different colour fall on the card (their red and blue differ by ${Math.round(100 * (fault.ratio - 1))} per cent across the page). Put out the lamp or draw the blind, and take it again in one light.`;
    case 'card-light-coloured':
      return `The light is too strongly coloured (a factor of ${number(fault.ratio, 1)} between its strongest and weakest primary) to be set right. Take it by daylight.`;
    case 'card-clipped':
      return `${placeWords(fault)} is overexposed, so its colour is lost: take the photograph again with less exposure.`;
    case 'card-dark':
      return 'The photograph is too dark to read: the grey reference has almost no light. Take it again with more exposure.';
    case 'card-reference':
      return `${placeWords(fault)} does not look like what it should be, beside the other references: check that white, grey and black lie in their own places, unshaded.`;
    case 'card-tone':
      return `White and grey lie too far apart or too close for a camera (a contrast of ${number(fault.exponent, 2)} where 1 is faithful): check the lightness that you gave for each, and switch off the camera's filters.`;
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
      return `The colours of the chart cannot be set right (they are still ${number(fault.mean, 1)} off on average): check that the values belong to this chart, and that it lies in the same light as the card.`;
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

/** What was corrected in the photograph of a card, and what to mind in it. */
export function cardRemarkWords(remark: CardRemark, number: NumberFormat): string {
  switch (remark.code) {
    case 'light-corrected':
      return `The light falls off across the card by a factor of ${number(remark.ratio, 2)}; it was set right.`;
    case 'contrast-corrected':
      return `The camera's contrast was set right (exponent ${number(remark.exponent, 2)}).`;
    case 'uneven-places':
      return `Not quite even: place ${remark.places.join(', ')}.`;
    case 'no-chart':
      return 'No chart: colours are as good as the camera renders them, which is often several units off for strong ones.';
  }
}

/** Why a pile would teach most, and how much. */
export function suggestionWords(
  { reason, before, after }: Suggestion,
  number: NumberFormat,
): string {
  // One decimal place, or two if the numbers would look equal.
  const digits = after.toFixed(1) === before.toFixed(1) ? 2 : 1;
  return `${reasonWords(reason)} Usual piles would then come out within about ${number(after, digits)} instead of ${number(before, digits)}.`;
}

function reasonWords(reason: Suggestion['reason']): string {
  switch (reason.code) {
    case 'alone':
      return `${reason.label} has not been seen alone often enough.`;
    case 'tint':
      return `${reason.label} in white shows its strength${reason.hasTints ? ' better' : ', which its masstone hides'}.`;
    case 'pair':
      return `${reason.labels[0]} with ${reason.labels[1]} shows both where each hides the other's light, which no tint in white does.`;
  }
}
