import { seenQueues } from '../../../core/edit/stale.ts';
import { sayRefused } from '../../form/say-refused.ts';
import { useAct } from '../../form/use-act.ts';
import { LateMetalDialog } from './late-metal-dialog.tsx';
import { OutageDialog } from './outage-dialog.tsx';
import { RushDialog } from './rush-dialog.tsx';
import { TroubleDialog } from './trouble-dialog.tsx';
import { useWhatIf, type UsePlan } from './what-if-view.ts';

/** The dialog that is asked for, over whatever screen is open. */
export function WhatIfDialogs() {
  const { asked, ask, close } = useWhatIf();
  const act = useAct();
  const take: UsePlan = (shop, queues, label) => {
    close();
    const own = Object.fromEntries(Object.entries(queues).map(([machine, ids]) => [machine, [...ids]]));
    void act({ do: 'plan.replace', queues: own, label, seen: seenQueues(shop) }).catch((error: Error) =>
      sayRefused(error, { label: 'Look again', act: () => asked && ask(asked) }),
    );
  };
  if (asked?.about === 'rush')
    return <RushDialog key={asked.lineIds.join()} lineIds={asked.lineIds} take={take} onClose={close} />;
  if (asked?.about === 'outage')
    return (
      <OutageDialog
        downtimeId={asked.downtimeId}
        onLonger={(outage) =>
          ask({ about: 'trouble', trouble: { kind: 'machine', machineId: null }, outage })
        }
        onClose={close}
      />
    );
  if (asked?.about === 'metal')
    return (
      <LateMetalDialog
        deliveryId={asked.deliveryId}
        outage={asked.outage}
        onOutage={(outage) => ask({ ...asked, outage })}
        take={take}
        onClose={close}
      />
    );
  if (asked?.about === 'trouble')
    return (
      <TroubleDialog
        trouble={asked.trouble}
        outage={asked.outage}
        onOutage={(outage) => ask({ ...asked, outage })}
        take={take}
        onClose={close}
      />
    );
  return null;
}
