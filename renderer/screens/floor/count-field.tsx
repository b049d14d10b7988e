import { Minus, Plus } from 'lucide-react';
import { Button, Group, Input, Label, NumberField } from 'react-aria-components';
import { classes } from '../../ui/classes.ts';
import styles from './floor.module.css';
import type { Counts } from './use-counts.ts';

interface Props {
  label: string;
  value: number;
  most: number;
  look: 'good' | 'scrapped';
  onChange: (value: number) => void;
}

/** Pieces counted by big buttons or typed in. */
const CountField = ({ label, value, most, look, onChange }: Props) => (
  <NumberField
    value={value}
    minValue={0}
    maxValue={most}
    formatOptions={{ maximumFractionDigits: 0 }}
    onChange={(next) => onChange(Number.isNaN(next) ? 0 : next)}
    className={styles.count ?? ''}
  >
    <Label className={styles.countLabel ?? ''}>{label}</Label>
    <Group className={classes(styles.stepper, styles[look])}>
      <Button slot="decrement" className={styles.step ?? ''}>
        <Minus size={28} aria-hidden />
      </Button>
      <Input className={styles.countInput ?? ''} data-count />
      <Button slot="increment" className={styles.step ?? ''}>
        <Plus size={28} aria-hidden />
      </Button>
    </Group>
  </NumberField>
);

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
