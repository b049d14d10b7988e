import { useMemo, useRef, type CSSProperties } from 'react';
import type { Absence, Machine } from '../../core/shop/machine.ts';
import type { Interval } from '../../core/time/interval.ts';
import type { MenuEntry } from '../ui/menu.tsx';
import { AXIS_PX, AxisRow } from './axis-row.tsx';
import type { BoardDoing } from './doing.ts';
import { DragLayer, RefusingLanes } from './drag-layer.tsx';
import styles from './gantt.module.css';
import { geometryOf, type Geometry } from './geometry.ts';
import { LabelsLayer } from './labels-layer.tsx';
import { LaneHeads } from './lane-heads.tsx';
import type { Lane } from './lanes.ts';
import { MarkedLayer, NowLine, SelectionLayer } from './marks-layer.tsx';
import { PEOPLE_PX, PeopleRow } from './people-row.tsx';
import type { Scale } from './scale.ts';
import { OptionsLayer, barId } from './options-layer.tsx';
import { stretchFor } from './bar-paths.ts';
import { BarsFrame, BarsLayer } from './bars-layer.tsx';
import { useBoardKeys } from './use-board-keys.ts';
import { useBoardScale, useReveal, useWheel } from './use-board-scale.ts';
import { usePointer } from './use-pointer.ts';
import { useSize } from './use-size.ts';
import { useBoardView } from './view.ts';
import { ZoomTools } from './zoom-tools.tsx';

interface Props {
  /** The plan as it is: what the pointer and the keys act on. */
  lanes: readonly Lane[];
  /** The plan as it would be while something is dragged; drawn in place of `lanes`. */
  wouldBe: readonly Lane[] | null;
  /** As far as the board goes. */
  horizon: Interval;
  /** From the present to the last end or due date: what "see the whole plan" shows. */
  whole: Interval;
  now: number;
  timeZone: string;
  /** Hours with fewer people; empty: no row for them. */
  out: readonly Absence[];
  doing: BoardDoing;
  /** What can be done with a machine, from its lane's head. */
  menuOf: (machine: Machine) => readonly MenuEntry[];
}

/** The machines' queues against time. */
export function Gantt({ lanes, wouldBe, horizon, whole, now, timeZone, out, doing, menuOf }: Props) {
  const headPx = AXIS_PX + (out.length > 0 ? PEOPLE_PX : 0);
  const surface = useRef<HTMLDivElement>(null);
  const scroll = useRef<HTMLDivElement>(null);
  const { width } = useSize(surface);
  const { height: room } = useSize(scroll);
  const selected = useBoardView((view) => view.selected);
  const select = useBoardView((view) => view.select);
  const { scale, look, fit, goToNow } = useBoardScale(width, horizon, now);
  const seeAll = () => fit(whole);
  const geometry = useMemo(() => geometryOf(room - headPx, lanes.length), [room, headPx, lanes.length]);
  const shown = wouldBe ?? lanes;
  useBoardKeys({ surface, lanes, scale, selected, doing, look, select, fit: seeAll, goToNow });
  useWheel(surface, scale, look);
  useReveal(lanes, selected, scale, look);

  return (
    <div className={styles.scroll} ref={scroll} style={{ '--axis': `${headPx}px` } as CSSProperties}>
      <div className={styles.corner}>
        {scale && <ZoomTools scale={scale} look={look} fit={seeAll} goToNow={goToNow} />}
      </div>
      <div className={styles.axisCell}>
        {scale && <AxisRow scale={scale} timeZone={timeZone} now={now} />}
        {scale && out.length > 0 && <PeopleRow out={out} scale={scale} timeZone={timeZone} />}
      </div>
      <LaneHeads lanes={shown} geometry={geometry} menuOf={menuOf} />
      <div
        ref={surface}
        className={styles.surfaceCell}
        style={{ height: lanes.length * geometry.laneHeight }}
      >
        {scale && (
          <Surface
            {...{ lanes, shown, scale, geometry, selected, doing, look, select, timeZone, now }}
            origin={horizon.start}
          />
        )}
      </div>
    </div>
  );
}

interface SurfaceProps {
  lanes: readonly Lane[];
  shown: readonly Lane[];
  scale: Scale;
  geometry: Geometry;
  origin: number;
  selected: string | null;
  doing: BoardDoing;
  look: (scale: Scale) => void;
  select: (operation: string | null) => void;
  timeZone: string;
  now: number;
}

/** The drawn part: what moves with the pointer is drawn over what stays. */
function Surface(props: SurfaceProps) {
  const { lanes, shown, scale, geometry, origin, selected, doing, timeZone, now } = props;
  const marked = useBoardView((view) => view.marked);
  const { drag, handlers } = usePointer(props);
  const height = lanes.length * geometry.laneHeight;
  const stretch = stretchFor(scale);
  const held = drag?.bar.operation ?? null;
  const able = held === null ? null : doing.able(held);
  const refusals =
    held === null || able === null
      ? []
      : lanes.flatMap(({ machine }, lane) =>
          able.has(machine.id) ? [] : [{ lane, why: doing.whyNot(held, machine.id) }],
        );
  return (
    <svg
      {...handlers}
      className={drag ? styles.dragging : styles.surface}
      width={scale.width}
      height={height}
      tabIndex={0}
      role="application"
      aria-roledescription="board"
      aria-label="Queues of the machines. Arrow keys go from operation to operation; the list of keys is under ?"
      aria-activedescendant={selected === null ? undefined : barId(selected)}
    >
      <BarsFrame scale={scale} origin={origin}>
        <BarsLayer lanes={shown} geometry={geometry} origin={origin} from={stretch.start} to={stretch.end} />
      </BarsFrame>
      {lanes.map(({ machine }, i) => (
        <path
          key={machine.id}
          className={styles.laneEdge}
          d={`M0 ${(i + 1) * geometry.laneHeight - 0.5}H${scale.width}`}
        />
      ))}
      <OptionsLayer lanes={shown} scale={scale} geometry={geometry} selected={selected} />
      <LabelsLayer lanes={shown} scale={scale} geometry={geometry} />
      <SelectionLayer
        lanes={shown}
        scale={scale}
        geometry={geometry}
        selected={held ?? selected}
        timeZone={timeZone}
      />
      <MarkedLayer lanes={shown} scale={scale} geometry={geometry} marked={marked} />
      <NowLine now={now} scale={scale} height={height} />
      <RefusingLanes refusals={refusals} scale={scale} geometry={geometry} />
      {drag && <DragLayer drag={drag} scale={scale} geometry={geometry} />}
    </svg>
  );
}
