import { type ChildProcess, type SpawnOptions, spawn } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { Builder, By, Capabilities, type Session } from 'selenium-webdriver';
import { isCommand } from './debian.ts';
import type { Engine, Pane } from './engines.ts';
import { HANG_MS } from './studio.ts';

/** WebKitGTK's own small browser, wherever this processor's libraries are. */
function find(): string | undefined {
  const libraries = '/usr/lib';
  if (!existsSync(libraries)) return;
  return readdirSync(libraries)
    .filter((name) => name.endsWith('-linux-gnu'))
    .flatMap((name) =>
      ['4.1', '4.0'].map((version) => `${libraries}/${name}/webkit2gtk-${version}`),
    )
    .map((folder) => join(folder, 'MiniBrowser'))
    .find((path) => existsSync(path));
}

/** WebKitGTK's MiniBrowser on a screen that nobody sees, over WebDriver. */
export const webkit: Engine = {
  name: 'WebKit',
  packages: ['webkit2gtk-driver', 'xvfb'],
  isHere: () => find() !== undefined && isCommand('WebKitWebDriver') && isCommand('Xvfb'),
  async open(folder) {
    const started: ChildProcess[] = [];
    // Each has a group of its own: what it started in its turn ends with it.
    const start = (command: string, given: readonly string[], options: SpawnOptions) => {
      const child = spawn(command, given, { ...options, detached: true });
      started.push(child);
      return child;
    };
    const end = () => {
      for (const { pid } of started.reverse())
        if (pid !== undefined) {
          try {
            process.kill(-pid);
          } catch {
            // It has ended by itself.
          }
        }
    };
    try {
      const screen = start(
        'Xvfb',
        ['-displayfd', '3', '-screen', '0', '1400x1100x24', '-nolisten', 'tcp'],
        { stdio: ['ignore', 'ignore', 'ignore', 'pipe'] },
      );
      const display = await new Promise<string>((resolve, reject) => {
        screen.stdio[3]?.once('data', (text) => resolve(`:${String(text).trim()}`));
        screen.once('exit', () => reject(new Error('Xvfb did not start')));
      });
      const port = await freePort();
      start('WebKitWebDriver', [`--port=${port}`], {
        stdio: 'ignore',
        env: { ...process.env, ...settings(folder), DISPLAY: display },
      });
      const address = `http://127.0.0.1:${port}`;
      await answering(address);
      const session = await new Builder()
        .usingServer(address)
        .withCapabilities(
          new Capabilities({
            browserName: 'MiniBrowser',
            'webkitgtk:browserOptions': { binary: find(), args: ['--automation'] },
          }),
        )
        .build();
      await session.manage().setTimeouts({ script: HANG_MS, pageLoad: HANG_MS, implicit: 0 });
      return paneOf(session, async () => {
        await Promise.race([session.quit(), pause(3000)]);
        end();
      });
    } catch (error) {
      end();
      throw error;
    }
  },
};

const pause = (ms: number) => new Promise<void>((done) => setTimeout(done, ms));

/** A home of its own, where downloads go into the folder of the test. */
function settings(folder: string): Record<string, string> {
  const config = join(folder, 'config');
  mkdirSync(config);
  writeFileSync(
    join(config, 'user-dirs.dirs'),
    `XDG_DOWNLOAD_DIR="${join(folder, 'downloads')}"\n`,
  );
  return {
    HOME: folder,
    XDG_CONFIG_HOME: config,
    XDG_CACHE_HOME: join(folder, 'cache'),
    XDG_DATA_HOME: join(folder, 'data'),
    // There is no graphics card, and for root there is no sandbox.
    WEBKIT_DISABLE_COMPOSITING_MODE: '1',
    WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS: '1',
  };
}

async function freePort(): Promise<number> {
  const server = createServer();
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  const address = server.address();
  await new Promise((done) => server.close(done));
  return typeof address === 'object' && address ? address.port : 0;
}

async function answering(address: string): Promise<void> {
  for (const end = Date.now() + HANG_MS; Date.now() < end; ) {
    const status = await fetch(`${address}/status`).catch(() => null);
    if (status?.ok) return;
    await pause(50);
  }
  throw new Error('WebKitWebDriver did not start');
}

const paneOf = (session: Session, close: () => Promise<void>): Pane => ({
  goto: (url) => session.get(url),
  reload: () => session.navigate().refresh(),
  async run(task, ...given) {
    const answer = await session.executeAsyncScript<{ value: never; wrong?: string }>(
      `const [given, done] = arguments;
           Promise.resolve(JSON.parse(given))
             .then((list) => (${task})(...list))
             .then((value) => done({ value }), (error) => done({ wrong: String(error) }));`,
      JSON.stringify(given),
    );
    if (answer.wrong !== undefined) throw new Error(answer.wrong);
    return answer.value;
  },
  press: async (path) => (await session.findElement(By.xpath(path))).click(),
  type: async (path, keys) => (await session.findElement(By.xpath(path))).sendKeys(keys),
  upload: async (path, file) => (await session.findElement(By.xpath(path))).sendKeys(file),
  async resize(width, height) {
    // Its bar takes some of the height.
    const window = session.manage().window();
    await window.setRect({ x: 0, y: 0, width, height });
    const inner = await session.executeScript<number>('return innerHeight');
    await window.setRect({ x: 0, y: 0, width, height: 2 * height - inner });
  },
  async picture(file) {
    writeFileSync(file, await session.takeScreenshot(), 'base64');
  },
  close,
});
