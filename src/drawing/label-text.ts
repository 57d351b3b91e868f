/** A rectangle, px, y down. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** Whether two boxes overlap or come nearer than `gap`. */
export const boxesOverlap = (a: Box, b: Box, gap = 0) =>
  a.left < b.right + gap &&
  b.left < a.right + gap &&
  a.top < b.bottom + gap &&
  b.top < a.bottom + gap;

const NARROW = /[iIlj.,:;'|!()[\]\s]/;
const MIDDLE = /[frt\-/]/;
const WIDE = /[mwMW@%]/;

/**
 * Estimated width of a text in a plain sans-serif face, without a DOM. On the generous side, so
 * that labels do not collide in any face.
 *
 * @param size font size; the result has its unit
 */
export function estimateTextWidth(words: string, size: number): number {
  let em = 0;
  for (const letter of words) {
    if (NARROW.test(letter)) em += 0.36;
    else if (MIDDLE.test(letter)) em += 0.46;
    else if (WIDE.test(letter)) em += 0.95;
    else if (/[A-Z]/.test(letter)) em += 0.74;
    else if (/[a-z0-9]/.test(letter)) em += 0.62;
    else em += 1;
  }
  return em * size;
}

/**
 * Breaks a text at spaces into at most `most` lines no wider than `room`, in the unit of `size`.
 * Shortens lines that remain too long with "…".
 */
export function breakLines(words: string, size: number, room: number, most = 2): string[] {
  const lines: string[] = [];
  for (const word of words.trim().split(/\s+/)) {
    const last = lines.at(-1);
    if (last !== undefined && estimateTextWidth(`${last} ${word}`, size) <= room) {
      lines[lines.length - 1] = `${last} ${word}`;
    } else lines.push(word);
  }
  const kept = lines.slice(0, most);
  if (lines.length > most) kept[most - 1] = `${kept[most - 1]} ${lines.slice(most).join(' ')}`;
  return kept.map((line) => shorten(line, size, room));
}

function shorten(line: string, size: number, room: number): string {
  if (estimateTextWidth(line, size) <= room) return line;
  let kept = [...line];
  while (kept.length > 1 && estimateTextWidth(`${kept.join('')}…`, size) > room)
    kept = kept.slice(0, -1);
  return `${kept.join('').trimEnd()}…`;
}
