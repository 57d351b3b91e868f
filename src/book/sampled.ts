/** How entries of the sample book are told from the painter's own. */

/** Its name in the project and in the build. */
export const SAMPLE_FILE = 'mill-stream.zip';
/** Wrote every entry of the sample book: one that another device has written since is the painter's. */
export const SAMPLE_DEVICE = 'sample-book-of-kingcup';
const PREFIX = 'sample-';

/** Whether an entry came with the sample book. */
export const isSample = (id: string): boolean => id.startsWith(PREFIX);
export const sampleId = (name: string): string => `${PREFIX}${name}`;
