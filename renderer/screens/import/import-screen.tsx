import { ArrowLeft } from 'lucide-react';
import { useEffect, useRef } from 'react';
import type { ImportKindName } from '../../../core/import/kinds.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { usePastedRows } from '../../form/pasted-rows.tsx';
import { useShop } from '../../queries/hooks.ts';
import { navigate, usePlace } from '../../router.ts';
import { Button } from '../../ui/button.tsx';
import { Select } from '../../ui/choice.tsx';
import { Page } from '../../ui/page.tsx';
import { SentenceError, Waiting } from '../../ui/states.tsx';
import { ChooseFile } from './choose-file.tsx';
import { importOf, useFileImport } from './file-import.ts';
import styles from './import.module.css';
import { KIND_WORDS, kindAt, kindsRead, openImport } from './kinds.ts';
import { ReadFile } from './read-file.tsx';
import { DOING } from './summary.tsx';

/** A file of any kind on its way into the shop: choose, look how it is read, answer, fix, take. */
export function ImportScreen() {
  const kind = kindAt(usePlace());
  const { data: shop, error } = useShop();
  const file = useFileImport(kind);
  const { reading, busy, trouble } = file;
  usePastedRows(kind);
  useReadAgain(kind, shop);
  const { many, home } = KIND_WORDS[kind];
  return (
    <Page
      title={`Import ${many}`}
      actions={
        <>
          <KindChoice kind={kind} />
          <Button icon={ArrowLeft} onPress={() => navigate(...home)}>
            {`Back to ${many}`}
          </Button>
        </>
      }
    >
      {error && <SentenceError message={error.message} />}
      {trouble && !reading && <SentenceError message={trouble} />}
      {busy && !reading && <Waiting doing={DOING[busy]} />}
      {!shop && !error && <Waiting doing="Reading the shop" />}
      {shop && reading && <ReadFile key={kind} file={file} reading={reading} shop={shop} />}
      {shop && !reading && !busy && <ChooseFile file={file} shop={shop} />}
    </Page>
  );
}

/** What the file holds; a file that is here already is read as that. */
function KindChoice({ kind }: { kind: ImportKindName }) {
  const choose = (next: string) => {
    const other = kindsRead.find((one) => one === next);
    if (!other || other === kind) return;
    const { file, forget } = importOf(kind).getState();
    if (file) {
      forget();
      void importOf(other).getState().readSent(file);
    }
    openImport(other);
  };
  return (
    <div className={styles.kind}>
      <Select
        label="What the file holds"
        labelHidden
        options={kindsRead.map((id) => ({ id, name: `The file holds ${KIND_WORDS[id].many}` }))}
        value={kind}
        onChange={choose}
      />
    </div>
  );
}

/** What files are read against; what the floor reports is not. */
const READ_AGAINST = [
  'settings',
  'part',
  'material',
  'colour',
  'sheet',
  'calendar',
  'machine',
  'order',
  'line',
  'otherName',
  'fileLayout',
] as const satisfies readonly (keyof Shop)[];

/** What is shown is how the file is read against the shop as it is: also after a new colour, an undo, another desk's work. */
function useReadAgain(kind: ImportKindName, shop: Shop | undefined): void {
  const before = useRef<Shop | undefined>(undefined);
  useEffect(() => {
    const old = before.current;
    before.current = shop;
    if (!shop || (old && READ_AGAINST.every((part) => old[part] === shop[part]))) return;
    const { busy, again } = importOf(kind).getState();
    if (busy === null || busy === 'checking') void again();
  }, [kind, shop]);
}
