import type { Answers } from '../../../core/import/answers.ts';
import type { Question, Reading } from '../../../core/import/reading.ts';
import { otherNameId } from '../../../core/shop/other-name.ts';

/** What is said about a file, with one thing more said or taken back. Each gives the answers whole. */

type Asked<K extends Question['is']> = Extract<Question, { is: K }>;

/** What a column can be besides a field. */
export const TO_NOTE = 'to the note';
export const LEFT_OUT = 'left out';

const without = <T>(record: Readonly<Record<string, T>> = {}, keys: readonly (string | null)[]) =>
  Object.fromEntries(Object.entries(record).filter(([key]) => !keys.includes(key)));

/**
 * A column is another field than was thought, goes to the note or stays out. What was said of units and marks belonged to
 * the column that was the field before.
 * @param is a field's name, or `TO_NOTE` or `LEFT_OUT`
 */
export function withColumn(answers: Answers, { columns }: Reading, title: string, is: string): Answers {
  const field = is === TO_NOTE || is === LEFT_OUT ? null : is;
  const before = columns.find((column) => column.title === title)?.field ?? null;
  if (before === field && field !== null) return answers;
  const moved = [field, before];
  const noted = columns.filter((column) => column.toNote && column.title !== title).map((one) => one.title);
  return {
    ...answers,
    columns: {
      ...answers.columns,
      ...(before === null ? {} : { [before]: '' }),
      ...(field === null ? {} : { [field]: title }),
    },
    units: without(answers.units, moved),
    dates: without(answers.dates, moved),
    decimals: without(answers.decimals, moved),
    every: without(answers.every, [field]),
    toNote: is === TO_NOTE ? [...noted, title] : noted,
  };
}

/** The file has no column of a field. */
export const withNoColumn = (answers: Answers, field: string): Answers => ({
  ...answers,
  columns: { ...answers.columns, [field]: '' },
});

/** Every row says the same of a field. */
export const withEvery = (answers: Answers, field: string, text: string): Answers => ({
  ...answers,
  every: { ...answers.every, [field]: text },
});

export const withoutEvery = (answers: Answers, field: string): Answers => ({
  ...answers,
  every: without(answers.every, [field]),
});

/** How a column's figures or dates are meant. */
export function withWay<K extends 'units' | 'decimals' | 'dates'>(
  answers: Answers,
  what: K,
  field: string,
  way: NonNullable<Answers[K]>[string],
): Answers {
  return { ...answers, [what]: { ...answers[what], [field]: way } };
}

const sameText =
  ({ what, text }: Pick<Asked<'same'>, 'what' | 'text'>) =>
  (other: NonNullable<Answers['same']>[number]): boolean =>
    otherNameId(what, text) === otherNameId(other.what, other.text);

/** A text stands for something of the shop. */
export const withSame = (
  answers: Answers,
  asked: Pick<Asked<'same'>, 'what' | 'text'>,
  is: string,
): Answers => ({
  ...answers,
  same: [
    ...(answers.same ?? []).filter((one) => !sameText(asked)(one)),
    { what: asked.what, text: asked.text, is },
  ],
});

export const withoutSame = (answers: Answers, asked: Pick<Asked<'same'>, 'what' | 'text'>): Answers => ({
  ...answers,
  same: (answers.same ?? []).filter((one) => !sameText(asked)(one)),
});

/** The rows that say a text which the shop does not know. */
export const rowsThatSay = ({ rows }: Reading, { what, text, field }: Asked<'same'>): number[] =>
  rows
    .filter(({ cells }) =>
      cells.some(
        (cell) =>
          cell.field === field &&
          cell.read === '' &&
          otherNameId(what, cell.text) === otherNameId(what, text),
      ),
    )
    .map(({ row }) => row);

export const withRowsOut = (answers: Answers, rows: readonly number[]): Answers => ({
  ...answers,
  leaveOut: [...new Set([...(answers.leaveOut ?? []), ...rows])],
});

/** Rows are meant as they are. */
export const withAccepted = (answers: Answers, rows: readonly number[]): Answers => ({
  ...answers,
  accept: [...new Set([...(answers.accept ?? []), ...rows])],
});

/** A cell typed again; only how it was typed last counts. */
export const withCell = (answers: Answers, row: number, field: string, text: string): Answers => ({
  ...answers,
  cells: [
    ...(answers.cells ?? []).filter((cell) => cell.row !== row || cell.field !== field),
    { row, field, text },
  ],
});

/** Rows in which nothing is wrong but what can be meant so. */
export const acceptableRows = ({ rows }: Reading): number[] =>
  rows
    .filter(({ state, words, cells }) => {
      const wrong = cells.filter(({ issue }) => issue !== undefined);
      return state === 'wrong' && words === '' && wrong.length > 0 && wrong.every((cell) => cell.acceptable);
    })
    .map(({ row }) => row);
