import { Check, FileUp } from 'lucide-react';
import { useState, type ReactNode } from 'react';
import { FileTrigger } from 'react-aria-components';
import type { CheckedImport } from '../../../core/contract/import.ts';
import { contract } from '../../../core/contract/index.ts';
import { invoke } from '../../queries/invoke.ts';
import { Button } from '../../ui/button.tsx';
import { Panel } from '../../ui/page.tsx';
import { SentenceError } from '../../ui/states.tsx';
import { Tag } from '../../ui/tag.tsx';
import { base64Of } from '../orders/import/base64.ts';
import { count } from '../orders/import/import-rows.ts';
import { useSayDone } from '../shop/form/use-act.ts';
import styles from './learning.module.css';

interface Chosen {
  readonly fileName: string;
  readonly base64: string;
  readonly checked: CheckedImport;
}

const PROBLEMS_SHOWN = 50;

/** Finished operations from elsewhere: a button that reads a file, and what came of its check. */
export function useImportFinished(): { button: ReactNode; panel: ReactNode } {
  const [chosen, choose] = useState<Chosen | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const sayDone = useSayDone();
  const doing = async (work: () => Promise<void>) => {
    setBusy(true);
    setTrouble(null);
    await work().catch((error: Error) => setTrouble(error.message));
    setBusy(false);
  };
  const read = (file: File) =>
    doing(async () => {
      const base64 = base64Of(new Uint8Array(await file.arrayBuffer()));
      const asked = { fileName: file.name, base64 };
      choose({ ...asked, checked: await invoke(contract.importFinishedCheck, asked) });
    });
  const take = ({ fileName, base64 }: Chosen) =>
    doing(async () => {
      const { operations, left } = await invoke(contract.importFinishedTake, { fileName, base64 });
      choose({ fileName, base64, checked: left });
      await sayDone(`${count(operations, 'finished operation')} taken from ${fileName}.`);
    });
  const button = (
    <FileTrigger
      acceptedFileTypes={['.csv', '.txt', 'text/csv']}
      onSelect={(files) => {
        const file = files?.[0];
        if (file) void read(file);
      }}
    >
      <Button icon={FileUp} isDisabled={busy}>
        Import finished operations
      </Button>
    </FileTrigger>
  );
  const panel = (trouble !== null || chosen !== null) && (
    <Panel title={chosen?.fileName ?? 'Finished operations'}>
      {trouble && <SentenceError message={trouble} />}
      {chosen && <Checked checked={chosen.checked} busy={busy} onTake={() => void take(chosen)} />}
    </Panel>
  );
  return { button, panel };
}

interface CheckedProps {
  checked: CheckedImport;
  busy: boolean;
  onTake: () => void;
}

function Checked({ checked: { ready, known, problems, notes }, busy, onTake }: CheckedProps) {
  return (
    <>
      <div className={styles.summary}>
        <Tag look="fine">{`${count(ready.length, 'operation')} ready`}</Tag>
        <Tag>{`${count(known.length, 'operation')} known already`}</Tag>
        <Tag look={problems.length > 0 ? 'late' : 'plain'}>{`${count(problems.length, 'cell')} to mend`}</Tag>
        <Button look="primary" icon={Check} isDisabled={ready.length === 0 || busy} onPress={onTake}>
          {`Take ${count(ready.length, 'good operation')}`}
        </Button>
      </div>
      {notes.map((note) => (
        <p key={note} className={styles.lead}>
          {note}
        </p>
      ))}
      {problems.length > 0 && (
        <ul className={styles.problems} aria-label="Cells to mend in the file">
          {problems.slice(0, PROBLEMS_SHOWN).map(({ row, column, value, reason }) => (
            <li key={`${row} ${column}`}>
              <strong>{`Row ${row}, ${column}${value ? ` “${value}”` : ''}:`}</strong> {reason}
            </li>
          ))}
          {problems.length > PROBLEMS_SHOWN && <li>{`and ${problems.length - PROBLEMS_SHOWN} more`}</li>}
        </ul>
      )}
    </>
  );
}
