/** Iterations in one chunk. */
const CHUNK_LENGTH = 4096;

/**
 * Runs a long loop in chunks, so that the engine optimises its body. Engines optimise a function
 * after many calls; one that is called once for a whole photograph stays slow for most of its run.
 * @param length number of iterations
 * @param piece  a function of its own that runs the iterations `from` … `to` − 1
 */
export function forEachChunk(length: number, piece: (from: number, to: number) => void): void {
  for (let from = 0; from < length; from += CHUNK_LENGTH)
    piece(from, Math.min(length, from + CHUNK_LENGTH));
}
