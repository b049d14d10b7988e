import { Check } from 'lucide-react';
import { useState } from 'react';
import type { Reading } from '../../../core/import/reading.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { counted } from '../../../core/units/count.ts';
import { navigate } from '../../router.ts';
import { Button } from '../../ui/button.tsx';
import { EmptyState } from '../../ui/states.tsx';
import { Tabs } from '../../ui/tabs.tsx';
import { ColumnsTable, isDoubtful } from './columns-table.tsx';
import type { FileImport } from './file-import.ts';
import styles from './import.module.css';
import { KIND_WORDS } from './kinds.ts';
import { Questions } from './questions.tsx';
import { RowsPanel } from './rows-panel.tsx';
import { Summary, takenWords } from './summary.tsx';

interface Props {
  file: FileImport;
  reading: Reading;
  shop: Shop;
}

/** A file as it was read: what was recognised, what must be said, its columns, its rows. */
export function ReadFile({ file, reading, shop }: Props) {
  const { answers, say } = file;
  const props = { reading, shop, answers, say };
  const [tab, setTab] = useState(() => (isUnclear(reading) ? 'columns' : 'rows'));
  const { counts } = reading;
  const nothingLeft = counts.new + counts.changed + counts.wrong + counts.waiting === 0;
  return (
    <>
      <Summary file={file} reading={reading} />
      {nothingLeft && <NothingLeft file={file} reading={reading} />}
      <Questions {...props} />
      <div className={styles.work}>
        <Tabs
          label="The file as it was read"
          selected={tab}
          onSelect={setTab}
          tabs={[
            {
              id: 'rows',
              label: 'Rows',
              count: reading.rows.length,
              content: <RowsPanel {...props} />,
            },
            {
              id: 'columns',
              label: 'Columns',
              count: reading.columns.length,
              content: <ColumnsTable {...props} />,
            },
          ]}
        />
      </div>
    </>
  );
}

/** Somebody should look at the columns first. */
const isUnclear = ({ columns, questions }: Reading): boolean =>
  columns.some(isDoubtful) || questions.some(({ is }) => is === 'column');

function NothingLeft({ file: { taken, kind, forget }, reading: { counts } }: Omit<Props, 'shop'>) {
  const { row, many, home } = KIND_WORDS[kind];
  const isOrders = kind === 'orders';
  const words = taken
    ? `${takenWords(taken, row)}.${isOrders ? ' New ones wait at the end of the queues until you plan.' : ''}`
    : `All ${counted(counts.known, row)} of this file already exist in the shop, as they are here. Nothing to import.`;
  const goTo = (...path: readonly string[]) => {
    forget();
    navigate(...path);
  };
  return (
    <EmptyState icon={Check} title={taken ? 'All imported' : 'Nothing new in this file'}>
      <p>{words}</p>
      <div className={styles.acts}>
        {isOrders && (
          <Button look="primary" onPress={() => goTo('board')}>
            See the board
          </Button>
        )}
        <Button onPress={() => goTo(...home)}>{`See the ${many}`}</Button>
      </div>
    </EmptyState>
  );
}
