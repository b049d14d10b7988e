import { Check } from 'lucide-react';
import type { FileCheck } from '../../../../core/import/file-check.ts';
import { navigate } from '../../../router.ts';
import { Button } from '../../../ui/button.tsx';
import { Panel } from '../../../ui/page.tsx';
import { EmptyState } from '../../../ui/states.tsx';
import { useSayDone } from '../../../form/use-act.ts';
import { askRush } from '../../what-if/what-if-view.ts';
import { FileButton } from './choose-file.tsx';
import { rowsToFix } from './import-rows.ts';
import { ImportTally } from './import-tally.tsx';
import { useImport } from './import-state.ts';
import styles from './import.module.css';
import { FixTable } from './fix-table.tsx';
import { counted } from '../../../../core/units/count.ts';

/** What came of checking a file: what can be taken, what is there already, what has to be fixed. */
export function CheckedFile({ checked }: { checked: FileCheck }) {
  const toFix = rowsToFix(checked);
  const { fix, leaveOut } = useImport();
  const nothingLeft = checked.ready.length === 0 && toFix.length === 0;
  return (
    <>
      <Summary checked={checked} toFix={toFix.length} />
      {nothingLeft && <NothingLeft checked={checked} />}
      {toFix.length > 0 && (
        <Panel title="Rows to fix">
          <p className={styles.lead}>
            Type over what is wrong, then check again. Rows stay here until they are fixed or left out; the
            others can be imported meanwhile.
          </p>
          <FixTable header={checked.header} rows={toFix} fix={fix} leaveOut={leaveOut} />
        </Panel>
      )}
    </>
  );
}

function Summary({ checked, toFix }: { checked: FileCheck; toFix: number }) {
  const { busy, changed, recheck, take } = useImport();
  const sayDone = useSayDone();
  const { fileName, notes } = checked;
  const takeAll = async () => {
    const taken = await take();
    if (!taken) return;
    sayDone(
      `${counted(taken.lines, 'line')} of ${counted(taken.orders, 'new work order')} imported from ${fileName}.`,
      { stepId: taken.stepId, factId: null },
    );
    if (taken.rush.length > 0) askRush(taken.rush);
  };
  return (
    <Panel title={fileName} actions={<FileButton look="usual" label="Another file" />}>
      <ImportTally
        checked={checked}
        toFix={toFix}
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

function NothingLeft({ checked: { known } }: { checked: FileCheck }) {
  const { taken, forget } = useImport();
  const words = taken
    ? `${counted(taken.lines, 'line')} of ${counted(taken.orders, 'new work order')} were imported. They wait at the end of the queues until you plan.`
    : `All ${counted(known.length, 'line')} of this file already exist in the shop, word for word. Nothing to import.`;
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
