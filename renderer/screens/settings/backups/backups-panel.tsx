import { useState } from 'react';
import type { BackupReason } from '../../../../core/contract/backup.ts';
import type { Shop } from '../../../../core/shop/state.ts';
import { useBackups, useMakeBackup, type BackupFound, type BackupsFound } from '../../../queries/backups.ts';
import { Button } from '../../../ui/button.tsx';
import { DataTable, type TableColumn } from '../../../ui/data-table.tsx';
import { SentenceError, Waiting } from '../../../ui/states.tsx';
import { toast, toastError } from '../../../ui/toast.tsx';
import styles from '../settings.module.css';
import { AsidePanel } from './aside-panel.tsx';
import { ExportPanel } from './export-panel.tsx';
import { OpenBackup } from './open-backup.tsx';
import { SecondFolder } from './second-folder.tsx';
import { formatBytes, formatMoment } from './words.ts';

const reasons: Readonly<Record<BackupReason, string>> = {
  start: 'the app was started',
  day: 'the day’s own',
  asked: 'asked for',
  'before-update': 'before a new version changed the file',
  'before-import': 'before an import',
  'before-restore': 'before an older backup was opened',
};
const places: Readonly<Record<BackupFound['where'], string>> = {
  first: 'beside the data file',
  second: 'in the second folder',
  both: 'in both folders',
};

/** Copies of everything: those that are made by themselves, a second folder for them, and everything as plain files. */
export function BackupsPanel({ shop }: { shop: Shop }) {
  const { data, error } = useBackups();
  return (
    <div className={styles.columns}>
      <section className={styles.panel} aria-label="Backups">
        <h2>Backups</h2>
        {error && <SentenceError message={error.message} />}
        {!data && !error && <Waiting doing="Looking for backups" />}
        {data && <Backups found={data} timeZone={shop.settings.timeZone} />}
      </section>
      <div className={styles.side}>
        <SecondFolder shop={shop} />
        <ExportPanel />
        <AsidePanel timeZone={shop.settings.timeZone} />
      </div>
    </div>
  );
}

function Backups({ found, timeZone }: { found: BackupsFound; timeZone: string }) {
  const { mutate, isPending } = useMakeBackup();
  const [open, setOpen] = useState<BackupFound | null>(null);
  const make = () =>
    mutate(undefined, {
      onSuccess: () => toast({ text: 'A backup was made, and looked at: it can be opened.' }),
      onError: toastError,
    });
  return (
    <>
      {found.troubles.map((text) => (
        <SentenceError key={text} message={text} />
      ))}
      <p className={styles.note}>
        A backup is a copy of everything in one file. One is made when the app starts, every day, before an
        import and before an older backup is opened. Of the last day one an hour stays, then one a day for two
        weeks, one a week for two months, one a month for a year; those asked for stay three months.
      </p>
      <p className={styles.path}>{found.folder}</p>
      <div>
        <Button isDisabled={isPending} onPress={make}>
          {isPending ? 'Making a backup…' : 'Make a backup now'}
        </Button>
      </div>
      <DataTable
        label="Backups, newest first"
        columns={columnsIn(timeZone)}
        rows={found.backups}
        rowId={({ name }) => name}
        onOpen={setOpen}
        empty="None yet. The first is made when the app starts."
      />
      {open && <OpenBackup backup={open} timeZone={timeZone} onClose={() => setOpen(null)} />}
    </>
  );
}

const columnsIn = (timeZone: string): TableColumn<BackupFound>[] => [
  { id: 'at', label: 'Made', cell: ({ at }) => formatMoment(at, timeZone), sort: ({ at }) => at },
  { id: 'why', label: 'Why', cell: ({ reason }) => reasons[reason] },
  { id: 'where', label: 'Where', cell: ({ where }) => places[where] },
  {
    id: 'bytes',
    label: 'Size',
    cell: ({ bytes }) => formatBytes(bytes),
    sort: ({ bytes }) => bytes,
    right: true,
  },
];
