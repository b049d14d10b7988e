import { Trash2 } from 'lucide-react';
import { useState, type ReactNode } from 'react';
import { sentence, type Result } from '../../core/result.ts';
import { Button } from '../ui/button.tsx';
import { Confirm } from '../ui/confirm.tsx';
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
  /** Missing: it cannot be removed. */
  remove?: Removal | undefined;
  children: ReactNode;
}

/** A form's frame: its name, what was refused, the fields, and save, discard and remove at the foot. */
export function FormFrame<T extends object>({ title, form, onSaved, remove, children }: Props<T>) {
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
        <Conflicts form={form} />
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
        {remove && <RemoveButton {...remove} />}
      </footer>
    </form>
  );
}

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
