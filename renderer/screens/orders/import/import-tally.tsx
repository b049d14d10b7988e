import { Check, RefreshCw } from 'lucide-react';
import type { FileCheck } from '../../../../core/import/file-check.ts';
import { Button } from '../../../ui/button.tsx';
import { Tag } from '../../../ui/tag.tsx';
import type { FileImport } from './file-import.ts';
import styles from './import.module.css';
import { counted } from '../../../../core/units/count.ts';

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
        <Tag look="fine">{`${counted(ready.length, noun)} ready`}</Tag>
        <Tag>{`${counted(known.length, noun)} already ${known.length === 1 ? 'exists' : 'exist'}`}</Tag>
        <Tag look={toFix > 0 ? 'late' : 'plain'}>{`${counted(toFix, 'row')} to fix`}</Tag>
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
            {`Import ${counted(ready.length, noun)}`}
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
