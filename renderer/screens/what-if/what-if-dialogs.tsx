import { toastError } from '../../ui/toast.tsx';
import { useAct } from '../../form/use-act.ts';
import { RushDialog } from './rush-dialog.tsx';
import { TroubleDialog } from './trouble-dialog.tsx';
import { useWhatIf, type UsePlan } from './what-if-view.ts';

/** The dialog that is asked for, over whatever screen is open. */
export function WhatIfDialogs() {
  const { asked, close } = useWhatIf();
  const act = useAct();
  const take: UsePlan = (queues, label) => {
    close();
    const own = Object.fromEntries(Object.entries(queues).map(([machine, ids]) => [machine, [...ids]]));
    void act({ do: 'plan.replace', queues: own, label }).catch(toastError);
  };
  if (asked?.about === 'rush')
    return <RushDialog key={asked.lineIds.join()} lineIds={asked.lineIds} take={take} onClose={close} />;
  if (asked?.about === 'trouble')
    return <TroubleDialog trouble={asked.trouble} take={take} onClose={close} />;
  return null;
}
