import { temperatureOf } from './appearance.ts';
import { nameOf } from './colour-name.ts';
import { chroma, type Lab } from './lab.ts';
import { munsellValue } from './munsell-value.ts';

/** Warm, cool or neutral, by the published scale, whose poles are hue 50° and 230°. */
export { temperatureOf as temperatureWords } from './appearance.ts';
export { changeWords, differenceWords } from './change-words.ts';
export { distinctNamesOf } from './distinct-names.ts';
export { nameOf };

/**
 * Words for the value of a colour (CIELAB, D65), from its Munsell value; the limits are our own.
 */
export function valueWords(lab: Lab): 'very low' | 'low' | 'middle' | 'high' | 'very high' {
  const V = munsellValue(lab);
  if (V < 2.5) return 'very low';
  if (V < 4.5) return 'low';
  if (V < 6.5) return 'middle';
  return V < 8.5 ? 'high' : 'very high';
}

/** Words for C*ab (one unit of Munsell chroma is about 5); the limits are our own. */
export function chromaWords(lab: Lab): 'neutral' | 'weak' | 'moderate' | 'strong' | 'very strong' {
  const C = chroma(lab);
  if (C < 5) return 'neutral';
  if (C < 18) return 'weak';
  if (C < 38) return 'moderate';
  return C < 62 ? 'strong' : 'very strong';
}

/** Describes a colour (CIELAB, D65): "deep blue-green: low value, moderate chroma, cool". */
export function describeColour(lab: Lab): string {
  const temperature = temperatureOf(lab);
  const felt = temperature === 'neutral' ? 'neither warm nor cool' : temperature;
  return `${nameOf(lab)}: ${valueWords(lab)} value, ${chromaWords(lab)} chroma, ${felt}`;
}
