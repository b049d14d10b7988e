import { Check } from 'lucide-react';
import type { Reading } from '../../../../core/import/reading.ts';
import { navigate } from '../../../router.ts';
import { Button } from '../../../ui/button.tsx';
import { Panel } from '../../../ui/page.tsx';
import { EmptyState } from '../../../ui/states.tsx';
import { useSayDone } from '../../../form/use-act.ts';
import { askRush } from '../../what-if/what-if-view.ts';
import { FileButton } from './choose-file.tsx';
import { rowsToFix } from './import-rows.ts';
import { ImportTally } from './import-tally.tsx';
import type { Taken } from './file-import.ts';
import { useImport } from './import-state.ts';
import styles from './import.module.css';
import { FixTable } from './fix-table.tsx';
import { counted } from '../../../../core/units/count.ts';

/** What came of checking a file: what can be taken, what is there already, what has to be fixed. */
export function CheckedFile({ reading }: { reading: Reading }) {
  const toFix = rowsToFix(reading);
  const { fix, leaveOut } = useImport();
  const { counts, questions } = reading;
  const nothingLeft = counts.new + counts.changed + counts.wrong + counts.waiting === 0;
  return (
    <>
      <Summary reading={reading} />
      {nothingLeft && <NothingLeft reading={reading} />}
      {questions.length > 0 && (
        <Panel title="To be answered">
          {questions.map(({ id, words }) => (
            <p key={id} className={styles.lead}>
              {words}
            </p>
          ))}
        </Panel>
      )}
      {toFix.length > 0 && (
        <Panel title="Rows to fix">
          <p className={styles.lead}>
            Type over what is wrong, then check again. Rows stay here until they are fixed or left out; the
            others can be imported meanwhile.
          </p>
          <FixTable rows={toFix} fix={fix} leaveOut={leaveOut} />
        </Panel>
      )}
    </>
  );
}

function Summary({ reading }: { reading: Reading }) {
  const { busy, changed, recheck, take } = useImport();
  const sayDone = useSayDone();
  const { fileName, notes } = reading;
  const takeAll = async () => {
    const taken = await take();
    if (!taken) return;
    sayDone(`${takenWords(taken)} from ${fileName}.`, { stepId: taken.stepId, factId: null });
    if (taken.rush.length > 0) askRush(taken.rush);
  };
  return (
    <Panel title={fileName} actions={<FileButton look="usual" label="Another file" />}>
      <ImportTally
        reading={reading}
        noun="line"
        busy={busy}
        changed={changed}
        recheck={recheck}
        onTake={() => void takeAll()}
      />
      {notes.length > 0 && (
        <ul className={styles.notes}>
          {notes.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
      )}
    </Panel>
  );
}

/** "3 lines imported", "3 lines imported, 2 changed" */
const takenWords = ({ counts }: Taken): string =>
  `${counted(counts.new, 'line')} imported${counts.changed > 0 ? `, ${counts.changed} changed` : ''}`;

function NothingLeft({ reading: { counts } }: { reading: Reading }) {
  const { taken, forget } = useImport();
  const words = taken
    ? `${takenWords(taken)}. New ones wait at the end of the queues until you plan.`
    : `All ${counted(counts.known, 'line')} of this file already exist in the shop, word for word. Nothing to import.`;
  const goTo = (path: string) => {
    forget();
    navigate(path);
  };
  return (
    <EmptyState icon={Check} title={taken ? 'All imported' : 'Nothing new in this file'}>
      <p>{words}</p>
      <div className={styles.acts}>
        <Button look="primary" onPress={() => goTo('board')}>
          See the board
        </Button>
        <Button onPress={() => goTo('orders')}>See the orders</Button>
      </div>
    </EmptyState>
  );
}
