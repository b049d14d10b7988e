import type { ReactNode } from 'react';
import type { FileLayout } from '../../../core/shop/file-layout.ts';
import type { NamedKind, OtherName } from '../../../core/shop/other-name.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { useAct } from '../../form/use-act.ts';
import { Button } from '../../ui/button.tsx';
import { classes } from '../../ui/classes.ts';
import { toastError } from '../../ui/toast.tsx';
import { KIND_WORDS } from '../import/kinds.ts';
import styles from './settings.module.css';

const KINDS: Readonly<Record<NamedKind, string>> = {
  part: 'part',
  material: 'metal',
  colour: 'colour',
  gauge: 'gauge',
  machine: 'machine',
  customer: 'customer',
};

/** What files that came in were said to mean: remembered for the next ones until it is forgotten here. */
export function FileMemory({ shop }: { shop: Shop }) {
  const names = shop.otherName.toSorted(
    (a, b) => a.kind.localeCompare(b.kind, 'en') || a.text.localeCompare(b.text, 'en'),
  );
  const layouts = shop.fileLayout.toSorted((a, b) => a.id.localeCompare(b.id, 'en'));
  return (
    <div className={classes(styles.side, styles.ownTab)}>
      <section className={styles.panel}>
        <h2>Other names in files</h2>
        <p className={styles.note}>
          Forgotten, the next file asks again. Rows that came in under it stay as they are; undo brings it
          back.
        </p>
        <Table
          label="Other names in files"
          heads={['In files', 'Is', 'Kind']}
          empty="No file called anything by another name so far."
        >
          {names.map((name) => (
            <tr key={name.id}>
              <th scope="row">{name.text}</th>
              <td>{ours(shop, name)}</td>
              <td>{KINDS[name.kind]}</td>
              <td>
                <Forget kind="otherName" row={name} what={`“${name.text}”`} />
              </td>
            </tr>
          ))}
        </Table>
      </section>
      <section className={styles.panel}>
        <h2>How files are read</h2>
        <Table
          label="How files are read"
          heads={['Files of', 'Columns', 'Else said']}
          empty="Nothing was said of a file’s columns so far."
        >
          {layouts.map((row) => (
            <tr key={row.id}>
              <th scope="row">{KIND_WORDS[row.kind].many}</th>
              <td>{columnWords(row)}</td>
              <td>{saidWords(row)}</td>
              <td>
                <Forget
                  kind="fileLayout"
                  row={row}
                  what={`how files of ${KIND_WORDS[row.kind].many} with ${columnWords(row)} are read`}
                />
              </td>
            </tr>
          ))}
        </Table>
      </section>
    </div>
  );
}

/** What the shop calls it: its name and code, or what is no longer there. */
function ours(shop: Shop, { kind, oursId }: OtherName): string {
  if (kind === 'gauge' || kind === 'customer') return oursId;
  const row = shop[kind].find(({ id }) => id === oursId);
  return row ? `${row.name} (${oursId})` : `${oursId}, which is no longer there`;
}

const columnWords = ({ layout: { columns } }: FileLayout): string =>
  Object.entries(columns)
    .map(([field, title]) => (title === '' ? `no ${field}` : `${title} → ${field}`))
    .join(', ');

/** Units, orders of dates and marks that were said, and the columns that go to the note. */
const saidWords = ({ layout: { units, dates, decimals, toNote } }: FileLayout): string =>
  [
    ...Object.entries({ ...units }).map(([field, unit]) => `${field} in ${unit}`),
    ...Object.entries(dates).map(([field, order]) => `${field} as ${[...order].join('-')}`),
    ...Object.entries(decimals).map(([field, mark]) => `${field} with a decimal ${mark}`),
    ...toNote.map((title) => `${title} → note`),
  ].join(', ') || '–';

function Forget({
  kind,
  row,
  what,
}: {
  kind: 'otherName' | 'fileLayout';
  row: { readonly id: string; readonly revision: number };
  what: string;
}) {
  const act = useAct();
  const forget = () =>
    void act({ do: 'memory.forget', kind, id: row.id, revision: row.revision }).catch(toastError);
  return (
    <Button small aria-label={`Forget ${what}`} onPress={forget}>
      Forget
    </Button>
  );
}

interface TableProps {
  label: string;
  heads: readonly string[];
  empty: string;
  children: readonly ReactNode[];
}

const Table = ({ label, heads, empty, children }: TableProps) =>
  children.length === 0 ? (
    <p className={styles.note}>{empty}</p>
  ) : (
    <table className={styles.memory} aria-label={label}>
      <thead>
        <tr>
          {[...heads, ''].map((head) => (
            <th key={head} scope="col">
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>{children}</tbody>
    </table>
  );
