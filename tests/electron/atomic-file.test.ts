import fs, { readFileSync, readdirSync } from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';
import { basename, join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { writeWhole } from '../../electron/atomic-file.ts';
import { refusalOf, tempFolder } from './support.ts';

it('a file is written whole over the one before, and nothing else is left beside it', () => {
  const folder = tempFolder();
  const file = join(folder, 'dispatch.pdf');
  writeWhole(file, 'old');
  writeWhole(file, 'new');
  expect(readFileSync(file, 'utf8')).toBe('new');
  expect(readdirSync(folder)).toEqual(['dispatch.pdf']);
});

it('a place that cannot be written to is named in a sentence', () => {
  const { message } = refusalOf(() => writeWhole(join(tempFolder(), 'gone', 'dispatch.pdf'), 'text'));
  expect(message).toMatch(/gone.dispatch\.pdf could not be written \(ENOENT\)\. .*choose another place/);
});

it.skipIf(process.platform === 'win32')(
  'a file is on the disk, and then its name, before anyone is told that it is written',
  () => {
    const file = join(tempFolder(), 'dispatch.pdf');
    const calls: string[] = [];
    const { fsyncSync, renameSync } = fs;
    onTestFinished(() => {
      Object.assign(fs, { fsyncSync, renameSync });
      syncBuiltinESMExports();
    });
    fs.fsyncSync = (descriptor) => {
      calls.push(fs.fstatSync(descriptor).isDirectory() ? 'sync folder' : 'sync file');
      fsyncSync(descriptor);
    };
    fs.renameSync = (from, to) => {
      calls.push(`name it ${basename(String(to))}`);
      renameSync(from, to);
    };
    syncBuiltinESMExports();
    writeWhole(file, 'text');
    expect(calls).toEqual(['sync file', 'name it dispatch.pdf', 'sync folder']);
  },
);
