import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { FIRST_MINUTES, FIRST_STEPS } from '../../../core/report/first-minutes.ts';

const folder = join(import.meta.dirname, '../../..');
const readme = readFileSync(join(folder, 'README.md'), 'utf8');

it('README tells the first fifteen minutes in the words of the help', () => {
  const section = readme.slice(readme.indexOf(`## ${FIRST_MINUTES}\n`)).split('\n## ')[0];
  expect(section?.split('\n').filter((line) => /^\d/.test(line))).toEqual(
    FIRST_STEPS.map(({ title, says }, i) => `${i + 1}. **${title}.** ${says}`),
  );
});

it('README shows no picture that is not there', () => {
  const pictures = [...readme.matchAll(/!\[[^\]]*\]\(([^)]+)\)/g)].map(([, path]) => path ?? '');
  expect(pictures.filter((path) => !existsSync(join(folder, path)))).toEqual([]);
  expect(pictures.length).toBeGreaterThan(3);
});
