import { importKinds, type ImportKindName } from '../../../core/import/kinds.ts';
import type { Field } from '../../../core/import/field.ts';
import type { ColumnReading } from '../../../core/import/reading.ts';
import { Select, type Option } from '../../ui/choice.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { Tag } from '../../ui/tag.tsx';
import styles from './import.module.css';
import type { AnswerProps } from './answer-props.ts';
import { LEFT_OUT, TO_NOTE, withColumn, withWay } from './say.ts';

/** How a column was recognised, where it is not by its heading. */
const BY: Readonly<Record<string, string>> = {
  alike: 'please check: its heading is only alike',
  content: 'please check: by its cells',
  remembered: 'as last time',
  said: 'as you said',
};

export const isDoubtful = ({ by }: ColumnReading): boolean => by === 'alike' || by === 'content';

/** A row for each column of the file: what it holds, what it is read as, how its figures and dates are meant. */
export function ColumnsTable(props: AnswerProps) {
  const { reading, shop, answers, say } = props;
  const { fields } = importKinds[reading.kind as ImportKindName].fields(shop);
  const options = optionsOf(fields);
  return (
    <div className={styles.scroll}>
      <div className={styles.header}>
        <NumberField
          whole
          min={1}
          label="Row of the file that names the columns"
          value={reading.header}
          onChange={(header) => {
            if (Number.isInteger(header) && header > 0) void say({ ...answers, header });
          }}
        />
      </div>
      <table className={styles.columns} aria-label="Columns of the file">
        <thead>
          <tr>
            <th scope="col">In the file</th>
            <th scope="col">First cells</th>
            <th scope="col">Is read as</th>
            <th scope="col">Meant</th>
            <th scope="col">First rows as read</th>
          </tr>
        </thead>
        <tbody>
          {reading.columns.map((column) => (
            <ColumnRow key={column.title} column={column} options={options} {...props} />
          ))}
        </tbody>
      </table>
    </div>
  );
}

const optionsOf = (fields: readonly Field[]): Option[] => [
  ...fields.map(({ name, needed }) => ({ id: name, name: needed === 'no' ? name : `${name} (needed)` })),
  ...(fields.some(({ name }) => name === 'note') ? [{ id: TO_NOTE, name: 'into the note' }] : []),
  { id: LEFT_OUT, name: 'leave out' },
];

function ColumnRow({
  column,
  options,
  reading,
  answers,
  say,
}: AnswerProps & { column: ColumnReading; options: readonly Option[] }) {
  const { title, field, toNote, by, examples } = column;
  return (
    <tr>
      <th scope="row">{title}</th>
      <td className={styles.soft}>{examples.join(' · ')}</td>
      <td>
        <Select
          label={`What “${title}” is read as`}
          labelHidden
          options={options}
          value={field ?? (toNote ? TO_NOTE : LEFT_OUT)}
          onChange={(is) => void say(withColumn(answers, reading, title, is))}
        />
        {by !== null && BY[by] && <Tag look={isDoubtful(column) ? 'warn' : 'plain'}>{BY[by]}</Tag>}
      </td>
      <td>
        <Ways column={column} answers={answers} say={say} />
      </td>
      <td>{field === null ? '' : firstRead(reading, field).join(' · ')}</td>
    </tr>
  );
}

/** The first three cells of a field as they are understood, in the file's order. */
function firstRead({ rows }: AnswerProps['reading'], field: string): string[] {
  const found: { readonly row: number; readonly read: string }[] = [];
  for (const { row, cells } of rows) {
    const read = cells.find((cell) => cell.field === field)?.read ?? '';
    if (read !== '') found.push({ row, read });
  }
  return found
    .sort((a, b) => a.row - b.row)
    .slice(0, 3)
    .map(({ read }) => read);
}

const UNITS: readonly Option[] = [
  { id: 'mm', name: 'millimetres' },
  { id: 'cm', name: 'centimetres' },
  { id: 'm', name: 'metres' },
  { id: 'in', name: 'inches' },
  { id: 'ft', name: 'feet' },
];
const MARKS: readonly Option[] = [
  { id: 'point', name: 'decimals: 1.5' },
  { id: 'comma', name: 'decimals: 1,5' },
];
const ORDERS: readonly Option[] = [
  { id: 'dmy', name: 'day, month, year' },
  { id: 'mdy', name: 'month, day, year' },
  { id: 'ymd', name: 'year, month, day' },
];

/** Unit, decimals and order of dates, where the column has figures or dates that they matter to. */
function Ways({
  column: { title, field, unit, decimals, dates },
  answers,
  say,
}: Pick<AnswerProps, 'answers' | 'say'> & { column: ColumnReading }) {
  if (field === null) return null;
  return (
    <div className={styles.ways}>
      {unit !== null && (
        <Select
          label={`Unit of “${title}”`}
          labelHidden
          options={
            field === 'gauge' ? UNITS.map(({ id, name }) => ({ id, name: `thickness in ${name}` })) : UNITS
          }
          value={unit}
          onChange={(id) => void say(withWay(answers, 'units', field, id))}
        />
      )}
      {decimals !== null && (
        <Select
          label={`Decimals of “${title}”`}
          labelHidden
          options={MARKS}
          value={decimals}
          onChange={(id) => void say(withWay(answers, 'decimals', field, id as 'point' | 'comma'))}
        />
      )}
      {dates !== null && (
        <Select
          label={`Dates of “${title}”`}
          labelHidden
          options={ORDERS}
          value={dates}
          onChange={(id) => void say(withWay(answers, 'dates', field, id as 'dmy' | 'mdy' | 'ymd'))}
        />
      )}
    </div>
  );
}
