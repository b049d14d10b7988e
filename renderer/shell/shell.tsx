import { useEffect, useEffectEvent, useState, type ReactNode } from 'react';
import { usePlace } from '../router.ts';
import { onPush } from '../queries/invoke.ts';
import { useShop, useStatus } from '../queries/hooks.ts';
import { FirstMinutes } from '../screens/help/first-minutes.tsx';
import { PlansDialogs } from '../screens/plans/plans-dialogs.tsx';
import { usePlansView } from '../screens/plans/plans-view.ts';
import { RushOfferStrip } from '../screens/what-if/rush-offer.tsx';
import { WhatIfDialogs } from '../screens/what-if/what-if-dialogs.tsx';
import { toast, ToastCorner } from '../ui/toast.tsx';
import { appActions, type Action } from './actions.ts';
import { DropFile } from './drop-file.tsx';
import { Header } from './header.tsx';
import { useKeys } from './keys.ts';
import { KeysDialog } from './keys-dialog.tsx';
import { Palette } from './palette.tsx';
import { usePlanActions } from './plan-actions.ts';
import { Rail } from './rail.tsx';
import { SearchStrip } from './search-strip.tsx';
import styles from './shell.module.css';
import { usePlanJob } from './use-plan-job.ts';
import { useUndoRedo } from './use-undo-redo.ts';
import { useWhatIfActions } from './what-if-actions.ts';

function useMenu(actions: readonly Action[]): void {
  const choose = useEffectEvent((entry: string) => {
    // The menu offers publishing always; its dialog says where there is nothing to publish.
    if (entry === 'publish') return usePlansView.getState().ask('publish');
    actions.find((action) => action.id === entry && !action.disabled)?.act();
  });
  useEffect(() => onPush((push) => push.kind === 'menu' && choose(push.entry)), []);
}

function useNotice(): void {
  const notice = useStatus().data?.notice ?? null;
  useEffect(() => {
    if (notice) toast({ text: notice, look: 'trouble' });
  }, [notice]);
}

/** A letter, and undo and redo: a planner’s. */
const PLANNERS_KEY = /^(Shift\+)?[A-Z]$|^Ctrl\+(Shift\+)?Z$/;

/** The frame around every screen: navigation, header, keys, palette, toasts. */
export function Shell({ children }: { children: ReactNode }) {
  const job = usePlanJob();
  const undoRedo = useUndoRedo();
  const { data: shop } = useShop();
  const [over, setOver] = useState<'palette' | 'keys' | 'first-minutes' | null>(null);
  const close = () => setOver(null);
  const others = [...usePlanActions(), ...useWhatIfActions()];
  const actions = appActions(job, undoRedo, others, setOver);
  const palette: Action = {
    id: 'palette',
    label: 'Find',
    icon: actions[0]!.icon,
    keys: 'Ctrl+K',
    act: () => setOver('palette'),
  };
  // At a machine letters report work, and nobody there undoes what was planned at this desk.
  const onFloor = usePlace().path[0] === 'floor';
  useKeys([...(onFloor ? actions.filter(({ keys }) => !PLANNERS_KEY.test(keys ?? '')) : actions), palette]);
  useMenu(actions);
  useNotice();

  return (
    <DropFile>
      <div className={styles.shell} data-floor={onFloor || undefined}>
        <Header
          job={job}
          undoRedo={undoRedo}
          onPalette={palette.act}
          onKeys={() => setOver('keys')}
          onFirstMinutes={() => setOver('first-minutes')}
        />
        <Rail />
        <main className={styles.main}>
          {shop && <SearchStrip job={job} undoRedo={undoRedo} money={shop.settings} />}
          <RushOfferStrip onFloor={onFloor} />
          <div className={styles.screen}>{children}</div>
        </main>
      </div>
      <Palette actions={actions} isOpen={over === 'palette'} onClose={close} />
      <KeysDialog actions={[...actions, palette]} isOpen={over === 'keys'} onClose={close} />
      <FirstMinutes isOpen={over === 'first-minutes'} onClose={close} leads />
      <WhatIfDialogs />
      <PlansDialogs />
      <ToastCorner />
    </DropFile>
  );
}
