import { Minus, Plus } from 'lucide-react';
import { useState, type KeyboardEvent } from 'react';
import { Button, FieldError, Group, Input, Label, TextField } from 'react-aria-components';
import { sentence } from '../../../core/result.ts';
import { readWhole } from '../../../core/units/number.ts';
import { classes } from '../../ui/classes.ts';
import { useDecimals } from '../../ui/decimals.ts';
import styles from './floor.module.css';
import type { Counts } from './use-counts.ts';

interface Props {
  label: string;
  value: number;
  most: number;
  look: 'good' | 'scrapped';
  onChange: (value: number) => void;
}

/**
 * Pieces counted by big buttons and arrow keys, or typed in. What is typed counts when it is complete (Enter, or the
 * field is left); what is no count stays as typed and is told.
 */
function CountField({ label, value, most, look, onChange }: Props) {
  const decimals = useDecimals();
  const [typed, setTyped] = useState<string | null>(null);
  const read = typed === null ? null : readWhole(typed, { decimals }, 'count', { min: 0, max: most });
  const [left, setLeft] = useState(false);
  const refused = left && read && !read.ok ? sentence(read.issues) : null;
  const set = (next: number) => {
    setTyped(null);
    setLeft(false);
    onChange(next);
  };
  const take = () => {
    if (read?.ok) set(read.value);
    else setLeft(true);
  };
  const step = (by: 1 | -1) => set(Math.min(Math.max(value + by, 0), most));
  const press = (event: KeyboardEvent) => {
    const act = { Enter: take, ArrowUp: () => step(1), ArrowDown: () => step(-1) }[event.key];
    if (!act) return;
    event.preventDefault();
    act();
  };
  const button = (name: string, by: 1 | -1, Icon: typeof Plus, isDisabled: boolean) => (
    <Button
      aria-label={`${name} ${label}`}
      className={styles.step ?? ''}
      isDisabled={isDisabled}
      excludeFromTabOrder
      onPress={() => step(by)}
    >
      <Icon size={28} aria-hidden />
    </Button>
  );
  return (
    <TextField
      value={typed ?? String(value)}
      onChange={setTyped}
      onBlur={take}
      onKeyDown={press}
      isInvalid={refused !== null}
      inputMode="numeric"
      className={styles.count ?? ''}
    >
      <Label className={styles.countLabel ?? ''}>{label}</Label>
      <Group className={classes(styles.stepper, styles[look])}>
        {button('Decrease', -1, Minus, value <= 0)}
        <Input className={styles.countInput ?? ''} data-count />
        {button('Increase', 1, Plus, value >= most)}
      </Group>
      {refused && <FieldError className={styles.countRefused ?? ''}>{refused}</FieldError>}
    </TextField>
  );
}

/** Spoiled pieces may be replaced at once, so they can be more than are asked for. */
export const MOST_SCRAPPED = 100_000;

/** Good and scrapped pieces of an operation that makes `pieces`. */
export const CountFields = ({
  pieces,
  counts,
  set,
}: {
  pieces: number;
  counts: Counts;
  set: (patch: Partial<Counts>) => void;
}) => (
  <div className={styles.counts}>
    <CountField
      label={`Good, of ${pieces}`}
      value={counts.good}
      most={pieces}
      look="good"
      onChange={(good) => set({ good })}
    />
    <CountField
      label="Scrapped"
      value={counts.scrapped}
      most={MOST_SCRAPPED}
      look="scrapped"
      onChange={(scrapped) => set({ scrapped })}
    />
  </div>
);
