import { execFileSync, spawnSync } from 'node:child_process';

/** Whether a command can be run here. */
export const isCommand = (name: string): boolean => spawnSync('which', [name]).status === 0;

/**
 * Installs packages of Debian where that is possible: on Linux, as root, with apt-get.
 * @returns whether they were installed; where not, nothing was changed
 */
export function install(packages: readonly string[]): boolean {
  if (process.platform !== 'linux' || process.getuid?.() !== 0 || !isCommand('apt-get'))
    return false;
  console.log(`Installing from Debian: ${packages.join(', ')}…`);
  const began = Date.now();
  try {
    execFileSync('apt-get', ['update'], { stdio: 'ignore' });
    execFileSync('apt-get', ['install', '-y', '--no-install-recommends', ...packages], {
      stdio: 'ignore',
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    });
  } catch {
    return false;
  }
  console.log(`Installed in ${Math.round((Date.now() - began) / 1000)} s.`);
  return true;
}
