import { useMemo, useRef, type CSSProperties } from 'react';
import type { Absence, Machine } from '../../core/shop/machine.ts';
import type { Interval } from '../../core/time/interval.ts';
import type { MenuEntry } from '../ui/menu.tsx';
import { AXIS_PX, AxisRow } from './axis-row.tsx';
import { useBarPop } from './bar-pop.tsx';
import type { BoardReading } from './board-reading.ts';
import type { BoardDoing } from './doing.ts';
import { BandLayer, DragLayer, RefusingLanes, refusalsOf } from './drag-layer.tsx';
import { GripsLayer } from './grips-layer.tsx';
import { inBand } from './selection.ts';
import styles from './gantt.module.css';
import { geometryOf, type Geometry } from './geometry.ts';
import { LabelsLayer } from './labels-layer.tsx';
import { LaneHeads } from './lane-heads.tsx';
import type { Lane } from './lanes.ts';
import { MarkedLayer, NowLine, SelectionLayer } from './marks-layer.tsx';
import { PEOPLE_PX, PeopleRow } from './people-row.tsx';
import { PublishedLayer, ReadingLayers } from './reading-layers.tsx';
import type { Scale } from './scale.ts';
import { OptionsLayer, barId } from './options-layer.tsx';
import { stretchFor } from './bar-paths.ts';
import { BarsFrame, BarsLayer } from './bars-layer.tsx';
import { useBoardKeys } from './use-board-keys.ts';
import { StoppedLayer, type StoppedHours } from './stopped-layer.tsx';
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
  /** As far as the board goes, in board seconds like all that follows. */
  horizon: Interval;
  /** From the present to the last end or due date: what "see the whole plan" shows. */
  whole: Interval;
  now: number;
  /** The next moment at which a machine is open: where the board begins. */
  opens: number;
  timeZone: string;
  /** Hours with fewer people; empty: no row for them. */
  out: readonly Absence[];
  stopped: StoppedHours;
  doing: BoardDoing;
  /** What can be done with a machine, from its lane's head. */
  menuOf: (machine: Machine) => readonly MenuEntry[];
  reading: BoardReading;
}

/** The machines' queues against time. */
export function Gantt(props: Props) {
  const { lanes, wouldBe, horizon, whole, now, opens, timeZone, out, stopped, doing, menuOf, reading } =
    props;
  const { fold } = reading;
  const headPx = AXIS_PX + (out.length > 0 ? PEOPLE_PX : 0);
  const surface = useRef<HTMLDivElement>(null);
  const scroll = useRef<HTMLDivElement>(null);
  const { width } = useSize(surface);
  const { height: room } = useSize(scroll);
  const selected = useBoardView((view) => view.selected);
  const chosen = useBoardView((view) => view.chosen);
  const { scale, look, fit, goToNow } = useBoardScale({ width, horizon, now, opens, fold });
  const seeAll = () => fit(whole);
  const under = reading.published !== null;
  const geometry = useMemo(
    () => geometryOf(room - headPx, lanes.length, under),
    [room, headPx, lanes.length, under],
  );
  const shown = wouldBe ?? lanes;
  useBoardKeys({ surface, lanes, scale, selected, chosen, doing, look, fit: seeAll, goToNow });
  useWheel(surface, scale, look);
  useReveal(lanes, selected, scale, look);
  const pop = useBarPop({ surface, lanes: shown, geometry, scale, selected }, reading);

  return (
    <div className={styles.scroll} ref={scroll} style={{ '--axis': `${headPx}px` } as CSSProperties}>
      <div className={styles.corner}>
        {scale && <ZoomTools scale={scale} look={look} fit={seeAll} goToNow={goToNow} />}
      </div>
      <div className={styles.axisCell}>
        {scale && <AxisRow {...{ scale, timeZone, now, fold }} />}
        {scale && out.length > 0 && <PeopleRow {...{ out, scale, timeZone, fold }} />}
      </div>
      <LaneHeads lanes={shown} geometry={geometry} menuOf={menuOf} under={under} />
      <div
        {...pop.handlers}
        ref={surface}
        className={styles.surfaceCell}
        style={{ height: lanes.length * geometry.laneHeight }}
      >
        {scale && (
          <Surface
            {...{ lanes, shown, scale, geometry, selected, chosen, look }}
            {...{ doing, timeZone, now, stopped, reading }}
            origin={horizon.start}
          />
        )}
      </div>
      {pop.over}
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
  chosen: readonly string[];
  doing: BoardDoing;
  look: (scale: Scale) => void;
  timeZone: string;
  now: number;
  stopped: StoppedHours;
  reading: BoardReading;
}

/** The drawn part: what moves with the pointer is drawn over what stays. */
function Surface(props: SurfaceProps) {
  const { lanes, shown, scale, geometry, origin, selected, chosen, doing, timeZone, now, stopped, reading } =
    props;
  const { published } = reading;
  const marked = useBoardView((view) => view.marked);
  const { drag, band, handlers } = usePointer(props);
  const height = lanes.length * geometry.laneHeight;
  const stretch = stretchFor(scale);
  const held = drag?.operations ?? null;
  const refusals = useMemo(() => refusalsOf(lanes, doing, held), [lanes, doing, held]);
  const outlined = held ?? (band ? inBand(lanes, geometry, scale, band) : chosen);
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
        {published && (
          <PublishedLayer lanes={published} {...{ geometry, origin }} from={stretch.start} to={stretch.end} />
        )}
      </BarsFrame>
      {lanes.map(({ machine }, i) => (
        <path
          key={machine.id}
          className={styles.laneEdge}
          d={`M0 ${(i + 1) * geometry.laneHeight - 0.5}H${scale.width}`}
        />
      ))}
      <GripsLayer lanes={shown} scale={scale} geometry={geometry} />
      <OptionsLayer {...{ scale, geometry, selected, chosen }} lanes={shown} />
      <LabelsLayer lanes={shown} scale={scale} geometry={geometry} />
      <ReadingLayers lanes={shown} {...{ scale, geometry, selected, height, reading }} />
      <SelectionLayer
        lanes={shown}
        scale={scale}
        geometry={geometry}
        selected={drag?.bar.operation ?? selected}
        timeZone={timeZone}
        fold={reading.fold}
      />
      <MarkedLayer lanes={shown} scale={scale} geometry={geometry} marked={marked} />
      {(outlined.length > 1 || band) && (
        <MarkedLayer lanes={shown} scale={scale} geometry={geometry} marked={outlined} look="chosen" />
      )}
      {band && <BandLayer band={band} />}
      <StoppedLayer {...{ lanes, stopped, scale, geometry, timeZone }} fold={reading.fold} />
      <NowLine now={now} scale={scale} height={height} />
      <RefusingLanes refusals={refusals} scale={scale} geometry={geometry} />
      {drag && <DragLayer drag={drag} scale={scale} geometry={geometry} />}
    </svg>
  );
}
