import { Check, RefreshCw } from 'lucide-react';
import type { FileCheck } from '../../../../core/import/file-check.ts';
import { Button } from '../../../ui/button.tsx';
import { Tag } from '../../../ui/tag.tsx';
import type { FileImport } from './file-import.ts';
import { count } from './import-rows.ts';
import styles from './import.module.css';

interface Props extends Pick<FileImport<unknown>, 'busy' | 'changed' | 'recheck'> {
  checked: FileCheck;
  /** Rows to fix. */
  toFix: number;
  /** What a row of the file is: "line". */
  noun: string;
  onTake: () => void;
}

/** How many rows of a file are good, known or to be fixed, and what can be done with them now. */
export function ImportTally({ checked, toFix, noun, busy, changed, recheck, onTake }: Props) {
  const { ready, known } = checked;
  return (
    <>
      <div className={styles.summary}>
        <Tag look="fine">{`${count(ready.length, noun)} ready`}</Tag>
        <Tag>{`${count(known.length, noun)} already ${known.length === 1 ? 'exists' : 'exist'}`}</Tag>
        <Tag look={toFix > 0 ? 'late' : 'plain'}>{`${count(toFix, 'row')} to fix`}</Tag>
        <span className={styles.acts}>
          <Button icon={RefreshCw} isDisabled={!changed || busy !== null} onPress={() => void recheck()}>
            Check again
          </Button>
          <Button
            look="primary"
            icon={Check}
            isDisabled={ready.length === 0 || changed || busy !== null}
            onPress={onTake}
          >
            {`Import ${count(ready.length, noun)}`}
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
