import { useBackupContent, useRestore, type BackupFound } from '../../../queries/backups.ts';
import { Button } from '../../../ui/button.tsx';
import { Dialog } from '../../../ui/dialog.tsx';
import { SentenceError, Waiting } from '../../../ui/states.tsx';
import { toast } from '../../../ui/toast.tsx';
import styles from '../settings.module.css';
import { formatMoment } from './words.ts';

interface Props {
  backup: BackupFound;
  timeZone: string;
  onClose: () => void;
}

/** What a backup holds, before anyone goes on with it. */
export function OpenBackup({ backup, timeZone, onClose }: Props) {
  const { data, error } = useBackupContent(backup.name);
  const restore = useRestore();
  const made = formatMoment(backup.at, timeZone);
  const open = () =>
    restore.mutate(backup.name, {
      onSuccess: () => {
        onClose();
        toast({
          text: `The shop is as it was ${made}. What was here before is kept as the newest backup.`,
        });
      },
    });
  return (
    <Dialog
      title={`Backup of ${made}`}
      isOpen
      onClose={onClose}
      actions={
        <>
          <Button onPress={onClose} autoFocus>
            Keep what is here
          </Button>
          <Button look="danger" isDisabled={!data || restore.isPending} onPress={open}>
            {restore.isPending ? 'Opening…' : 'Go back to this backup'}
          </Button>
        </>
      }
    >
      {error && <SentenceError message={error.message} />}
      {restore.error && <SentenceError message={restore.error.message} />}
      {!data && !error && <Waiting doing="Looking into the backup" />}
      {data && (
        <dl className={styles.facts}>
          <dt>Work orders</dt>
          <dd>{data.orders}</dd>
          <dt>Lines</dt>
          <dd>{data.lines}</dd>
          <dt>Last entered</dt>
          <dd>{data.newest === null ? 'nothing yet' : formatMoment(data.newest, timeZone)}</dd>
        </dl>
      )}
      <p>
        Everybody goes on with this backup at once, on the floor too: what was entered after it is no longer
        in the shop. The file as it is now is kept as a backup first, so that you can go back to it.
      </p>
    </Dialog>
  );
}
