import { useEffect, useRef, useState, type PointerEvent } from 'react';
import type { BoardDoing } from './doing.ts';
import { dropAt, type Drop } from './drop.ts';
import type { Geometry } from './geometry.ts';
import { barAt, laneAt } from './hit-test.ts';
import type { Bar, Lane } from './lanes.ts';
import { instantAt, panned, xOf, type Scale } from './scale.ts';

/** A bar in the hand: where the pointer is, where it took hold, and where the bar would go. */
export interface Drag {
  readonly bar: Bar;
  readonly x: number;
  readonly y: number;
  readonly grabX: number;
  readonly grabY: number;
  /** Null over ground or a machine that cannot do it. */
  readonly drop: Drop | null;
}

type Gesture =
  | { readonly is: 'pan'; readonly lastX: number; readonly moved: boolean }
  | { readonly is: 'press'; readonly bar: Bar; readonly x: number; readonly y: number };

/** Farther than this from where it was pressed, a press is a drag. */
const DRAG_PX = 4;

interface Board {
  readonly lanes: readonly Lane[];
  readonly geometry: Geometry;
  readonly scale: Scale;
  readonly doing: BoardDoing;
  readonly look: (scale: Scale) => void;
  readonly select: (operation: string | null) => void;
}

const pointIn = (event: PointerEvent) => {
  const box = event.currentTarget.getBoundingClientRect();
  return { x: event.clientX - box.left, y: event.clientY - box.top };
};

function dropUnder({ lanes, geometry, scale, doing }: Board, bar: Bar, x: number, y: number): Drop | null {
  const lane = laneAt(lanes, geometry, y);
  const target = lane === null ? undefined : lanes[lane];
  if (!target || !doing.able(bar.operation).has(target.machine.id)) return null;
  return dropAt(target, bar.operation, instantAt(scale, x));
}

/** Click to select, drag a bar to move it, drag the ground to look along. Escape gives a drag up. */
export function usePointer(board: Board) {
  const gesture = useRef<Gesture | null>(null);
  const [drag, setDrag] = useState<Drag | null>(null);
  const { scale, doing } = board;

  const giveUp = (bar: Bar) => {
    gesture.current = null;
    setDrag(null);
    doing.preview(bar.operation, null);
  };
  useEscape(drag ? () => giveUp(drag.bar) : null);

  const hold = (bar: Bar, from: { x: number; y: number }, x: number, y: number) => {
    const drop = dropUnder(board, bar, x, y);
    const same = drop?.machineId === drag?.drop?.machineId && drop?.position === drag?.drop?.position;
    setDrag({ bar, x, y, grabX: from.x - xOf(scale, bar.start), grabY: from.y, drop });
    if (!same || !drag) doing.preview(bar.operation, drop);
  };

  const down = (event: PointerEvent) => {
    if (event.button !== 0) return;
    const { x, y } = pointIn(event);
    const bar = barAt(board.lanes, board.geometry, scale, x, y);
    event.currentTarget.setPointerCapture(event.pointerId);
    gesture.current = bar ? { is: 'press', bar, x, y } : { is: 'pan', lastX: x, moved: false };
  };

  const move = (event: PointerEvent) => {
    const now = gesture.current;
    if (!now) return;
    const { x, y } = pointIn(event);
    if (now.is === 'pan') {
      if (x === now.lastX) return;
      gesture.current = { is: 'pan', lastX: x, moved: true };
      board.look(panned(scale, now.lastX - x));
    } else if (drag || (Math.hypot(x - now.x, y - now.y) > DRAG_PX && !now.bar.started)) {
      hold(now.bar, now, x, y);
    }
  };

  const up = () => {
    const now = gesture.current;
    gesture.current = null;
    if (drag) {
      setDrag(null);
      if (drag.drop) doing.move(drag.bar.operation, drag.drop);
      else doing.preview(drag.bar.operation, null);
    } else if (now?.is === 'press') board.select(now.bar.operation);
    else if (now?.is === 'pan' && !now.moved) board.select(null);
  };

  const cancel = () => {
    if (drag) giveUp(drag.bar);
    gesture.current = null;
  };
  return {
    drag,
    handlers: { onPointerDown: down, onPointerMove: move, onPointerUp: up, onPointerCancel: cancel },
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
