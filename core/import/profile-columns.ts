import { name } from '../fields.ts';
import { readProfile } from '../part/notation.ts';
import type { Profile } from '../part/profile.ts';
import { sentence } from '../result.ts';
import type { Settings } from '../shop/settings.ts';
import { formatLength } from '../units/length.ts';
import { writeNumber } from '../units/number.ts';
import type { Field } from './field.ts';
import { numberIn, textIn, type OfRow } from './list-rows.ts';
import type { ReadRow } from './read-rows.ts';

/** A cross-section in columns of its own: "flange 1", "bend 1", "flange 2" …, hems before and behind. */

/** So many flanges have columns; longer profiles are written as text. */
const FLANGES = 8;
const numbers = Array.from({ length: FLANGES }, (_, i) => i + 1);
const isBend = (number: number): boolean => number < FLANGES;
/** Words in English, German, French and Spanish; common practice, no source. */
const FLANGE_WORDS = ['leg', 'schenkel', 'aile', 'ala'];
const BEND_WORDS = ['angle', 'winkel', 'biegung', 'pli', 'angulo', 'plegado'];

const written = (of: string, words: readonly string[]): Field => ({
  name: of,
  sort: { is: 'text', schema: name },
  needed: 'no',
  words,
});

export const profileColumns: readonly Field[] = [
  written('first hem', ['start hem', 'umschlag 1', 'ourlet 1', 'dobladillo 1']),
  ...numbers.flatMap((number): Field[] => [
    {
      name: `flange ${number}`,
      sort: { is: 'length' },
      needed: 'no',
      words: FLANGE_WORDS.map((word) => `${word} ${number}`),
    },
    ...(isBend(number)
      ? [
          written(
            `bend ${number}`,
            BEND_WORDS.map((word) => `${word} ${number}`),
          ),
        ]
      : []),
  ]),
  written('last hem', ['end hem', 'umschlag 2', 'ourlet 2', 'dobladillo 2']),
];

/** A profile as its columns say; null: they say nothing. What is missing between others is never made up. */
export function profileInColumns(
  row: ReadRow,
  { units, decimals }: Pick<Settings, 'units' | 'decimals'>,
): { readonly profile: Profile } | { readonly issues: readonly OfRow[] } | null {
  const last = numbers.findLast((number) => numberIn(row, `flange ${number}`) !== undefined) ?? 0;
  if (profileColumns.every(({ name: of }) => row.values[of] === undefined)) return null;
  const steps: string[] = hemIn(row, 'first hem');
  const issues: OfRow[] = [];
  for (const number of numbers) {
    const [flange, bend] = [numberIn(row, `flange ${number}`), textIn(row, `bend ${number}`)];
    if (number <= last && flange === undefined)
      issues.push({ field: `flange ${number}`, reason: 'It is empty between others. Write its length.' });
    if (number < last && bend === undefined)
      issues.push({
        field: `bend ${number}`,
        reason: `How flange ${number} and ${number + 1} meet is not said. Write the degrees it turns and where to, like 90 up.`,
      });
    if (number >= last && bend !== undefined)
      issues.push({
        field: `bend ${number}`,
        reason: 'No flange stands behind it. Write one, or empty the cell.',
      });
    if (flange !== undefined) steps.push(`${writeNumber(flange, decimals, 9)} mm`);
    if (bend !== undefined && !/\b(?:up|down)\b/i.test(bend))
      issues.push({
        field: `bend ${number}`,
        reason: `“${bend}” does not say where to. Write 90 up, or 90 down.`,
      });
    if (bend !== undefined) steps.push(bend);
  }
  if (issues.length > 0) return { issues };
  const read = readProfile([...steps, ...hemIn(row, 'last hem')].join('; '), { units, decimals });
  if (read.ok) return { profile: read.value };
  return { issues: read.issues.map((one) => ({ field: null, reason: sentence([one]) })) };
}

const hemIn = (row: ReadRow, field: string): string[] => {
  const said = textIn(row, field);
  return said === undefined ? [] : [/^hem\b/i.test(said) ? said : `hem ${said}`];
};

/** A profile as such columns show it, by their fields. */
export const columnsOf = ({ flangesMm, bends }: Profile, settings: Settings): Record<string, string> =>
  Object.fromEntries(
    numbers.flatMap((number) => {
      const [flange, bend] = [flangesMm[number - 1], bends[number - 1]];
      return [
        [`flange ${number}`, flange === undefined ? 'none' : formatLength(flange, settings)],
        [`bend ${number}`, bend ? `${writeNumber(bend.angle, settings.decimals)} ${bend.direction}` : 'none'],
      ];
    }),
  );
