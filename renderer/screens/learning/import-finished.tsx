import { FileUp } from 'lucide-react';
import type { ReactNode } from 'react';
import { FileTrigger } from 'react-aria-components';
import type { Reading } from '../../../core/import/reading.ts';
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
  const { reading, busy, trouble, read } = useFinishedImport();
  const button = (
    <FileTrigger
      acceptedFileTypes={['.csv', '.txt', '.tsv', '.xlsx', 'text/csv']}
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
  const panel = (trouble !== null || reading !== null) && (
    <Panel title={reading?.fileName ?? 'Finished operations'}>
      {trouble && <SentenceError message={trouble} />}
      {reading && <Checked reading={reading} />}
    </Panel>
  );
  return { button, panel };
}

function Checked({ reading }: { reading: Reading }) {
  const { busy, changed, fix, leaveOut, recheck, take } = useFinishedImport();
  const sayDone = useSayDone();
  const takeAll = async () => {
    const taken = await take();
    if (!taken) return;
    const text = `${counted(taken.counts.new, 'finished operation')} imported from ${reading.fileName}.`;
    sayDone(text, { stepId: null, factId: taken.factId });
  };
  const toFix = rowsToFix(reading);
  return (
    <>
      <ImportTally
        reading={reading}
        noun="operation"
        busy={busy}
        changed={changed}
        recheck={recheck}
        onTake={() => void takeAll()}
      />
      {reading.notes.map((note) => (
        <p key={note} className={styles.lead}>
          {note}
        </p>
      ))}
      {reading.counts.new + reading.counts.wrong + reading.counts.waiting === 0 && (
        <p className={styles.lead}>Every row of this file is imported or left out.</p>
      )}
      {reading.questions.map(({ id, words }) => (
        <p key={id} className={styles.lead}>
          {words}
        </p>
      ))}
      {toFix.length > 0 && (
        <>
          <p className={styles.lead}>
            Type over what is wrong, then check again. Rows stay here until they are fixed or left out; the
            others can be imported meanwhile.
          </p>
          <FixTable rows={toFix} fix={fix} leaveOut={leaveOut} />
        </>
      )}
    </>
  );
}
