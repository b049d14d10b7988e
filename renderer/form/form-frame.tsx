import { Trash2 } from 'lucide-react';
import { useState, type ReactNode } from 'react';
import { Button } from '../ui/button.tsx';
import { Confirm } from '../ui/confirm.tsx';
import { SentenceError } from '../ui/states.tsx';
import { Tag } from '../ui/tag.tsx';
import styles from './form.module.css';
import type { Form } from './use-form.ts';

interface Props<T extends object> {
  title: string;
  form: Form<T>;
  onSaved: (entries: T) => void;
  /** Missing: it cannot be removed. */
  remove?: { readonly what: string; readonly act: () => void } | undefined;
  children: ReactNode;
}

/** A form's frame: its name, what was refused, the fields, and save, discard and remove at the foot. */
export function FormFrame<T extends object>({ title, form, onSaved, remove, children }: Props<T>) {
  const [asking, setAsking] = useState(false);
  const save = async () => {
    const saved = await form.save();
    if (saved) onSaved(saved);
  };
  const misfits = Object.keys(form.errors).length;
  return (
    <form
      className={styles.frame}
      aria-label={title}
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void save();
      }}
    >
      <header className={styles.frameHead}>
        <h2>{title}</h2>
        {form.changed && <Tag look="warn">not saved</Tag>}
      </header>
      <div className={styles.frameBody}>
        {form.errors[''] && <SentenceError message={form.errors['']} />}
        {children}
      </div>
      <footer className={styles.frameFoot}>
        <Button type="submit" look="primary" isDisabled={!form.changed}>
          Save
        </Button>
        <Button onPress={form.discard} isDisabled={!form.changed}>
          Discard changes
        </Button>
        {misfits > 0 && (
          <span className={styles.warning} role="status">
            Not saved: {misfits === 1 ? 'one entry needs' : `${misfits} entries need`} a look. Nothing typed
            is lost.
          </span>
        )}
        {remove && (
          <span className={styles.push}>
            <Button look="danger" icon={Trash2} onPress={() => setAsking(true)}>
              Remove
            </Button>
            <Confirm
              title={`Remove ${remove.what}?`}
              message={`${remove.what} is removed from the shop. Undo brings it back.`}
              act="Remove"
              isOpen={asking}
              onConfirm={remove.act}
              onClose={() => setAsking(false)}
            />
          </span>
        )}
      </footer>
    </form>
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
