import {
  useEffect,
  useRef,
  useState,
  type MouseEvent,
  type PointerEvent,
  type ReactNode,
  type RefObject,
} from 'react';
import { keyName, keysAreTaken } from '../ui/key-name.ts';
import { MenuAt } from '../ui/menu.tsx';
import { useKeyPresses } from '../ui/use-key-presses.ts';
import type { BoardReading } from './board-reading.ts';
import { findBar } from './drop.ts';
import { barBox, type Geometry } from './geometry.ts';
import { barAt } from './hit-test.ts';
import type { Lane } from './lanes.ts';
import styles from './reading.module.css';
import { xOf, type Scale } from './scale.ts';
import { useBoardView } from './view.ts';

interface Board {
  surface: RefObject<HTMLElement | null>;
  lanes: readonly Lane[];
  geometry: Geometry;
  scale: Scale | null;
  selected: string | null;
}

/** An operation and a point of the window, in its pixels. */
interface Pointed {
  readonly operation: string;
  readonly x: number;
  readonly y: number;
}

/** How long the pointer rests on a bar before it is told of. */
const REST_MS = 300;
const CARD = { width: 260, height: 210, gap: 8 };

/** The bar under the pointer. */
function pointedAt(board: Board, event: { clientX: number; clientY: number }): Pointed | null {
  const box = board.surface.current?.getBoundingClientRect();
  if (!box || !board.scale) return null;
  const { clientX: x, clientY: y } = event;
  const bar = barAt(board.lanes, board.geometry, board.scale, x - box.left, y - box.top);
  return bar && { operation: bar.operation, x, y };
}

/** A point at the foot of a bar, for what the keys ask of it. */
function footOf({ surface, lanes, geometry, scale }: Board, operation: string | null): Pointed | null {
  const found = findBar(lanes, operation);
  const box = surface.current?.getBoundingClientRect();
  if (!found || !box || !scale) return null;
  const { y, height } = barBox(geometry, found.bar);
  const x = Math.min(Math.max(0, xOf(scale, found.bar.start)), scale.width);
  return {
    operation: found.bar.operation,
    x: box.left + x,
    y: box.top + found.lane * geometry.laneHeight + y + height,
  };
}

/** What the pointer rests on; any key, press or turn of the wheel takes it away. */
function useRest(board: Board) {
  const [rests, setRests] = useState<Pointed | null>(null);
  const timer = useRef(0);
  const drop = () => {
    window.clearTimeout(timer.current);
    setRests(null);
  };
  useEffect(() => {
    const key = () => setRests(null);
    window.addEventListener('keydown', key, true);
    return () => {
      window.removeEventListener('keydown', key, true);
      window.clearTimeout(timer.current);
    };
  }, []);
  const move = (event: PointerEvent) => {
    if (event.buttons !== 0 || event.pointerType === 'touch') return drop();
    const next = pointedAt(board, event);
    if (next?.operation === rests?.operation) return;
    window.clearTimeout(timer.current);
    if (next) timer.current = window.setTimeout(() => setRests(next), rests ? 0 : REST_MS);
    else setRests(null);
  };
  return {
    rests,
    handlers: { onPointerMove: move, onPointerLeave: drop, onPointerDown: drop, onWheel: drop },
  };
}

/** Whether the board has the focus by key, so that what is selected is told of beside it. */
function useFocusByKey() {
  const [byKey, setByKey] = useState(false);
  return {
    byKey,
    handlers: {
      onFocus: (event: { target: Element }) => setByKey(event.target.matches(':focus-visible')),
      onBlur: () => setByKey(false),
    },
  };
}

/** The menu of a bar: the right button on it, or the menu key (Shift+F10) on the selected one. */
function useBarMenu(board: Board) {
  const [menu, setMenu] = useState<Pointed | null>(null);
  const open = (pointed: Pointed | null) => {
    const { chosen, select } = useBoardView.getState();
    if (pointed && !chosen.includes(pointed.operation)) select(pointed.operation);
    setMenu(pointed);
  };
  useKeyPresses((event) => {
    if (keysAreTaken(event) || !['ContextMenu', 'Shift+F10'].includes(keyName(event))) return;
    const target = event.target as Node;
    if (target !== document.body && !board.surface.current?.contains(target)) return;
    event.preventDefault();
    open(footOf(board, board.selected));
  });
  const onContextMenu = (event: MouseEvent) => {
    event.preventDefault();
    const pointed = pointedAt(board, event);
    if (pointed) open(pointed);
  };
  return { menu, close: () => setMenu(null), handlers: { onContextMenu } };
}

/** A card and a menu of a bar: handlers for the board's surface, and what stands over it. */
export function useBarPop(board: Board, { card, menu: entriesOf }: Pick<BoardReading, 'card' | 'menu'>) {
  const rest = useRest(board);
  const focus = useFocusByKey();
  const { menu, close, handlers } = useBarMenu(board);
  const told = menu ? null : (rest.rests ?? (focus.byKey ? footOf(board, board.selected) : null));
  return {
    handlers: { ...rest.handlers, ...focus.handlers, ...handlers },
    over: (
      <>
        {told && <Card at={told}>{card(told.operation)}</Card>}
        {menu && (
          <MenuAt
            label="What can be done with it"
            entries={entriesOf(menu.operation)}
            at={menu}
            onClose={close}
          />
        )}
      </>
    ),
  };
}

function Card({ at, children }: { at: Pointed; children: ReactNode }) {
  const left = Math.max(CARD.gap, Math.min(at.x, window.innerWidth - CARD.width - CARD.gap));
  const below = at.y + CARD.gap * 2 + CARD.height < window.innerHeight;
  const place = below ? { top: at.y + CARD.gap * 2 } : { bottom: window.innerHeight - at.y + CARD.gap };
  return (
    <div role="tooltip" className={styles.card} style={{ left, ...place }}>
      {children}
    </div>
  );
}
