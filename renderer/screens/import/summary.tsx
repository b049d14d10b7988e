import { Check, Undo2 } from 'lucide-react';
import type { Reading } from '../../../core/import/reading.ts';
import { counted } from '../../../core/units/count.ts';
import { useSayDone } from '../../form/use-act.ts';
import { Button } from '../../ui/button.tsx';
import { Select } from '../../ui/choice.tsx';
import { Panel } from '../../ui/page.tsx';
import { SentenceError } from '../../ui/states.tsx';
import { Tag } from '../../ui/tag.tsx';
import { askRush } from '../what-if/what-if-view.ts';
import { FileButton } from './choose-file.tsx';
import type { FileImport, Taken } from './file-import.ts';
import styles from './import.module.css';
import { KIND_WORDS } from './kinds.ts';
import { SaidList } from './said-list.tsx';

interface Props {
  file: FileImport;
  reading: Reading;
}

/** What was recognised of a file, how many of its rows are what, and the one press that takes them. */
export const Summary = ({ file, reading }: Props) => (
  <Panel title={reading.fileName} actions={<FileChoice file={file} reading={reading} />}>
    <Tally file={file} reading={reading} />
    {file.trouble && (
      <SentenceError
        message={file.trouble}
        action={<Button onPress={() => void file.again()}>Read it again</Button>}
      />
    )}
    <Notes reading={reading} />
    <SaidList file={file} />
  </Panel>
);

/** Another sheet of it, the file before it, another file. */
const FileChoice = ({ file, reading: { sheets } }: Props) => (
  <span className={styles.acts}>
    {sheets.length > 1 && (
      <Select
        label="Sheet of the spreadsheet"
        labelHidden
        options={sheets.map((name) => ({ id: name, name: `Sheet ${name}` }))}
        value={sheets[0] ?? null}
        // What was said was of the other sheet.
        onChange={(sheet) => void file.say({ sheet })}
      />
    )}
    {file.before && (
      <Button icon={Undo2} onPress={() => void file.goBack()}>
        {`Back to ${file.before.file.fileName}`}
      </Button>
    )}
    <FileButton file={file} look="usual" label="Another file" />
  </span>
);

function Tally({ file: { busy, trouble, take }, reading }: Props) {
  const { row } = KIND_WORDS[reading.kind];
  const { wrong, waiting, changed, known, new: added } = reading.counts;
  const ready = added + changed;
  const sayDone = useSayDone();
  const takeAll = async () => {
    const taken = await take();
    if (!taken) return;
    sayDone(`${takenWords(taken, row)} from ${reading.fileName}.`, taken);
    if (taken.rush.length > 0) askRush(taken.rush);
  };
  return (
    <div className={styles.summary}>
      <Tag look="fine">{`${counted(ready, row)} ready`}</Tag>
      {changed > 0 && <Tag look="accent">{`${changed} of them changed`}</Tag>}
      {known > 0 && <Tag>{`${counted(known, row)} already ${known === 1 ? 'exists' : 'exist'}`}</Tag>}
      {wrong > 0 && <Tag look="late">{`${counted(wrong, 'row')} to fix`}</Tag>}
      {waiting > 0 && <Tag look="warn">{`${counted(waiting, 'row')} waiting for an answer`}</Tag>}
      <span role="status" className={styles.busy}>
        {busy !== null && `${DOING[busy]}…`}
      </span>
      <Button
        id={TAKE}
        look="primary"
        icon={Check}
        isDisabled={ready === 0 || busy !== null || trouble !== null}
        onPress={() => void takeAll()}
      >
        {`Import ${counted(ready, row)}`}
      </Button>
    </div>
  );
}

/** The button that takes the rows: the keyboard goes there when the last question is answered. */
export const TAKE = 'take-rows';

export const DOING = {
  reading: 'Reading the file',
  checking: 'Reading it with your answers',
  taking: 'Importing',
} as const;

/** "3 lines imported", "3 lines imported, 2 changed" */
export const takenWords = ({ counts }: Taken, row: string): string =>
  `${counted(counts.new, row)} imported${counts.changed > 0 ? `, ${counts.changed} changed` : ''}`;

/** What was noticed about the file, and what of its orders is in the shop but not in it. */
function Notes({ reading: { notes, missing } }: { reading: Reading }) {
  return (
    <>
      {notes.length > 0 && (
        <ul className={styles.notes}>
          {notes.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
      )}
      {missing.length > 0 && (
        <details className={styles.missing}>
          <summary>{`${counted(missing.length, 'line')} of these orders ${missing.length === 1 ? 'is' : 'are'} in the shop but not in the file; ${missing.length === 1 ? 'it stays as it is' : 'they stay as they are'}`}</summary>
          <ul className={styles.notes}>
            {missing.map(({ id, words }) => (
              <li key={id}>{words}</li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}
