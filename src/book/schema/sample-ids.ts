/** How to distinguish entries of the sample book from the painter's own. */

/** File name of the sample book in the project and in the build. */
export const SAMPLE_FILE = 'mill-stream.zip';
/**
 * Device id of every entry in the sample book. An entry with another device id was changed by the
 * painter.
 */
export const SAMPLE_DEVICE = 'sample-book-of-kingcup';
const PREFIX = 'sample-';

export const isSample = (id: string): boolean => id.startsWith(PREFIX);
export const sampleId = (name: string): string => `${PREFIX}${name}`;
