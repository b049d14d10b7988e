import { counted } from '../../../core/units/count.ts';
import { Button } from '../../ui/button.tsx';
import type { FileImport } from './file-import.ts';
import styles from './import.module.css';
import { withoutEvery, withoutSame } from './say.ts';

/** What was said about the file that no column shows, each to be taken back. */
export function SaidList({ file: { answers, say } }: { file: FileImport }) {
  const { same = [], every = {}, leaveOut = [], accept = [] } = answers;
  const said = [
    ...same.map((one) => ({
      words: `“${one.text}” is the ${one.what} ${one.is}.`,
      back: () => say(withoutSame(answers, one)),
    })),
    ...Object.entries(every).map(([field, text]) => ({
      words: `The ${field} of every row is ${text}.`,
      back: () => say(withoutEvery(answers, field)),
    })),
    ...(leaveOut.length === 0
      ? []
      : [
          {
            words: `${counted(leaveOut.length, 'row')} left out.`,
            back: () => say({ ...answers, leaveOut: [] }),
          },
        ]),
    ...(accept.length === 0
      ? []
      : [
          {
            words: `${counted(accept.length, 'row')} meant so.`,
            back: () => say({ ...answers, accept: [] }),
          },
        ]),
  ];
  if (said.length === 0) return null;
  return (
    <details className={styles.missing}>
      <summary>{`You said ${counted(said.length, 'thing')} about this file`}</summary>
      <ul className={styles.said}>
        {said.map(({ words, back }) => (
          <li key={words}>
            {words}{' '}
            <Button small look="quiet" aria-label={`Take back: ${words}`} onPress={() => void back()}>
              Take back
            </Button>
          </li>
        ))}
      </ul>
    </details>
  );
}
