import { writeSampleBook } from './sample-book.ts';
import { main } from './specimens.ts';

await main();
await writeSampleBook();
