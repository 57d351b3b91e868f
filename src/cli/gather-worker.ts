import { type GatherTask, gatherFile } from './gather-file.ts';

/** One photograph in a thread of its own. */
export default ({ path, options }: GatherTask) => gatherFile(path, options);
