import { temperatureOf } from './appearance.ts';
import { chroma, type Lab } from './lab.ts';
import { nameOf } from './name.ts';
import { munsellValue } from './value.ts';

/** Warm, cool or neither, by the published scale, whose poles are hue 50° and 230°. */
export { temperatureOf as temperatureWords } from './appearance.ts';
export { changeWords, differenceWords } from './change.ts';
export { namesOf } from './distinct.ts';
export { nameOf };

/** Value in words, by Munsell value. */
export function valueWords(lab: Lab): 'very low' | 'low' | 'middle' | 'high' | 'very high' {
  const V = munsellValue(lab);
  if (V < 2.5) return 'very low';
  if (V < 4.5) return 'low';
  if (V < 6.5) return 'middle';
  return V < 8.5 ? 'high' : 'very high';
}

/** Chroma in words, by C*ab: one Munsell step is about 5. */
export function chromaWords(lab: Lab): 'neutral' | 'weak' | 'moderate' | 'strong' | 'very strong' {
  const C = chroma(lab);
  if (C < 5) return 'neutral';
  if (C < 18) return 'weak';
  if (C < 38) return 'moderate';
  return C < 62 ? 'strong' : 'very strong';
}

/** Name, value, chroma and temperature: "deep blue-green: low value, moderate chroma, cool". */
export function describe(lab: Lab): string {
  const temperature = temperatureOf(lab);
  const felt = temperature === 'neutral' ? 'neither warm nor cool' : temperature;
  return `${nameOf(lab)}: ${valueWords(lab)} value, ${chromaWords(lab)} chroma, ${felt}`;
}
