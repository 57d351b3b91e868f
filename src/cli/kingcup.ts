import { runCommand } from './command.ts';
import { inWorkers } from './gather-pool.ts';
import { processOutput } from './output.ts';

// A reader that has seen enough, such as “head”, closes the pipe: that is no failure.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
  process.exit();
});

process.exitCode = await runCommand(process.argv.slice(2), {
  ...processOutput,
  openPool: inWorkers,
});
