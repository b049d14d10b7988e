import type { Rng } from '../../../demo-data/make/rng.ts';
import type { Field } from './headings.ts';

/** What people leave in cells that say nothing certain: none of them may be taken. */
export const MISTAKES: Readonly<Partial<Record<Field, readonly string[]>>> = {
  quantity: ['ca. 40', '4O', '-6', '0', '12,5', '12.5', '?', '3-4', '1,2,3', '12 x 4', '1e3', '½', 'TBD', ''],
  length: [
    '2.5OO',
    '25,00,0',
    '1..2',
    '-2500',
    '0',
    'see drawing',
    '10-20',
    '9 1/0',
    '1,2,3',
    '120 lbs',
    '3 x 120',
  ],
  due: [
    '31.11.2026',
    '2026-02-30',
    '13/13/2026',
    'asap',
    'KW 50',
    '32.12.2026',
    'Nov 31, 2026',
    'Dec-26',
    '??',
    '2026',
  ],
  order: ['', '#', 'two words'],
  part: ['no such part', '?'],
  gauge: ['99', 'thin'],
  colour: ['like last time', '#'],
};

export function drawMistake(rng: Rng): { readonly field: Field; readonly text: string } {
  const field = rng.pick(Object.keys(MISTAKES) as Field[]);
  return { field, text: rng.pick(MISTAKES[field]!) };
}
