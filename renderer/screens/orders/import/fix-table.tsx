import { X } from 'lucide-react';
import { classes } from '../../../ui/classes.ts';
import { IconButton } from '../../../ui/icon-button.tsx';
import { columnWidths, type RowToFix } from './import-rows.ts';
import type { FileImport } from './file-import.ts';
import styles from './import.module.css';

/** More rows than this at once help nobody; the rest come up when these are fixed. */
const SHOWN = 100;

/** What is done to a row on screen. */
type Fixing = Pick<FileImport<unknown>, 'fix' | 'leaveOut'>;

interface TableProps extends Fixing {
  header: readonly string[];
  rows: readonly RowToFix[];
}

/** The bad rows with their reasons, each cell to be typed again in place. */
export function FixTable({ header, rows, ...fixing }: TableProps) {
  const widths = columnWidths(header, rows);
  return (
    <div className={styles.scroll}>
      <table className={styles.fix} aria-label="Rows to fix">
        <thead>
          <tr>
            <th scope="col">Row</th>
            {header.map((title, i) => (
              <th key={i} scope="col">
                {title}
              </th>
            ))}
            <th scope="col" aria-label="Leave out" />
          </tr>
        </thead>
        <tbody>
          {rows.slice(0, SHOWN).map((row) => (
            <FixRow key={row.row} header={header} widths={widths} row={row} {...fixing} />
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
  header: readonly string[];
  /** Characters that fit into each column. */
  widths: readonly number[];
  row: RowToFix;
}

function FixRow({ header, widths, row, fix, leaveOut }: RowProps) {
  const reasonsId = `reasons-${row.row}`;
  return (
    <>
      <tr>
        <th scope="row">{row.row}</th>
        {header.map((title, i) => (
          <td key={i}>
            <input
              className={classes(styles.cell, title in row.reasons && styles.bad)}
              aria-label={`${title}, row ${row.row}`}
              aria-invalid={title in row.reasons}
              aria-describedby={title in row.reasons ? reasonsId : undefined}
              style={{ width: `calc(${widths[i] ?? 8}ch + 18px)` }}
              value={row.cells[i] ?? ''}
              onChange={(event) => fix(row.row, i, event.target.value)}
            />
          </td>
        ))}
        <td>
          <IconButton label={`Leave row ${row.row} out`} icon={X} small onPress={() => leaveOut(row.row)} />
        </td>
      </tr>
      <tr className={styles.reasons}>
        <td />
        <td colSpan={header.length + 1} id={reasonsId}>
          {Object.entries(row.reasons).map(([title, reason]) => (
            <p key={title}>
              {title && <strong>{title}:</strong>} {reason}
            </p>
          ))}
        </td>
      </tr>
    </>
  );
}
