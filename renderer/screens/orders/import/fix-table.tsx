import { X } from 'lucide-react';
import type { RowReading } from '../../../../core/import/reading.ts';
import { classes } from '../../../ui/classes.ts';
import { IconButton } from '../../../ui/icon-button.tsx';
import { columnWidths, fieldsOf } from './import-rows.ts';
import type { FileImport } from './file-import.ts';
import styles from './import.module.css';

/** More rows than this at once help nobody; the rest come up when these are fixed. */
const SHOWN = 100;

/** What is done to a row on screen. */
type Fixing = Pick<FileImport, 'fix' | 'leaveOut'>;

/** The bad rows with their reasons, each cell to be typed again in place. */
export function FixTable({ rows, ...fixing }: Fixing & { rows: readonly RowReading[] }) {
  const fields = fieldsOf(rows);
  const widths = columnWidths(fields, rows);
  return (
    <div className={styles.scroll}>
      <table className={styles.fix} aria-label="Rows to fix">
        <thead>
          <tr>
            <th scope="col">Row</th>
            {fields.map((field) => (
              <th key={field} scope="col">
                {field}
              </th>
            ))}
            <th scope="col" aria-label="Leave out" />
          </tr>
        </thead>
        <tbody>
          {rows.slice(0, SHOWN).map((row) => (
            <FixRow key={row.row} fields={fields} widths={widths} row={row} {...fixing} />
          ))}
        </tbody>
      </table>
      {rows.length > SHOWN && (
        <p
          className={styles.note}
        >{`${rows.length - SHOWN} more rows to fix come up when these are done.`}</p>
      )}
    </div>
  );
}

interface RowProps extends Fixing {
  fields: readonly string[];
  /** Characters that fit into each column. */
  widths: readonly number[];
  row: RowReading;
}

function FixRow({ fields, widths, row, fix, leaveOut }: RowProps) {
  const reasonsId = `reasons-${row.row}`;
  return (
    <>
      <tr>
        <th scope="row">{row.row}</th>
        {fields.map((field, i) => {
          const cell = row.cells.find((one) => one.field === field);
          const isBad = cell?.issue !== undefined;
          return (
            <td key={field}>
              <input
                className={classes(styles.cell, isBad && styles.bad)}
                aria-label={`${field}, row ${row.row}`}
                aria-invalid={isBad}
                aria-describedby={isBad ? reasonsId : undefined}
                style={{ width: `calc(${widths[i] ?? 8}ch + 18px)` }}
                value={cell?.text ?? ''}
                disabled={!cell}
                onChange={(event) => fix(row.row, field, event.target.value)}
              />
            </td>
          );
        })}
        <td>
          <IconButton
            label={`Leave row ${row.row} out`}
            icon={X}
            small
            onPress={() => void leaveOut(row.row)}
          />
        </td>
      </tr>
      <tr className={styles.reasons}>
        <td />
        <td colSpan={fields.length + 1} id={reasonsId}>
          {row.words && <p>{row.words}</p>}
          {row.cells.map(
            ({ field, issue }) =>
              issue && (
                <p key={field}>
                  <strong>{field}:</strong> {issue}
                </p>
              ),
          )}
        </td>
      </tr>
    </>
  );
}
