import { useEffect, useRef, useState, type ReactNode } from 'react';
import type { Question, Reading } from '../../../core/import/reading.ts';
import { counted } from '../../../core/units/count.ts';
import { Button } from '../../ui/button.tsx';
import { Panel } from '../../ui/page.tsx';
import type { AnswerProps } from './answer-props.ts';
import { ColumnAnswers } from './column-answers.tsx';
import styles from './import.module.css';
import { SameAnswers } from './same-answers.tsx';
import { TAKE } from './summary.tsx';
import { acceptableRows, withAccepted, withRowsOut, withWay } from './say.ts';

/** More at once help nobody; the rest come up when these are answered. */
const SHOWN = 20;

/** What must be said before rows can be taken: each once for the file, most by one press. */
export function Questions(props: AnswerProps) {
  const { reading } = props;
  const unlikely = acceptableRows(reading);
  const list = useFocusOnNext(reading);
  if (reading.questions.length === 0 && unlikely.length === 0) return null;
  const more = reading.questions.length - SHOWN;
  return (
    <Panel title="Please say">
      <ul className={styles.questions} ref={list}>
        {reading.questions.slice(0, SHOWN).map((question) => (
          <Asked key={question.id} words={question.words} rows={question.rows}>
            <AnswersOf question={question} {...props} />
          </Asked>
        ))}
        {unlikely.length > 0 && <Unlikely rows={unlikely} {...props} />}
      </ul>
      {more > 0 && (
        <p className={styles.lead}>{`${counted(more, 'more question')} when these are answered.`}</p>
      )}
    </Panel>
  );
}

const Asked = ({ words, rows, children }: { words: string; rows: number; children: ReactNode }) => (
  <li className={styles.question}>
    <p>
      {words} <span className={styles.soft}>{`(${counted(rows, 'row')})`}</span>
    </p>
    <div className={styles.answers}>{children}</div>
  </li>
);

function AnswersOf({ question, ...props }: AnswerProps & { question: Question }) {
  const { answers, say } = props;
  switch (question.is) {
    case 'column':
      return <ColumnAnswers question={question} {...props} />;
    case 'same':
      return <SameAnswers question={question} {...props} />;
    default: {
      const { is, field, meanings } = question;
      return meanings.map(({ when, means }) => (
        <Button key={when} onPress={() => void say(withWay(answers, is, field, when))}>
          {means}
        </Button>
      ));
    }
  }
}

/** Rows in which something is unlikely, a due date that is past: it can be meant so. */
function Unlikely({ rows, reading, answers, say }: AnswerProps & { rows: readonly number[] }) {
  const first = reading.rows.find(({ row }) => row === rows[0]);
  const cell = first?.cells.find(({ issue }) => issue !== undefined);
  const [open, setOpen] = useState(true);
  if (!open) return null;
  return (
    <Asked
      words={`${rows.length === 1 ? `In row ${rows[0]}` : `In ${rows.length} rows, the first is row ${rows[0]}`}: ${cell?.issue ?? ''}`}
      rows={rows.length}
    >
      <Button onPress={() => void say(withAccepted(answers, rows))}>
        {rows.length === 1 ? 'It is meant so' : `All ${rows.length} are meant so`}
      </Button>
      <Button onPress={() => void say(withRowsOut(answers, rows))}>
        {rows.length === 1 ? 'Leave the row out' : 'Leave these rows out'}
      </Button>
      <Button look="quiet" onPress={() => setOpen(false)}>
        Change them below
      </Button>
    </Asked>
  );
}

/** The next question has the keyboard when the one that had it is answered and gone, after the last the way to take. */
function useFocusOnNext(reading: Reading) {
  const list = useRef<HTMLUListElement>(null);
  const had = useRef(false);
  useEffect(() => {
    const mark = () => {
      had.current = list.current?.contains(document.activeElement) ?? false;
    };
    document.addEventListener('focusin', mark);
    return () => document.removeEventListener('focusin', mark);
  }, []);
  useEffect(() => {
    const lost = document.activeElement === null || document.activeElement === document.body;
    if (!had.current || !lost) return;
    const next = list.current?.querySelector<HTMLElement>('button, input');
    (next ?? document.getElementById(TAKE))?.focus();
  }, [reading]);
  return list;
}
