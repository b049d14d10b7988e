import { conflictWords } from '../../core/report/conflict-words.ts';
import { useShop } from '../queries/hooks.ts';
import { Button } from '../ui/button.tsx';
import styles from './form.module.css';
import type { Form } from './use-form.ts';

/** Both versions of what someone else changed while the form was open; nothing of either is lost by looking. */
export function Conflicts<T extends object>({ form }: { form: Form<T> }) {
  const { data: shop } = useShop();
  const { conflicts, keepMine, discard } = form;
  if (conflicts.length === 0 || !shop) return null;
  return (
    <section className={styles.conflicts} role="alert" aria-label="Changed meanwhile">
      <p>
        Someone else changed this while the form was open. Nothing was saved or removed, and nothing you typed
        is lost.
      </p>
      {conflicts.map((conflict) => {
        const { what, note, fields } = conflictWords(shop, conflict);
        return (
          <table key={`${conflict.kind} ${conflict.id}`}>
            <caption>{note ? `${what}: ${note}` : what}</caption>
            {fields.length > 0 && (
              <thead>
                <tr>
                  <th scope="col">Field</th>
                  <th scope="col">Yours</th>
                  <th scope="col">Now</th>
                </tr>
              </thead>
            )}
            <tbody>
              {fields.map(({ name, mine, theirs }) => (
                <tr key={name}>
                  <th scope="row">{name}</th>
                  <td>{mine}</td>
                  <td>{theirs}</td>
                </tr>
              ))}
            </tbody>
          </table>
        );
      })}
      <p className={styles.conflictActs}>
        <Button onPress={discard}>Discard mine</Button>
        {keepMine && <Button onPress={keepMine}>Go on with mine</Button>}
        {keepMine && <span>Then look it through and do it again.</span>}
      </p>
    </section>
  );
}
