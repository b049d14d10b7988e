import { ArrowLeftRight, CircleHelp, PencilLine, Pin, PinOff, Split, Zap } from 'lucide-react';
import { useState } from 'react';
import { stepWord } from '../../../core/part/stage.ts';
import { whyQuestion } from '../../../core/report/why-words.ts';
import { shortDuration } from '../../../core/units/duration.ts';
import type { BoardDoing } from '../../gantt/doing.ts';
import { dropAt, shifted, type By } from '../../gantt/block-moves.ts';
import { useChances } from '../../queries/chances.ts';
import { placeOf } from '../../router.ts';
import { Button } from '../../ui/button.tsx';
import { ChanceTag } from '../../ui/chance-tag.tsx';
import { FarChance } from '../../ui/far-chance.tsx';
import { Menu } from '../../ui/menu.tsx';
import { Tag } from '../../ui/tag.tsx';
import { CorrectDialog } from '../learning/correct-dialog.tsx';
import { SplitDialog } from '../orders/split-dialog.tsx';
import { askRush } from '../what-if/what-if-view.ts';
import styles from './board.module.css';
import { ChangeoverWhy, Facts, LookFirst, Neighbours, PartPicture, TimeReasons } from './operation-facts.tsx';
import type { Chosen } from './chosen.ts';
import { SafeDate } from './safe-date.tsx';

function Actions({ chosen, doing }: { chosen: Chosen; doing: BoardDoing }) {
  const { bar, lane, lanes, operation } = chosen;
  const shift = (by: By) => doing.move(shifted(lanes, [bar.operation], by));
  const record = chosen.shop.record.find(({ id }) => id === bar.operation);
  const [asked, setAsked] = useState<'correct' | 'split' | null>(null);
  const close = () => setAsked(null);
  return (
    <div className={styles.actions}>
      <Button small icon={CircleHelp} onPress={() => doing.explain(bar.operation)}>
        {whyQuestion(bar.tardiness > 0)}
      </Button>
      <Button small icon={bar.pinned ? PinOff : Pin} onPress={() => doing.togglePin([bar.operation])}>
        {bar.pinned ? 'Unpin' : 'Pin'}
      </Button>
      {bar.rush && (
        <Button small icon={Zap} isDisabled={bar.started} onPress={() => askRush([bar.lineId])}>
          Rush…
        </Button>
      )}
      <Button small isDisabled={bar.position === 0 || bar.started} onPress={() => shift(-1)}>
        Earlier
      </Button>
      <Button
        small
        isDisabled={bar.position === lane.bars.length - 1 || bar.started}
        onPress={() => shift(1)}
      >
        Later
      </Button>
      <OtherMachine chosen={chosen} doing={doing} />
      <Button small icon={Split} onPress={() => setAsked('split')}>
        Split the line…
      </Button>
      {record && (
        <Button small icon={PencilLine} onPress={() => setAsked('correct')}>
          Correct the record…
        </Button>
      )}
      {record && asked === 'correct' && <CorrectDialog shop={chosen.shop} record={record} onClose={close} />}
      {asked === 'split' && (
        <SplitDialog shop={chosen.shop} line={operation.line} order={operation.order} onClose={close} />
      )}
    </div>
  );
}

/** The other machines of the stage; one that cannot do it says why. */
function OtherMachine({
  chosen: { bar, lane, lanes, operation },
  doing,
}: {
  chosen: Chosen;
  doing: BoardDoing;
}) {
  const machines = lanes.filter((other) => other.machine.stage === lane.machine.stage && other !== lane);
  if (machines.length === 0) return null;
  return (
    <Menu
      label="Move to another machine"
      entries={machines.map((other) => {
        const refused = operation.refused.find((r) => r.machineId === other.machine.id);
        return {
          id: other.machine.id,
          label: refused ? `${other.machine.name}: ${refused.reason}` : other.machine.name,
          disabled: refused !== undefined || bar.started,
          act: () => doing.move([dropAt(other, [bar.operation], bar.start)]),
        };
      })}
    >
      <Button small icon={ArrowLeftRight}>
        Machine
      </Button>
    </Menu>
  );
}

function Tags({ chosen: { bar, lane, operation } }: { chosen: Chosen }) {
  const chance = useChances()?.[bar.lineId];
  const { makeUpFor } = operation.line;
  return (
    <div className={styles.tags}>
      {bar.tardiness > 0 && <Tag look="late">{shortDuration(bar.tardiness)} late</Tag>}
      {chance && <ChanceTag share={chance.onTime} />}
      {bar.tardiness === 0 && !chance && <Tag look="fine">on time</Tag>}
      {makeUpFor && <Tag look="accent">remake of {makeUpFor}</Tag>}
      {bar.rush && <Tag look="warn">rush</Tag>}
      {bar.pinned && <Tag look="accent">pinned</Tag>}
      {bar.started && <Tag>started</Tag>}
      {operation.suspended && <Tag>suspended</Tag>}
      {chance && <FarChance share={chance.onTime} late={bar.tardiness > 0} machineId={lane.machine.id} />}
    </div>
  );
}

/** The selected operation: what it is, when, why so, and what can be done with it. */
export function OperationPanel({
  chosen,
  doing,
  select,
}: {
  chosen: Chosen;
  doing: BoardDoing;
  select: (operation: string) => void;
}) {
  const { bar } = chosen;
  return (
    <div className={styles.operation}>
      <header>
        <h2 className={styles.lineTitle}>
          {bar.lineId} <span>{stepWord[chosen.operation.stage]}</span>
        </h2>
        <p>
          {bar.customer} · <a href={placeOf('orders', bar.orderId)}>work order {bar.orderId}</a>
        </p>
        <Tags chosen={chosen} />
      </header>
      <Actions chosen={chosen} doing={doing} />
      <PartPicture chosen={chosen} />
      <Facts chosen={chosen} />
      <LookFirst chosen={chosen} />
      <SafeDate lineId={bar.lineId} timeZone={chosen.shop.settings.timeZone} />
      <Neighbours chosen={chosen} select={select} />
      <ChangeoverWhy chosen={chosen} />
      <TimeReasons chosen={chosen} />
    </div>
  );
}
