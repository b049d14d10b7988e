import type { Machine } from '../../../core/shop/machine.ts';
import { navigate } from '../../router.ts';
import { ToggleButton, ToggleButtonGroup } from 'react-aria-components';
import styles from './floor.module.css';
import { keptMachine } from './kept.ts';

interface Props {
  machines: readonly Machine[];
  chosen: string | null;
}

/** Which machine this screen stands at. */
export const MachineChooser = ({ machines, chosen }: Props) => (
  <ToggleButtonGroup
    aria-label="Machine"
    className={styles.chooser ?? ''}
    selectionMode="single"
    disallowEmptySelection={chosen !== null}
    selectedKeys={chosen === null ? [] : [chosen]}
    onSelectionChange={(keys) => {
      const machine = machines.find(({ id }) => keys.has(id));
      if (!machine) return;
      keptMachine.write(machine.id);
      navigate('floor', machine.id);
    }}
  >
    {machines.map(({ id, name }) => (
      <ToggleButton key={id} id={id} className={styles.choice ?? ''}>
        {`${id} ${name}`}
      </ToggleButton>
    ))}
  </ToggleButtonGroup>
);
