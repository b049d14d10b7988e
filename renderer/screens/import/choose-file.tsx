import { FileUp } from 'lucide-react';
import { useState } from 'react';
import { FileTrigger } from 'react-aria-components';
import { importKinds } from '../../../core/import/kinds.ts';
import { MOST } from '../../../core/input-limits.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { pastedFile } from '../../form/pasted-rows.tsx';
import { Button } from '../../ui/button.tsx';
import { EmptyState } from '../../ui/states.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { FileExample } from '../orders/no-orders.tsx';
import type { FileImport } from './file-import.ts';
import styles from './import.module.css';
import { KIND_WORDS } from './kinds.ts';

/** Nothing chosen yet: the ways a file gets here. The whole window also takes a dropped file. */
export function ChooseFile({ file, shop }: { file: FileImport; shop: Shop }) {
  const { many } = KIND_WORDS[file.kind];
  return (
    <EmptyState icon={FileUp} title={`Choose a file of ${many}`}>
      <p>
        Text (.csv, .tsv, .txt) or a spreadsheet (.xlsx), as your other program writes it; or drop one
        anywhere on this window, or copy rows in a spreadsheet and press Ctrl+V here. You see how every row is
        read; nothing is imported until you say so.
      </p>
      <FileButton file={file} look="primary" label="Choose a file" />
      <PasteField file={file} />
      {file.kind === 'orders' ? <FileExample shop={shop} /> : <FieldNames file={file} shop={shop} />}
    </EmptyState>
  );
}

/** For those who would rather paste into a field. */
function PasteField({ file }: { file: FileImport }) {
  const [text, setText] = useState('');
  const lines = text.split('\n').filter((line) => line.trim() !== '').length;
  return (
    <div className={styles.paste}>
      <TextField
        long
        label="Or paste rows here, the headings first"
        value={text}
        onChange={setText}
        maxLength={MOST.fileBytes}
      />
      <Button isDisabled={lines < 2} onPress={() => void file.read(pastedFile(text))}>
        Read these rows
      </Button>
    </div>
  );
}

/** What rows of a kind can say. */
function FieldNames({ file, shop }: { file: FileImport; shop: Shop }) {
  const { fields } = importKinds[file.kind].fields(shop);
  const names = (needed: boolean) =>
    fields.filter((field) => (field.needed !== 'no') === needed).map(({ name }) => name);
  return (
    <div>
      <p>{`Needed: ${names(true).join(', ')}.`}</p>
      {names(false).length > 0 && <p>{`May be left out: ${names(false).join(', ')}.`}</p>}
      <p>Columns may come in any order and under other names.</p>
    </div>
  );
}

interface FileButtonProps {
  file: FileImport;
  look: 'primary' | 'usual';
  label: string;
}

export const FileButton = ({ file: { read, busy }, look, label }: FileButtonProps) => (
  <FileTrigger
    acceptedFileTypes={['.csv', '.txt', '.tsv', '.xlsx', 'text/csv']}
    onSelect={(files) => {
      const file = files?.[0];
      if (file) void read(file);
    }}
  >
    <Button look={look} icon={FileUp} isDisabled={busy === 'reading' || busy === 'taking'}>
      {label}
    </Button>
  </FileTrigger>
);
