import { resolve } from 'node:path';
import { CliError, exitCodeOf } from '../cli/cli-error.ts';
import { table } from '../cli/gather.ts';
import { gatherFile } from '../cli/gather-file.ts';
import { answersFor, mixtureTable } from '../cli/mix.ts';
import { readOptions, wholeNumber } from '../cli/options.ts';
import { processOutput } from '../cli/output.ts';
import { starterShelf } from '../pigment/starter-shelf.ts';
import { serveApp } from './server.ts';

const ROOT = resolve(import.meta.dirname, '../..');

const { out } = processOutput;

process.exitCode = await exitCodeOf(async () => {
  const options = readOptions('start', process.argv.slice(2), { port: { type: 'string' } });
  const port = wholeNumber('port', options.value('port') ?? '4173', 0, 65535);

  const photo = await gatherFile(resolve(ROOT, 'samples/jay-feather.jpg'));
  if (typeof photo === 'string') throw new CliError(photo);
  out(`${table(photo)}\n`);
  const targets = photo.colours.map(({ lab }) => lab as [number, number, number]);
  const shelf = starterShelf();
  out(mixtureTable(answersFor(targets, shelf, { key: true }), shelf));

  const { url } = await serveApp(resolve(ROOT, 'dist/app'), port).catch((error) => {
    throw new CliError(
      (error as NodeJS.ErrnoException).code === 'EADDRINUSE'
        ? `Port ${port} is taken. Choose another: npm start -- --port ${port + 1}`
        : String(error),
    );
  });
  out(`\nKingcup is open at ${url}  (Ctrl+C ends it)\n`);
}, processOutput);
