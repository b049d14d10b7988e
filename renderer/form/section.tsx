import { Grid3x3, Plus } from 'lucide-react';
import { Fragment, useState, type ReactNode } from 'react';
import { ListBox, ListBoxItem } from 'react-aria-components';
import type { FormKind } from '../../core/edit/command.ts';
import type { RowOf } from '../../core/shop/state.ts';
import { navigate, usePlace } from '../router.ts';
import { Button } from '../ui/button.tsx';
import { Swatch } from '../ui/choice.tsx';
import { EmptyState } from '../ui/states.tsx';
import { Tag } from '../ui/tag.tsx';
import { TextField } from '../ui/text-field.tsx';
import { useDrafts } from './drafts.ts';
import styles from './form.module.css';
import { RowsFromElsewhere, usePastedRows, WaitingFile } from './pasted-rows.tsx';
import { draftName, NEW_ROW as NEW } from './use-row-form.ts';

/** A row in the list at the side. */
interface ListEntry {
  readonly title: string;
  readonly detail: string;
  readonly swatch?: string;
}

interface Props<K extends FormKind> {
  kind: K;
  /** Third part of the address: "#/shop/PATH/ID". */
  path: string;
  noun: string;
  rows: readonly RowOf<K>[];
  entry: (row: RowOf<K>) => ListEntry;
  /** Starting values of a new row. */
  fresh: () => RowOf<K>;
  /** What the section is for, when it is empty. */
  purpose: string;
  form: (row: RowOf<K>, isNew: boolean, onSaved: (id: string) => void) => ReactNode;
  /** Adds several rows in one step. */
  many?: { readonly label: string; readonly view: (onSaved: (id: string) => void) => ReactNode };
}

/** Nor does a code begin with a star, which stands for the view that adds several rows at once. */
const MANY = '*';
const FILTER_FROM = 12;

/** All rows of a kind at the side, the chosen one's form beside them. */
export function Section<K extends FormKind>({
  kind,
  path,
  noun,
  rows,
  entry,
  fresh,
  purpose,
  form,
  many,
}: Props<K>) {
  const chosen = usePlace().path[2];
  const [filter, setFilter] = useState('');
  const drafts = useDrafts((state) => state.entries);
  const go = (id: string) => navigate('shop', path, id);
  usePastedRows(path);
  const row =
    chosen === NEW || chosen === MANY ? null : (rows.find((one) => one.id === chosen) ?? rows[0] ?? null);
  const sought = filter.trim().toLowerCase();
  const entries = rows
    .map((one) => ({ id: one.id, unsaved: draftName(kind, one.id) in drafts, ...entry(one) }))
    .filter((e) => `${e.id} ${e.title} ${e.detail}`.toLowerCase().includes(sought));
  const open = row ?? (chosen === NEW ? fresh() : null);
  return (
    <div className={styles.section}>
      <div className={styles.side}>
        <div className={styles.sideHead}>
          <Button icon={Plus} onPress={() => go(NEW)}>
            {`Add ${noun}`}
          </Button>
          {many && (
            <Button icon={Grid3x3} onPress={() => go(MANY)}>
              {many.label}
            </Button>
          )}
          <RowsFromElsewhere list={path} />
          <WaitingFile />
          {draftName(kind, null) in drafts && <Tag look="warn">one is being added, not saved</Tag>}
          {rows.length >= FILTER_FROM && (
            <TextField label="Find" value={filter} onChange={setFilter} placeholder="code or name" />
          )}
        </div>
        <RowList noun={noun} sought={sought} entries={entries} chosen={row?.id ?? null} onChoose={go} />
      </div>
      {chosen === MANY && many ? (
        many.view(go)
      ) : open ? (
        <Fragment key={row?.id ?? NEW}>{form(open, row === null, go)}</Fragment>
      ) : (
        <EmptyState title={`No ${noun} yet`}>
          <p>{purpose}</p>
          <Button look="primary" icon={Plus} onPress={() => go(NEW)}>
            {`Add ${noun}`}
          </Button>
        </EmptyState>
      )}
    </div>
  );
}

interface ListProps {
  noun: string;
  sought: string;
  entries: readonly (ListEntry & { readonly id: string; readonly unsaved: boolean })[];
  chosen: string | null;
  onChoose: (id: string) => void;
}

function RowList({ noun, sought, entries, chosen, onChoose }: ListProps) {
  return (
    <ListBox
      aria-label={`Each ${noun}`}
      className={styles.rows ?? ''}
      items={entries}
      selectionMode="single"
      selectionBehavior="replace"
      selectedKeys={chosen === null ? [] : [chosen]}
      onSelectionChange={(keys) => keys !== 'all' && keys.size > 0 && onChoose(String([...keys][0]))}
      renderEmptyState={() => <p className={styles.note}>{sought ? 'Nothing by that name.' : 'None yet.'}</p>}
    >
      {(e) => (
        <ListBoxItem id={e.id} textValue={e.title} className={styles.row ?? ''}>
          {e.swatch && <Swatch hex={e.swatch} />}
          <span className={styles.rowTitle}>{e.title}</span>
          {e.unsaved && (
            <span className={styles.rowMark}>
              <Tag look="warn">not saved</Tag>
            </span>
          )}
          <span className={styles.rowDetail}>{e.detail}</span>
        </ListBoxItem>
      )}
    </ListBox>
  );
}
