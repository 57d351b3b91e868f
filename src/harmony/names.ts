import { chroma, hueDeg, type Lab } from '../colour/lab.ts';

const HUES = ['red', 'orange', 'yellow', 'green', 'blue-green', 'blue', 'violet', 'purple'];
const ENDS = [40, 70, 105, 160, 215, 285, 315, 350];

/** Plain words, different for each colour of a harmony. */
export function plainNames(colours: readonly Lab[]): string[] {
  const used = new Map<string, number>();
  return colours.map((lab) => {
    const value = lab[0] > 80 ? 'pale' : lab[0] > 60 ? 'light' : lab[0] > 38 ? 'middle' : 'dark';
    let name: string;
    if (chroma(lab) < 6) name = lab[0] > 90 ? 'white' : lab[0] < 12 ? 'black' : `${value} grey`;
    else {
      const h = hueDeg(lab) ?? 0;
      const at = ENDS.findIndex((end) => h < end);
      name = `${value} ${HUES[at === -1 ? 0 : at]}`;
    }
    const times = (used.get(name) ?? 0) + 1;
    used.set(name, times);
    return times === 1 ? name : `${name}, ${['second', 'third'][times - 2] ?? `${times}th`}`;
  });
}
