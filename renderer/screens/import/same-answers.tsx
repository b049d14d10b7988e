import { FileUp, Plus } from 'lucide-react';
import { useState } from 'react';
import { freeCode } from '../../../core/code.ts';
import type { Question } from '../../../core/import/reading.ts';
import { newColour } from '../../../core/material/usual-colours.ts';
import type { NamedKind } from '../../../core/shop/other-name.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { useDrafts } from '../../form/drafts.ts';
import { useAct } from '../../form/use-act.ts';
import { draftName, NEW_ROW } from '../../form/use-row-form.ts';
import { navigate } from '../../router.ts';
import { Button } from '../../ui/button.tsx';
import { Combo, type Option } from '../../ui/choice.tsx';
import { toastError } from '../../ui/toast.tsx';
import styles from './import.module.css';
import { isRead, openImport } from './kinds.ts';
import type { AnswerProps } from './answer-props.ts';
import { rowsThatSay, withRowsOut, withSame } from './say.ts';

type Same = Extract<Question, { is: 'same' }>;

/** What of the shop a text stands for: one of the nearest, any other, something new, or nothing: then its rows stay out. */
export function SameAnswers(props: AnswerProps & { question: Same }) {
  const { question, reading, shop, answers, say } = props;
  const [all, setAll] = useState(false);
  const choose = (id: string) => void say(withSame(answers, question, id));
  return (
    <>
      {question.choices.map(({ id, name }) => (
        <Button key={id} onPress={() => choose(id)}>
          {name === id ? name : `${name} (${id})`}
        </Button>
      ))}
      {all ? (
        <div className={styles.chooser}>
          <Combo
            label={`The ${question.what} that “${question.text}” is`}
            options={everyOne(shop, question)}
            value={null}
            onChange={choose}
          />
        </div>
      ) : (
        everyOne(shop, question).length > question.choices.length && (
          <Button look="quiet" onPress={() => setAll(true)}>
            Another…
          </Button>
        )
      )}
      <Add {...props} />
      <Button
        look="quiet"
        onPress={() => void say(withRowsOut(answers, rowsThatSay(reading, question)))}
      >{`Leave ${question.rows === 1 ? 'the row' : `these ${question.rows} rows`} out`}</Button>
    </>
  );
}

/** All of the shop that a text of a kind can stand for. */
function everyOne(shop: Shop, { what, choices }: Same): readonly Option[] {
  if (what === 'gauge' || what === 'customer') return choices;
  return shop[what].map(({ id, name }) => ({ id, name: name === id ? name : `${name} (${id})` }));
}

const LIST_OF: Readonly<Record<Exclude<NamedKind, 'customer'>, string>> = {
  part: 'parts',
  material: 'materials',
  colour: 'colours',
  gauge: 'materials',
  machine: 'machines',
};

/** Something new: a colour by one press, anything else on its form, or all that the file lacks from a file of their own. */
function Add({ question, reading, shop }: AnswerProps & { question: Same }) {
  const act = useAct();
  const { what, text } = question;
  if (what === 'customer') return null;
  if (what === 'colour') {
    const colours = reading.questions.filter((one): one is Same => one.is === 'same' && one.what === what);
    return (
      <>
        <Button icon={Plus} onPress={() => void act(addColours(shop, [text])).catch(toastError)}>
          Add it as a colour
        </Button>
        {colours.length > 1 && colours[0] === question && (
          <Button
            icon={Plus}
            onPress={() =>
              void act(
                addColours(
                  shop,
                  colours.map((one) => one.text),
                ),
              ).catch(toastError)
            }
          >{`Add all ${colours.length} colours`}</Button>
        )}
      </>
    );
  }
  const list = LIST_OF[what];
  const isFirst = reading.questions.find((one) => one.is === 'same' && one.what === what) === question;
  return (
    <>
      <Button icon={Plus} onPress={() => openForm(shop, question)}>
        {what === 'gauge' ? 'Add it to the metal' : `New ${what}`}
      </Button>
      {isRead(list) && what !== 'gauge' && isFirst && (
        <Button icon={FileUp} onPress={() => openImport(list)}>{`A file of ${list}`}</Button>
      )}
    </>
  );
}

function addColours(shop: Shop, texts: readonly string[]) {
  const taken = shop.colour.map(({ id }) => id);
  const rows = texts.map((text) => {
    const row = newColour(text.trim(), taken);
    taken.push(row.id);
    return { kind: 'colour' as const, row };
  });
  return {
    do: 'rows.save' as const,
    rows,
    label: texts.length === 1 ? `Add colour ${texts[0]}`.slice(0, 120) : `Add ${texts.length} colours`,
  };
}

/** The form of a new row with the text as its name; one that is being typed already stays as it is. */
function openForm(shop: Shop, { what, text }: Same): void {
  const list = LIST_OF[what as keyof typeof LIST_OF];
  if (what === 'part' || what === 'material' || what === 'machine') {
    const form = draftName(what, null);
    const id = freeCode(
      text,
      shop[what].map((one) => one.id),
    );
    if (!(form in useDrafts.getState().entries)) useDrafts.getState().keep(form, { id, name: text });
  }
  navigate('shop', list, ...(what === 'gauge' ? [] : [NEW_ROW]));
}
