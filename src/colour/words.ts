import { warmCool } from './appearance.ts';
import { chroma, type Lab } from './lab.ts';
import { nameOf } from './name.ts';
import { munsellValue } from './value.ts';

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

/** Warm scores above every neutral by at least this (Ou et al. 2004): chroma of about 3 at the poles. */
const FELT = 0.06;
/** Greens and purples lie across the axis and are neither. */
const ACROSS = 0.2;

/** Warm or cool by the published scale, whose poles are hue 50° and 230°. */
export function temperatureWords(lab: Lab): 'warm' | 'cool' | 'neutral' {
  const beyond = warmCool(lab) + 0.5;
  const across = Math.abs(beyond) < ACROSS * 0.02 * chroma(lab) ** 1.07;
  if (across || Math.abs(beyond) < FELT) return 'neutral';
  return beyond > 0 ? 'warm' : 'cool';
}

/** Name, value, chroma and temperature: "deep blue-green: low value, moderate chroma, cool". */
export function describe(lab: Lab): string {
  const temperature = temperatureWords(lab);
  const felt = temperature === 'neutral' ? 'neither warm nor cool' : temperature;
  return `${nameOf(lab)}: ${valueWords(lab)} value, ${chromaWords(lab)} chroma, ${felt}`;
}
