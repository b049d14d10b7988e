import { safeDateWords } from '../../../core/report/safe-date-words.ts';
import { useChances } from '../../queries/chances.ts';
import { Select } from '../../ui/choice.tsx';
import { storedChoice } from '../../ui/stored-choice.ts';
import styles from './board.module.css';

/** How sure a promise is to be, in percent; kept in this window. */
const sureness = storedChoice('foldweek.sureness', ['50', '80', '90', '95'], '90');

/** The date to promise for a line at a chosen confidence; nothing while too little work is finished. */
export function SafeDate({ lineId, timeZone }: { lineId: string; timeZone: string }) {
  const chances = useChances();
  const chosen = sureness.use();
  if (!chances?.[lineId]) return null;
  return (
    <section className={styles.part}>
      <h3>A date to promise</h3>
      <Select
        label="How sure"
        options={sureness.choices.map((id) => ({ id, name: `${id} %` }))}
        value={chosen}
        onChange={(id) => {
          const choice = sureness.choices.find((one) => one === id);
          if (choice) sureness.write(choice);
        }}
      />
      <p>{safeDateWords(chances, lineId, Number(chosen) / 100, timeZone)}</p>
    </section>
  );
}
