import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { beforeEach, expect, test } from 'vitest';
import { firstScript, MOST_SCRIPT } from '../tools/first-script.ts';
import { APP } from '../tools/studio.ts';
import { freshApp, freshBundle, START } from './built.ts';

beforeEach(freshApp);
beforeEach(freshBundle);

test('little script is needed before the first screen', () => {
  const { bytes, files } = firstScript(APP);
  expect(files.length).toBeGreaterThan(0);
  expect(bytes).toBeGreaterThan(1_000);
  expect(bytes).toBeLessThanOrEqual(MOST_SCRIPT);
});

test('start shows a harmony with its mixtures and serves the app', async () => {
  const started = spawn(process.execPath, [START, '--port', '0']);
  try {
    let [stdout, stderr] = ['', ''];
    started.stderr.on('data', (data) => {
      stderr += data;
    });
    const url = await new Promise<string>((found, failed) => {
      started.stdout.on('data', (data) => {
        stdout += data;
        const address = /Kingcup is open at (\S+)/.exec(stdout)?.[1];
        if (address) found(address);
      });
      started.once('exit', (code) => failed(new Error(`it ended with ${code}: ${stderr}`)));
    });
    expect(stdout).toMatch(/^jay-feather\.jpg, 1400 × 1000\n/);
    expect(stdout).toMatch(/^ {2}simplest {2}\d/m);
    const page = await fetch(url);
    expect(page.status).toBe(200);
    expect(await page.text()).toMatch(/<script [^>]*src=/);
    expect(stderr).toBe('');
  } finally {
    if (started.exitCode === null) {
      const ended = once(started, 'exit');
      started.kill();
      await ended;
    }
  }
});
