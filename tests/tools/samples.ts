import { main } from './specimens.ts';

await main();
