/**
 * `npm test`: everything, in the order in which a failure is cheapest to find. Sets up what a bare Debian machine lacks
 * (as root, by apt-get) or says exactly what is missing. `npm test -- --unit` stops before the window tests.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { findBrowser, findElectron } from './e2e/runtimes.ts';

const root = join(import.meta.dirname, '..');
const results = join(root, 'test-results');
// An earlier run's counts must never stand for this one's.
rmSync(results, { recursive: true, force: true });
mkdirSync(results, { recursive: true });

const run = (title: string, command: string, args: string[], env: Record<string, string> = {}): boolean => {
  console.log(`\n— ${title}`);
  return (
    spawnSync(command, args, { cwd: root, stdio: 'inherit', env: { ...process.env, ...env } }).status === 0
  );
};
const tool = (name: string): string => join(root, 'node_modules/.bin', name);
const has = (command: string): boolean => spawnSync('sh', ['-c', `command -v ${command}`]).status === 0;

/** Debian packages by name; as root they are installed, otherwise named. */
function need(packages: string[]): boolean {
  if (process.getuid?.() === 0 && has('apt-get')) {
    const quiet = { DEBIAN_FRONTEND: 'noninteractive' };
    return (
      run('package lists', 'apt-get', ['update', '-qq'], quiet) &&
      run(packages.join(' '), 'apt-get', ['install', '-y', '-qq', ...packages], quiet)
    );
  }
  console.error(
    `Missing for the window tests: ${packages.join(', ')}. Install them (on Debian: apt-get install ${packages.join(' ')}) and run npm test again.`,
  );
  return false;
}

interface Count {
  passed: number;
  failed: number;
  skipped: number;
}
const none: Count = { passed: 0, failed: 0, skipped: 0 };

function countUnit(): Count {
  const file = join(results, 'unit.json');
  if (!existsSync(file)) return none;
  const report = JSON.parse(readFileSync(file, 'utf8'));
  return { passed: report.numPassedTests, failed: report.numFailedTests, skipped: report.numPendingTests };
}

function countWindow(): Count {
  const file = join(results, 'window.json');
  if (!existsSync(file)) return none;
  const { stats } = JSON.parse(readFileSync(file, 'utf8'));
  if (stats.flaky > 0) console.log(`\nOnly at the second try: ${stats.flaky} (listed above as flaky)`);
  return { passed: stats.expected + stats.flaky, failed: stats.unexpected, skipped: stats.skipped };
}

function windowTests(): boolean {
  if (!findBrowser() && !need(['chromium', 'fonts-liberation'])) return false;
  const electron = findElectron();
  const headless = process.platform === 'linux' && !process.env.DISPLAY && !process.env.WAYLAND_DISPLAY;
  if (electron && headless && !has('xvfb-run') && !need(['xvfb', 'xauth'])) return false;
  console.log(
    `\nDesktop window: ${electron ?? 'no Electron runtime found, so every story is told in the browser'}`,
  );
  console.log(`Browser host: ${findBrowser()}`);
  const playwright = [tool('playwright'), 'test', '-c', 'tests/e2e/playwright.config.ts'];
  playwright.push(...(electron ? ['--project=desktop', '--project=host'] : ['--project=browser']));
  return electron && headless
    ? run('window tests', 'xvfb-run', ['-a', '-s', '-screen 0 1600x1000x24', process.execPath, ...playwright])
    : run('window tests', process.execPath, playwright);
}

const steps: (() => boolean)[] = [
  () => run('types', tool('tsc'), ['-b']),
  () =>
    run('lint', tool('eslint'), ['.']) &&
    run('format', tool('prettier'), ['--check', '--log-level', 'warn', '.']),
  () =>
    run('rules, properties, data files', tool('vitest'), [
      'run',
      '--reporter=default',
      '--reporter=json',
      '--outputFile.json=test-results/unit.json',
    ]),
  () => run('build', process.execPath, ['electron/build.ts']),
];
if (!process.argv.includes('--unit')) steps.push(windowTests);

const passed = steps.every((step) => step());
const unit = countUnit();
const shown = countWindow();
console.log(
  `\n${unit.passed + shown.passed} passed, ${unit.failed + shown.failed} failed, ${unit.skipped + shown.skipped} skipped`,
);
process.exit(passed ? 0 : 1);
