import {
  Archive,
  BookOpen,
  FastForward,
  FileUp,
  Keyboard,
  ListChecks,
  Monitor,
  Moon,
  Play,
  Printer,
  Redo2,
  Square,
  Sun,
  Undo2,
  type LucideIcon,
} from 'lucide-react';
import { FIRST_MINUTES } from '../../core/report/first-minutes.ts';
import { navigate } from '../router.ts';
import { openImport } from '../screens/import/kinds.ts';
import { screens } from '../routes.tsx';
import { chooseTheme } from '../styles/theme.ts';
import { KEEP_SEARCHING, type PlanJob } from './use-plan-job.ts';
import type { UndoRedo } from './use-undo-redo.ts';

/** Something the app can do, for the palette, the keys and the desktop menu alike. */
export interface Action {
  readonly id: string;
  readonly label: string;
  /** What else tells it from others. */
  readonly detail?: string;
  readonly icon: LucideIcon;
  /** As shown; `keys.ts` reads the same text. */
  readonly keys?: string;
  readonly disabled?: boolean;
  readonly act: () => void;
}

/** What helps, over every screen. */
type Help = 'keys' | 'first-minutes';

/** Everything that can be done from anywhere. */
export function appActions(
  job: PlanJob,
  { undo, redo, undoLabel, redoLabel, canUndo, canRedo }: UndoRedo,
  others: readonly Action[],
  show: (help: Help) => void,
): Action[] {
  const plan: Action = job.running
    ? { id: 'plan', label: 'Stop planning and keep the best so far', icon: Square, keys: 'P', act: job.stop }
    : { id: 'plan', label: 'Plan the week', icon: Play, keys: 'P', act: job.start };
  const keepSearching: Action = {
    id: 'keep-searching',
    label: 'Keep searching from the best plan found',
    icon: FastForward,
    keys: KEEP_SEARCHING,
    disabled: job.running || !job.state,
    act: job.start,
  };
  return [
    plan,
    keepSearching,
    {
      id: 'undo',
      label: undoLabel ? `Undo: ${undoLabel}` : 'Undo',
      icon: Undo2,
      keys: 'Ctrl+Z',
      disabled: !canUndo,
      act: undo,
    },
    {
      id: 'redo',
      label: redoLabel ? `Redo: ${redoLabel}` : 'Redo',
      icon: Redo2,
      keys: 'Ctrl+Shift+Z',
      disabled: !canRedo,
      act: redo,
    },
    ...others,
    {
      id: 'import',
      label: 'Import orders from a file',
      icon: FileUp,
      act: () => openImport('orders'),
    },
    {
      id: 'set-up',
      label: 'Set up the shop, step by step',
      icon: ListChecks,
      act: () => navigate('shop', 'set-up'),
    },
    { id: 'archive', label: 'Search the archive', icon: Archive, act: () => navigate('orders', 'archive') },
    { id: 'print', label: 'Print dispatch lists', icon: Printer, act: () => navigate('print', 'dispatch') },
    ...goToScreens(),
    ...looksAndHelp(show),
  ];
}

const goToScreens = (): Action[] =>
  screens.map(({ path, label, icon }, i) => ({
    id: path,
    label: `Go to ${label}`,
    icon,
    keys: String(i + 1),
    act: () => navigate(path),
  }));

const looksAndHelp = (show: (help: Help) => void): Action[] => [
  { id: 'light', label: 'Theme: light', icon: Sun, act: () => chooseTheme('light') },
  { id: 'dark', label: 'Theme: dark', icon: Moon, act: () => chooseTheme('dark') },
  { id: 'system', label: 'Theme: as the system', icon: Monitor, act: () => chooseTheme('system') },
  { id: 'keys', label: 'List of keys', icon: Keyboard, keys: '?', act: () => show('keys') },
  {
    id: 'first-minutes',
    label: FIRST_MINUTES,
    icon: BookOpen,
    keys: 'F1',
    act: () => show('first-minutes'),
  },
];
