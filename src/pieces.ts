/** Turns of a loop in one piece. */
const PIECE = 4096;

/**
 * Goes through a long loop a piece at a time. Engines compile a function for speed once it was called often;
 * one that is called once, for a whole photograph, runs slowly for long, each time anew.
 * @param piece does the turns `from` … `to` − 1, in a function of its own
 */
export function inPieces(length: number, piece: (from: number, to: number) => void): void {
  for (let from = 0; from < length; from += PIECE) piece(from, Math.min(length, from + PIECE));
}
