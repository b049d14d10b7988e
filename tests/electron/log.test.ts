import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, vi } from 'vitest';
import { fileLog } from '../../electron/log.ts';
import { tempFolder } from './support.ts';

const silent = () => vi.spyOn(console, 'error').mockImplementation(() => undefined);

describe('the log file', () => {
  it('keeps what it held when it has grown too large: the old lines move to a second file', () => {
    const file = join(tempFolder(), 'foldweek.log');
    writeFileSync(file, `the trouble that led here\n${'x'.repeat(2_000_001)}`);
    fileLog(file).info('started');
    expect(readFileSync(`${file}.old`, 'utf8')).toMatch(/^the trouble that led here/);
    expect(readFileSync(file, 'utf8')).toMatch(/started\n$/);
  });

  it('stays within twice its size while the app runs, however much is said', () => {
    const file = join(tempFolder(), 'foldweek.log');
    const log = fileLog(file);
    for (let n = 0; n < 60; n++) log.info(`${n} ${'x'.repeat(100_000)}`);
    expect(readFileSync(file).length).toBeLessThan(2_200_000);
    expect(readFileSync(`${file}.old`).length).toBeLessThan(2_200_000);
    expect(readFileSync(file, 'utf8')).toContain('59 x');
  });

  it('does not throw when it cannot be written: what it tells of has happened all the same', () => {
    const terminal = silent();
    const folder = join(tempFolder(), 'logs');
    const file = join(folder, 'foldweek.log');
    const log = fileLog(file);
    log.info('started');
    rmSync(folder, { recursive: true });
    writeFileSync(folder, 'a file where the folder was');
    expect(() => log.info('an order was kept')).not.toThrow();
    expect(() => log.error('it failed', new Error('why'))).not.toThrow();
    expect(terminal.mock.calls.flat().join('\n')).toMatch(/The log .* cannot be written/);
    rmSync(folder);
    mkdirSync(folder);
    log.info('written again');
    expect(readFileSync(file, 'utf8')).toContain('written again');
    terminal.mockRestore();
  });

  it('writes a line that is said over and over once a minute, with how often it was said', () => {
    const terminal = silent();
    vi.useFakeTimers({ now: 0 });
    const file = join(tempFolder(), 'foldweek.log');
    const log = fileLog(file);
    const why = new Error('no');
    for (let n = 0; n < 10_000; n++) log.error('GET /x failed', why);
    vi.setSystemTime(61_000);
    log.error('GET /x failed', why);
    vi.useRealTimers();
    terminal.mockRestore();
    const lines = readFileSync(file, 'utf8')
      .split('\n')
      .filter((line) => line.includes('GET /x failed'));
    expect(lines).toHaveLength(2);
    expect(lines[1]).toContain('(9999 more times before this)');
  });

  it('is one file until it is too large', () => {
    const file = join(tempFolder(), 'foldweek.log');
    fileLog(file).info('started');
    expect(existsSync(`${file}.old`)).toBe(false);
  });
});
