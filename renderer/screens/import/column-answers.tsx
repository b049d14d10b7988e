import { useState } from 'react';
import type { Field } from '../../../core/import/field.ts';
import { importKinds, type ImportKindName } from '../../../core/import/kinds.ts';
import type { Question } from '../../../core/import/reading.ts';
import { Button } from '../../ui/button.tsx';
import { Combo, Select } from '../../ui/choice.tsx';
import { TextField } from '../../ui/text-field.tsx';
import styles from './import.module.css';
import type { AnswerProps } from './answer-props.ts';
import { withColumn, withEvery, withNoColumn } from './say.ts';

/** So many columns are offered as buttons, more as a list. */
const BUTTONS = 6;

/** Which column a field is: one of the file's, none, or the same for every row. */
export function ColumnAnswers(props: AnswerProps & { question: Extract<Question, { is: 'column' }> }) {
  const { question, reading, shop, answers, say } = props;
  const { field: name, titles } = question;
  const field = importKinds[reading.kind as ImportKindName]
    .fields(shop)
    .fields.find((one) => one.name === name);
  const choose = (title: string) => void say(withColumn(answers, reading, title, name));
  const options = titles.map((title) => ({ id: title, name: titleWithExamples(title, reading.columns) }));
  return (
    <>
      {options.length > BUTTONS ? (
        <div className={styles.chooser}>
          <Select label={`Column of the ${name}`} options={options} value={null} onChange={choose} />
        </div>
      ) : (
        options.map(({ id, name: words }) => (
          <Button key={id} onPress={() => choose(id)}>
            {words}
          </Button>
        ))
      )}
      {field?.needed === 'no' && (
        <Button onPress={() => void say(withNoColumn(answers, name))}>None of them</Button>
      )}
      {field && field.needed !== 'no' && (
        <EveryRow {...props} field={field} onSay={(text) => void say(withEvery(answers, name, text))} />
      )}
    </>
  );
}

/** "Menge: 120, 45, 8" */
const titleWithExamples = (title: string, columns: AnswerProps['reading']['columns']): string => {
  const examples = columns.find((column) => column.title === title)?.examples ?? [];
  return examples.length === 0 ? title : `${title}: ${examples.join(', ')}`;
};

/** One value for all rows, where the file has no column of it. */
function EveryRow({ shop, field, onSay }: AnswerProps & { field: Field; onSay: (text: string) => void }) {
  const [text, setText] = useState('');
  const label = `The ${field.name} of every row`;
  const { sort } = field;
  if (sort.is === 'named') {
    const options = shop[sort.kind].map(({ id, name }) => ({ id, name }));
    return (
      <div className={styles.chooser}>
        <Combo label={label} options={options} value={null} onChange={onSay} />
      </div>
    );
  }
  return (
    <form
      className={styles.chooser}
      onSubmit={(event) => {
        event.preventDefault();
        if (text.trim() !== '') onSay(text.trim());
      }}
    >
      <TextField label={label} value={text} onChange={setText} />
      <Button type="submit" isDisabled={text.trim() === ''}>
        Use it
      </Button>
    </form>
  );
}
