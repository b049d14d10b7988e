import { useState, type KeyboardEvent } from 'react';
import { sentence } from '../../../core/result.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { parseWalkIn, walkInExample, walkInWords } from '../../../core/import/walk-in.ts';
import type { Instant } from '../../../core/units/brand.ts';
import { Button } from '../../ui/button.tsx';
import { Panel } from '../../ui/page.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { toastError } from '../../ui/toast.tsx';
import { useSayDone } from '../../form/use-act.ts';
import { useCommand } from '../../queries/hooks.ts';
import styles from './cutting.module.css';
import { DAY } from '../../../core/units/duration.ts';

/** A cut for someone at the counter, typed in one line; it says what it understood before it is added. */
export function WalkIn({
  shop,
  now,
  onTaken,
}: {
  shop: Shop;
  now: Instant;
  /** Once it is kept: the line that it became. */
  onTaken?: (line: string) => void;
}) {
  const { mutateAsync } = useCommand();
  const sayDone = useSayDone();
  const [text, setText] = useState('');
  const read = text.trim() === '' ? null : parseWalkIn(shop, text);
  const understood = read?.ok ? `Understood: ${walkInWords(shop, read.value)}; due in a day.` : undefined;
  const add = () => {
    if (!read?.ok) return;
    mutateAsync({ do: 'walkin.take', text: text.slice(0, 200), ...read.value, due: now + DAY }).then(
      ({ label, changes, ...became }) => {
        setText('');
        sayDone(`${label}: done.`, became);
        const line = changes.find(({ kind }) => kind === 'line');
        if (line) onTaken?.(line.id);
      },
      toastError,
    );
  };
  const enter = (event: KeyboardEvent) => {
    if (event.key === 'Enter') add();
  };
  return (
    <Panel>
      <div className={styles.walkIn}>
        <div onKeyDown={enter}>
          <TextField
            label="Walk-in cut"
            value={text}
            onChange={setText}
            placeholder={walkInExample(shop.settings.units)}
            help={understood ?? 'pieces, girth × length, gauge, colour'}
            error={read && !read.ok ? sentence(read.issues) : undefined}
          />
        </div>
        <Button look="primary" isDisabled={!read?.ok} onPress={add}>
          Add cut
        </Button>
      </div>
    </Panel>
  );
}
