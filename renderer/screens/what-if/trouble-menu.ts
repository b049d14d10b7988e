import { UserX, Wrench } from 'lucide-react';
import type { Machine } from '../../../core/shop/machine.ts';
import type { MenuEntry } from '../../ui/menu.tsx';
import { askTrouble } from './what-if-view.ts';

/** What can go wrong with a machine. */
export const troubleMenu = ({ id }: Machine): MenuEntry[] => [
  { id: 'down', label: 'Machine down…', icon: Wrench, end: 'D', act: () => askTrouble('machine', id) },
  { id: 'out', label: 'Operator out…', icon: UserX, end: 'O', act: () => askTrouble('operator', id) },
];
