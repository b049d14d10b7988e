import { FileUp } from 'lucide-react';
import type { ReactNode } from 'react';
import { FileTrigger } from 'react-aria-components';
import type { FileCheck } from '../../../core/import/file-check.ts';
import { Button } from '../../ui/button.tsx';
import { Panel } from '../../ui/page.tsx';
import { SentenceError } from '../../ui/states.tsx';
import { rowsToFix } from '../orders/import/import-rows.ts';
import { ImportTally } from '../orders/import/import-tally.tsx';
import { FixTable } from '../orders/import/fix-table.tsx';
import { useSayDone } from '../../form/use-act.ts';
import { useFinishedImport } from './finished-import.ts';
import styles from './learning.module.css';
import { counted } from '../../../core/units/count.ts';

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

function Checked({ checked }: { checked: FileCheck }) {
  const { busy, changed, fix, leaveOut, recheck, take } = useFinishedImport();
  const sayDone = useSayDone();
  const takeAll = async () => {
    const taken = await take();
    if (!taken) return;
    const text = `${counted(taken.operations, 'finished operation')} imported from ${checked.fileName}.`;
    sayDone(text, { stepId: null, factId: taken.factId });
  };
  const toFix = rowsToFix(checked);
  return (
    <>
      <ImportTally
        checked={checked}
        toFix={toFix.length}
        noun="operation"
        busy={busy}
        changed={changed}
        recheck={recheck}
        onTake={() => void takeAll()}
      />
      {checked.notes.map((note) => (
        <p key={note} className={styles.lead}>
          {note}
        </p>
      ))}
      {checked.rows.length === 0 && (
        <p className={styles.lead}>Every row of this file is imported or left out.</p>
      )}
      {toFix.length > 0 && (
        <>
          <p className={styles.lead}>
            Type over what is wrong, then check again. Rows stay here until they are fixed or left out; the
            others can be imported meanwhile.
          </p>
          <FixTable header={checked.header} rows={toFix} fix={fix} leaveOut={leaveOut} />
        </>
      )}
    </>
  );
}
