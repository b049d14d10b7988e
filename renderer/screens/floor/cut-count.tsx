import { Minus, Plus } from 'lucide-react';
import { Button } from 'react-aria-components';
import styles from './floor.module.css';
import { useFloorKeys } from './use-floor-keys.ts';

interface Props {
  cuts: number;
  made: number;
  onCount: (by: number) => void;
}

/** Cuts made of those to make, by big buttons; each press is kept at once. */
export function CutCount({ cuts, made, onCount }: Props) {
  const left = cuts - made;
  useFloorKeys(left > 0 ? { C: () => onCount(1) } : {});
  const more = (by: number) => (
    <Button
      aria-label={`${by} more cuts`}
      className={styles.step ?? ''}
      isDisabled={left < by}
      onPress={() => onCount(by)}
    >
      {`+${by}`}
    </Button>
  );
  return (
    <div className={styles.cutCount} role="group" aria-label="Cuts made">
      <Button
        aria-label="One cut fewer"
        className={styles.step ?? ''}
        isDisabled={made === 0}
        onPress={() => onCount(-1)}
      >
        <Minus size={28} aria-hidden />
      </Button>
      <p role="status">
        <strong>{made}</strong> {`of ${cuts} cuts`}
      </p>
      <Button
        aria-label="One more cut"
        className={styles.step ?? ''}
        isDisabled={left === 0}
        onPress={() => onCount(1)}
      >
        <Plus size={28} aria-hidden />
      </Button>
      {more(5)}
      {more(10)}
    </div>
  );
}
