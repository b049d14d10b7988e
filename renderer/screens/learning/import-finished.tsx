import { Check, FileUp, RefreshCw } from 'lucide-react';
import type { ReactNode } from 'react';
import { FileTrigger } from 'react-aria-components';
import type { CheckedImport } from '../../../core/contract/import.ts';
import { Button } from '../../ui/button.tsx';
import { Panel } from '../../ui/page.tsx';
import { SentenceError } from '../../ui/states.tsx';
import { Tag } from '../../ui/tag.tsx';
import { count, rowsToMend } from '../orders/import/import-rows.ts';
import { MendTable } from '../orders/import/mend-table.tsx';
import { useSayDone } from '../shop/form/use-act.ts';
import { useFinishedImport } from './finished-import.ts';
import styles from './learning.module.css';

/** Finished operations from elsewhere: a button that reads a file, and what came of its check. */
export function useImportFinished(): { button: ReactNode; panel: ReactNode } {
  const { checked, busy, trouble, read } = useFinishedImport();
  const button = (
    <FileTrigger
      acceptedFileTypes={['.csv', '.txt', 'text/csv']}
      onSelect={(files) => {
        const file = files?.[0];
        if (file) void read(file);
      }}
    >
      <Button icon={FileUp} isDisabled={busy !== null}>
        Import finished operations
      </Button>
    </FileTrigger>
  );
  const panel = (trouble !== null || checked !== null) && (
    <Panel title={checked?.fileName ?? 'Finished operations'}>
      {trouble && <SentenceError message={trouble} />}
      {checked && <Checked checked={checked} />}
    </Panel>
  );
  return { button, panel };
}

function Checked({ checked }: { checked: CheckedImport }) {
  const { changed, mend, leaveOut } = useFinishedImport();
  const toMend = rowsToMend(checked);
  return (
    <>
      <Summary checked={checked} toMend={toMend.length} />
      {changed && (
        <p className={styles.lead} role="status">
          Cells were changed: check again before taking operations.
        </p>
      )}
      {checked.notes.map((note) => (
        <p key={note} className={styles.lead}>
          {note}
        </p>
      ))}
      {checked.rows.length === 0 && (
        <p className={styles.lead}>Every row of this file is taken or left out.</p>
      )}
      {toMend.length > 0 && (
        <>
          <p className={styles.lead}>
            Type over what is wrong, then check again. Rows stay here until they are mended or left out; the
            good ones can be taken meanwhile.
          </p>
          <MendTable header={checked.header} rows={toMend} mend={mend} leaveOut={leaveOut} />
        </>
      )}
    </>
  );
}

function Summary({
  checked: { fileName, ready, known },
  toMend,
}: {
  checked: CheckedImport;
  toMend: number;
}) {
  const { busy, changed, recheck, take } = useFinishedImport();
  const sayDone = useSayDone();
  const takeAll = async () => {
    const taken = await take();
    if (taken) await sayDone(`${count(taken.operations, 'finished operation')} taken from ${fileName}.`);
  };
  return (
    <div className={styles.summary}>
      <Tag look="fine">{`${count(ready.length, 'operation')} ready`}</Tag>
      <Tag>{`${count(known.length, 'operation')} known already`}</Tag>
      <Tag look={toMend > 0 ? 'late' : 'plain'}>{`${count(toMend, 'row')} to mend`}</Tag>
      <span className={styles.acts}>
        <Button icon={RefreshCw} isDisabled={!changed || busy !== null} onPress={() => void recheck()}>
          Check again
        </Button>
        <Button
          look="primary"
          icon={Check}
          isDisabled={ready.length === 0 || changed || busy !== null}
          onPress={() => void takeAll()}
        >
          {`Take ${count(ready.length, 'good operation')}`}
        </Button>
      </span>
    </div>
  );
}
