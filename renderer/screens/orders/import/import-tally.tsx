import { Check, RefreshCw } from 'lucide-react';
import type { Reading } from '../../../../core/import/reading.ts';
import { Button } from '../../../ui/button.tsx';
import { Tag } from '../../../ui/tag.tsx';
import type { FileImport } from './file-import.ts';
import styles from './import.module.css';
import { counted } from '../../../../core/units/count.ts';

interface Props extends Pick<FileImport, 'busy' | 'changed' | 'recheck'> {
  reading: Reading;
  /** What a row of the file is: "line". */
  noun: string;
  onTake: () => void;
}

/** How many rows of a file are good, known or to be fixed, and what can be done with them now. */
export function ImportTally({ reading, noun, busy, changed, recheck, onTake }: Props) {
  const { wrong, waiting, changed: changes, known, new: added } = reading.counts;
  const ready = added + changes;
  return (
    <>
      <div className={styles.summary}>
        <Tag look="fine">{`${counted(ready, noun)} ready`}</Tag>
        <Tag>{`${counted(known, noun)} already ${known === 1 ? 'exists' : 'exist'}`}</Tag>
        <Tag look={wrong > 0 ? 'late' : 'plain'}>{`${counted(wrong, 'row')} to fix`}</Tag>
        {waiting > 0 && <Tag look="late">{`${counted(waiting, 'row')} waiting for an answer`}</Tag>}
        <span className={styles.acts}>
          <Button icon={RefreshCw} isDisabled={!changed || busy !== null} onPress={() => void recheck()}>
            Check again
          </Button>
          <Button
            look="primary"
            icon={Check}
            isDisabled={ready === 0 || changed || busy !== null}
            onPress={onTake}
          >
            {`Import ${counted(ready, noun)}`}
          </Button>
        </span>
      </div>
      {changed && (
        <p className={styles.lead} role="status">
          {`Cells were changed: check again before importing ${noun}s.`}
        </p>
      )}
    </>
  );
}
