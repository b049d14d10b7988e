import { counted } from '../../../../core/units/count.ts';
import { useExport } from '../../../queries/backups.ts';
import { Button } from '../../../ui/button.tsx';
import { SentenceError } from '../../../ui/states.tsx';
import styles from '../settings.module.css';

/** Everything as plain files, for other programs and for a new start elsewhere. */
export function ExportPanel() {
  const { mutate, data, error, isPending } = useExport();
  return (
    <section className={styles.panel} aria-label="Export everything">
      <h2>Export everything</h2>
      <p className={styles.note}>
        Writes a folder beside the data file: everything.json, which an empty shop can be filled from, and a
        CSV file for each kind of row, for spreadsheets.
      </p>
      <div>
        <Button isDisabled={isPending} onPress={() => mutate()}>
          {isPending ? 'Exporting…' : 'Export everything'}
        </Button>
      </div>
      {error && <SentenceError message={error.message} />}
      {data && (
        <div role="status">
          <p>{`${counted(data.rows, 'row')} exported to:`}</p>
          <p className={styles.path}>{data.folder}</p>
        </div>
      )}
    </section>
  );
}
