import { useEffect, useRef, useState, type PointerEvent } from 'react';
import type { Block } from '../../core/edit/blocks.ts';
import { dropAt, movable, runWith, sameStep } from './block-moves.ts';
import type { BoardDoing } from './doing.ts';
import type { Geometry } from './geometry.ts';
import { barAt, laneAt, runAt } from './hit-test.ts';
import type { Bar, Lane } from './lanes.ts';
import { instantAt, panned, xOf, type Scale } from './scale.ts';
import { inBand, joined, rangeInLane, toggled, type Band } from './selection.ts';
import { useBoardView } from './view.ts';

/** Bars in the hand: where the pointer is, where it took hold, and where they would go. */
export interface Drag {
  /** The one that was taken hold of. */
  readonly bar: Bar;
  /** All that go along, in the order of their starts. */
  readonly operations: readonly string[];
  readonly x: number;
  readonly y: number;
  readonly grabX: number;
  /** Null over ground or a machine that cannot do them all. */
  readonly drop: Block | null;
}

interface Pressed {
  readonly x: number;
  readonly y: number;
  /** Held keys: Ctrl or Cmd adds, Shift extends. */
  readonly adds: boolean;
  readonly extends: boolean;
}

type Gesture =
  | { readonly is: 'pan'; readonly lastX: number; readonly moved: boolean }
  | ({ readonly is: 'band' } & Pressed)
  /** On a bar, or on the bracket of a run, whose operations these are. */
  | ({ readonly is: 'press'; readonly bar: Bar; readonly run: readonly string[] | null } & Pressed);

/** Farther than this from where it was pressed, a press is a drag. */
const DRAG_PX = 4;
const MIDDLE_BUTTON = 1;

interface Board {
  readonly lanes: readonly Lane[];
  readonly geometry: Geometry;
  readonly scale: Scale;
  readonly doing: BoardDoing;
  readonly look: (scale: Scale) => void;
}

const pointIn = (event: PointerEvent) => {
  const box = event.currentTarget.getBoundingClientRect();
  return { x: event.clientX - box.left, y: event.clientY - box.top };
};

function dropUnder(
  { lanes, geometry, scale, doing }: Board,
  operations: readonly string[],
  x: number,
  y: number,
) {
  const lane = laneAt(lanes, geometry, y);
  const target = lane === null ? undefined : lanes[lane];
  if (!target || !doing.able(operations).has(target.machine.id)) return null;
  return dropAt(target, operations, instantAt(scale, x));
}

/** What a press begins. A finger draws the board along, since it has no wheel; so does the middle button. */
function begun({ lanes, geometry, scale }: Board, event: PointerEvent): Gesture | null {
  const { x, y } = pointIn(event);
  if (event.button === MIDDLE_BUTTON) return { is: 'pan', lastX: x, moved: true };
  if (event.button !== 0) return null;
  const pressed = { x, y, adds: event.ctrlKey || event.metaKey, extends: event.shiftKey };
  const bar = barAt(lanes, geometry, scale, x, y);
  if (bar) return { is: 'press', bar, run: null, ...pressed };
  const grip = runAt(lanes, geometry, scale, x, y);
  if (grip) return { is: 'press', bar: grip.bar, run: runWith(grip.lane, grip.bar.operation), ...pressed };
  return event.pointerType === 'touch' ? { is: 'pan', lastX: x, moved: false } : { is: 'band', ...pressed };
}

/** What is in the hand: the run whose bracket was taken, all that is chosen with the bar, or the bar alone. */
function inHand(lanes: readonly Lane[], { bar, run }: { bar: Bar; run: readonly string[] | null }): string[] {
  const { chosen } = useBoardView.getState();
  const held = run ?? (chosen.includes(bar.operation) ? chosen : [bar.operation]);
  const bars = run ? movable(lanes, held) : sameStep(lanes, held, bar.operation);
  return bars.map((one) => one.operation);
}

function selectBy(
  lanes: readonly Lane[],
  { bar, run, ...keys }: Pressed & { bar: Bar; run: readonly string[] | null },
) {
  const { chosen, anchor, choose } = useBoardView.getState();
  const { operation } = bar;
  if (keys.extends) choose(rangeInLane(lanes, anchor, run?.at(-1) ?? operation), operation, anchor);
  else if (keys.adds) choose(toggled(chosen, run ?? [operation]), operation);
  else choose(run ?? [operation], operation);
}

/**
 * Click to select (Ctrl adds, Shift extends), drag a bar, a run's bracket or what is selected to move it, drag over the
 * ground to select with a rubber band. Escape gives a drag up.
 */
export function usePointer(board: Board) {
  const gesture = useRef<Gesture | null>(null);
  const [drag, setDrag] = useState<Drag | null>(null);
  const [band, setBand] = useState<Band | null>(null);
  const { scale, doing, lanes, geometry } = board;

  const giveUp = () => {
    gesture.current = null;
    setBand(null);
    setDrag(null);
    if (drag) doing.preview(null);
  };
  useEscape(drag || band ? giveUp : null);

  const hold = (press: Extract<Gesture, { is: 'press' }>, x: number, y: number) => {
    const operations = drag?.operations ?? inHand(lanes, press);
    if (operations.length === 0) return;
    const drop = dropUnder(board, operations, x, y);
    const same = drop?.machineId === drag?.drop?.machineId && drop?.position === drag?.drop?.position;
    setDrag({ bar: press.bar, operations, x, y, grabX: press.x - xOf(scale, press.bar.start), drop });
    if (!same || !drag) doing.preview(drop && [drop]);
  };

  const down = (event: PointerEvent) => {
    gesture.current = begun(board, event);
    if (gesture.current) event.currentTarget.setPointerCapture(event.pointerId);
  };

  const move = (event: PointerEvent) => {
    const now = gesture.current;
    if (!now) return;
    const { x, y } = pointIn(event);
    if (now.is === 'pan') {
      if (x === now.lastX) return;
      gesture.current = { is: 'pan', lastX: x, moved: true };
      board.look(panned(scale, now.lastX - x));
      return;
    }
    const isFar = Math.hypot(x - now.x, y - now.y) > DRAG_PX;
    if (now.is === 'band') {
      if (band || isFar) setBand({ x0: now.x, y0: now.y, x1: x, y1: y });
    } else if (drag || isFar) hold(now, x, y);
  };

  const up = () => {
    const now = gesture.current;
    const { choose, select, chosen } = useBoardView.getState();
    gesture.current = null;
    setDrag(null);
    setBand(null);
    if (drag?.drop) doing.move([drag.drop]);
    else if (drag) doing.preview(null);
    else if (now?.is === 'press') selectBy(lanes, now);
    else if (now?.is === 'band' && band) {
      const touched = inBand(lanes, geometry, scale, band);
      if (touched.length > 0)
        choose(now.adds || now.extends ? joined(chosen, touched) : touched, touched[0]!);
    } else if ((now?.is === 'band' && !now.adds) || (now?.is === 'pan' && !now.moved)) select(null);
  };

  return {
    drag,
    band,
    handlers: { onPointerDown: down, onPointerMove: move, onPointerUp: up, onPointerCancel: giveUp },
  };
}

function useEscape(act: (() => void) | null): void {
  useEffect(() => {
    if (!act) return;
    const press = (event: KeyboardEvent) => {
      if (event.key !== 'Escape') return;
      event.preventDefault();
      event.stopPropagation();
      act();
    };
    window.addEventListener('keydown', press, true);
    return () => window.removeEventListener('keydown', press, true);
  }, [act]);
}
