import { Bookmark, ChevronDown, HelpCircle, Play, Redo2, Search, Send, Square, Undo2 } from 'lucide-react';
import { FIRST_MINUTES } from '../../core/report/first-minutes.ts';
import { aimWords, linesOf } from '../../core/report/search-words.ts';
import { formatClock, formatWallDate } from '../../core/time/wall.ts';
import { counted } from '../../core/units/count.ts';
import { useNow, useShop } from '../queries/hooks.ts';
import { useUnpublished } from '../queries/plans.ts';
import { usePlansView } from '../screens/plans/plans-view.ts';
import { Button } from '../ui/button.tsx';
import { IconButton } from '../ui/icon-button.tsx';
import { Menu } from '../ui/menu.tsx';
import styles from './shell.module.css';
import { planProtect, planSeconds, protectShare, type PlanJob } from './use-plan-job.ts';
import type { UndoRedo } from './use-undo-redo.ts';

const inWords: Readonly<Record<string, string>> = {
  '5': '5 seconds',
  '20': '20 seconds',
  '60': '1 minute',
  '300': '5 minutes',
};

const slackWords = (choice: string): string => {
  const share = protectShare(choice);
  return share === null
    ? 'No slack: plan by the times as estimated'
    : `Leave slack: aim for ${linesOf(share)} lines on time`;
};

function PlanButton({ job }: { job: PlanJob }) {
  const seconds = planSeconds.use();
  const protect = planProtect.use();
  const time = seconds === '60' || seconds === '300' ? `${Number(seconds) / 60} min` : `${seconds} s`;
  const share = protectShare(protect);
  if (job.running)
    return (
      <Button icon={Square} onPress={job.stop}>
        Stop, keep the best so far
      </Button>
    );
  return (
    <div className={styles.plan}>
      <Button look="primary" icon={Play} onPress={job.start}>
        Plan the week
      </Button>
      <Menu
        label="How to search"
        entries={[
          ...planSeconds.choices.map((choice) => ({
            id: choice,
            label: `Search for ${inWords[choice]}`,
            end: choice === seconds ? 'chosen' : undefined,
            act: () => planSeconds.write(choice),
          })),
          ...planProtect.choices.map((choice) => ({
            id: `protect ${choice}`,
            label: slackWords(choice),
            end: choice === protect ? 'chosen' : undefined,
            act: () => planProtect.write(choice),
          })),
        ]}
      >
        <Button
          look="primary"
          aria-label={`Search time: ${inWords[seconds]}${share === null ? '' : `, ${aimWords(share)}`}`}
          icon={ChevronDown}
        >
          {share === null ? time : `${time} · ${linesOf(share)}`}
        </Button>
      </Menu>
    </div>
  );
}

/** How many machines would get another order; none: floor and paper follow the board. */
function PublishButton() {
  const machines = useUnpublished().size;
  return (
    <Button
      icon={Send}
      isDisabled={machines === 0}
      aria-label={
        machines === 0
          ? 'Published: floor and paper follow this plan'
          : `Publish the plan: ${counted(machines, 'machine')} would change`
      }
      onPress={() => usePlansView.getState().ask('publish')}
    >
      {machines === 0 ? 'Published' : `Publish (${machines})`}
    </Button>
  );
}

function Clock() {
  const now = useNow();
  const { data: shop } = useShop();
  if (!shop) return null;
  const { timeZone } = shop.settings;
  return (
    <time className={styles.clock} title={`Wall clock of the shop (${timeZone})`}>
      <span>{formatWallDate(now, timeZone)}</span>
      <b>{formatClock(now, timeZone)}</b>
    </time>
  );
}

interface Props {
  job: PlanJob;
  undoRedo: UndoRedo;
  onPalette: () => void;
  onKeys: () => void;
  onFirstMinutes: () => void;
}

export function Header({ job, undoRedo, onPalette, onKeys, onFirstMinutes }: Props) {
  const { data: shop } = useShop();
  const { undo, redo, undoLabel, redoLabel } = undoRedo;
  return (
    <header className={styles.header}>
      <div className={styles.mark} aria-hidden>
        <svg width="28" height="28" viewBox="0 0 28 28" fill="none" stroke="currentColor" strokeWidth="2.5">
          <path d="M4 22V10l10-5 0 12 10-4" strokeLinejoin="round" strokeLinecap="round" />
        </svg>
      </div>
      <p className={styles.name}>{shop?.settings.name ?? ''}</p>
      <div className={styles.undo}>
        <IconButton
          label={undoLabel ? `Undo: ${undoLabel}` : 'Nothing to undo'}
          keys="Ctrl+Z"
          icon={Undo2}
          isDisabled={!undoLabel}
          onPress={undo}
        />
        <IconButton
          label={redoLabel ? `Redo: ${redoLabel}` : 'Nothing to redo'}
          keys="Ctrl+Shift+Z"
          icon={Redo2}
          isDisabled={!redoLabel}
          onPress={redo}
        />
      </div>
      <PlanButton job={job} />
      {shop?.settings.publishing === 'byHand' && <PublishButton />}
      <div className={styles.tail}>
        <Clock />
        <IconButton
          label="Plans: keep, compare, go back"
          keys="K"
          icon={Bookmark}
          onPress={() => usePlansView.getState().ask('plans')}
        />
        <IconButton label="Find" keys="Ctrl+K" icon={Search} onPress={onPalette} />
        <Menu
          label="Help"
          entries={[
            { id: 'first-minutes', label: FIRST_MINUTES, end: 'F1', act: onFirstMinutes },
            { id: 'keys', label: 'List of keys', end: '?', act: onKeys },
          ]}
        >
          <IconButton label="Help" icon={HelpCircle} />
        </Menu>
      </div>
    </header>
  );
}
