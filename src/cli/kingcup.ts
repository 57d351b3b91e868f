import { runCommand } from './command.ts';
import { inWorkers } from './gather-pool.ts';
import { processOutput } from './output.ts';

process.exitCode = await runCommand(process.argv.slice(2), {
  ...processOutput,
  openPool: inWorkers,
});
