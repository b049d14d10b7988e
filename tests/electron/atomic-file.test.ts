import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
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
