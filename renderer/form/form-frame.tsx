import { Copy, Trash2 } from 'lucide-react';
import { Fragment, useEffect, useRef, useState, type ReactNode } from 'react';
import { sentence, type Result } from '../../core/result.ts';
import { Button } from '../ui/button.tsx';
import { Confirm } from '../ui/confirm.tsx';
import { KeyHint } from '../ui/key-hint.tsx';
import { SentenceError } from '../ui/states.tsx';
import { Tag } from '../ui/tag.tsx';
import { toastError } from '../ui/toast.tsx';
import { Conflicts } from './conflicts.tsx';
import styles from './form.module.css';
import type { Form } from './use-form.ts';

interface Removal {
  readonly what: string;
  readonly act: () => void;
  /** What it does to the plan, to be read first; or why it cannot be. */
  readonly effects: () => Result<readonly string[]>;
}

interface Props<T extends object> {
  title: string;
  form: Form<T>;
  onSaved: (entries: T) => void;
  /** A row that is being added: another may follow. */
  isNew?: boolean;
  /** Begins another from this one; missing: it cannot be copied. */
  onDuplicate?: (() => void) | undefined;
  /** Missing: it cannot be removed. */
  remove?: Removal | undefined;
  children: ReactNode;
}

/** A form's frame: its name, what was refused, the fields, and save, discard and remove at the foot. */
export function FormFrame<T extends object>({ title, form, onSaved, isNew = false, ...foot }: Props<T>) {
  const { frame, added, next } = useNextRow(isNew);
  const save = async (then: (saved: T) => void) => {
    const saved = await form.save();
    if (saved) then(saved);
  };
  return (
    <form
      ref={frame}
      className={styles.frame}
      aria-label={title}
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void save(onSaved);
      }}
      onKeyDown={(event) => {
        if (!isNew || event.key !== 'Enter' || !(event.ctrlKey || event.metaKey)) return;
        event.preventDefault();
        void save(next);
      }}
    >
      <header className={styles.frameHead}>
        <h2>{title}</h2>
        {form.changed && <Tag look="warn">not saved</Tag>}
      </header>
      <div className={styles.frameBody}>
        {form.errors[''] && <SentenceError message={form.errors['']} />}
        <Conflicts form={form} />
        <Fragment key={added}>{foot.children}</Fragment>
      </div>
      <Foot {...foot} form={form} onAnother={isNew ? () => void save(next) : null} />
    </form>
  );
}

/** Rows that are added one after another: each begins with fresh fields, and where one types first. */
function useNextRow(isNew: boolean) {
  const frame = useRef<HTMLFormElement>(null);
  const [added, setAdded] = useState(0);
  useEffect(() => {
    if (isNew) focusFirst(frame.current);
  }, [isNew, added]);
  return { frame, added, next: () => setAdded((before) => before + 1) };
}

interface FootProps {
  form: Pick<Form<object>, 'changed' | 'errors' | 'discard'>;
  /** null: it is no new row. */
  onAnother: (() => void) | null;
  onDuplicate?: (() => void) | undefined;
  remove?: Removal | undefined;
}

function Foot({ form, onAnother, onDuplicate, remove }: FootProps) {
  const misfits = Object.keys(form.errors).length;
  return (
    <footer className={styles.frameFoot}>
      <Button type="submit" look="primary" isDisabled={!form.changed}>
        Save
      </Button>
      {onAnother && (
        <Button onPress={onAnother} isDisabled={!form.changed}>
          Save and add another <KeyHint keys="Ctrl+Enter" />
        </Button>
      )}
      <Button onPress={form.discard} isDisabled={!form.changed}>
        Discard changes
      </Button>
      {misfits > 0 && (
        <span className={styles.warning} role="status">
          Not saved: {misfits === 1 ? 'one entry needs' : `${misfits} entries need`} a look. Nothing typed is
          lost.
        </span>
      )}
      {onDuplicate && (
        <Button icon={Copy} onPress={onDuplicate}>
          Duplicate
        </Button>
      )}
      {remove && <RemoveButton {...remove} />}
    </footer>
  );
}

/** Where one types first. */
const focusFirst = (frame: HTMLElement | null): void =>
  frame?.querySelector<HTMLElement>('input:enabled:not([type=hidden], [type=checkbox])')?.focus();

/** Says what removing does to the plan before it is done; where it cannot be, why. */
function RemoveButton({ what, act, effects }: Removal) {
  const [told, tell] = useState<readonly string[] | null>(null);
  const ask = () => {
    const found = effects();
    if (found.ok) tell(found.value);
    else toastError(new Error(sentence(found.issues)));
  };
  const words = [`${what} is removed from the shop.`, ...(told ?? []), 'Undo brings it back.'];
  return (
    <span className={styles.push}>
      <Button look="danger" icon={Trash2} onPress={ask}>
        Remove
      </Button>
      <Confirm
        title={`Remove ${what}?`}
        message={words.join(' ')}
        act="Remove"
        isOpen={told !== null}
        onConfirm={act}
        onClose={() => tell(null)}
      />
    </span>
  );
}

/** Fields that belong together under a heading. */
export function Group({
  title,
  note,
  end,
  children,
}: {
  title: string;
  note?: string;
  end?: ReactNode;
  children: ReactNode;
}) {
  return (
    <section className={styles.group}>
      <div className={styles.groupHead}>
        <h3>{title}</h3>
        {end}
      </div>
      {note && <p className={styles.note}>{note}</p>}
      {children}
    </section>
  );
}

export const Fields = ({ children }: { children: ReactNode }) => (
  <div className={styles.fields}>{children}</div>
);
