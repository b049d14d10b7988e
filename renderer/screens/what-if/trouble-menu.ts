import { TimerReset, UserX, Wrench } from 'lucide-react';
import type { Downtime, Machine } from '../../../core/shop/machine.ts';
import type { MenuEntry } from '../../ui/menu.tsx';
import { askOutage, askTrouble } from './what-if-view.ts';

/** What can go wrong with a machine, and what becomes of its hours out of service. @param stopped all machines' */
export const troubleMenu = ({ id }: Machine, stopped: readonly Downtime[]): MenuEntry[] => [
  ...stopped
    .filter(({ machineId }) => machineId === id)
    .map((row) => ({
      id: `back ${row.id}`,
      label: `Back early, or longer… ${row.reason}`.trim(),
      icon: TimerReset,
      act: () => askOutage(row),
    })),
  { id: 'down', label: 'Machine down…', icon: Wrench, end: 'D', act: () => askTrouble('machine', id) },
  { id: 'out', label: 'Operator out…', icon: UserX, end: 'O', act: () => askTrouble('operator', id) },
];
