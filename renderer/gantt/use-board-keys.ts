import type { RefObject } from 'react';
import { keyName, keysAreTaken } from '../ui/key-name.ts';
import type { BoardDoing } from './doing.ts';
import { besideInLane, besideInNextLane, dropAt, findBar } from './drop.ts';
import type { Lane } from './lanes.ts';
import { panned, zoomed, type Scale } from './scale.ts';
import { useKeyPresses } from '../ui/use-key-presses.ts';

interface Board {
  readonly surface: RefObject<HTMLElement | null>;
  readonly lanes: readonly Lane[];
  readonly scale: Scale | null;
  readonly selected: string | null;
  readonly doing: BoardDoing;
  readonly look: (scale: Scale) => void;
  readonly select: (operation: string | null) => void;
  readonly fit: () => void;
  readonly goToNow: () => void;
}

export const ZOOM_STEP = 1.5;
const PAN_SHARE = 0.2;

type Keys = Readonly<Record<string, () => void>>;

/** Move the selected operation one place in its queue. */
function moveInQueue({ lanes, doing, selected }: Board, by: -1 | 1): void {
  const found = findBar(lanes, selected);
  const lane = found && lanes[found.lane];
  const position = (found?.bar.position ?? 0) + by;
  if (!lane || position < 0 || position >= lane.bars.length) return;
  doing.move(found.bar.operation, { machineId: lane.machine.id, position });
}

/** Move the selected operation to the next machine above or below that can do it, at about the same time. */
function moveToMachine({ lanes, doing, selected }: Board, by: -1 | 1): void {
  const found = findBar(lanes, selected);
  if (!found) return;
  const able = doing.able(found.bar.operation);
  const beside = by === 1 ? lanes.slice(found.lane + 1) : lanes.slice(0, found.lane).reverse();
  const target = beside.find(({ machine }) => able.has(machine.id));
  if (target) doing.move(found.bar.operation, dropAt(target, found.bar.operation, found.bar.start));
  else if (beside[0]) doing.refuse(found.bar.operation, beside[0].machine.id);
}

function go(board: Board, beside: typeof besideInLane, by: -1 | 1): void {
  const { lanes, selected, select } = board;
  const first = lanes.find((lane) => lane.bars.length > 0)?.bars[0]?.operation ?? null;
  select(findBar(lanes, selected) && selected ? beside(lanes, selected, by) : first);
}

function keysOf(board: Board): Keys {
  const { scale, selected, doing, look } = board;
  const looking: Keys = scale
    ? {
        '+': () => look(zoomed(scale, ZOOM_STEP, scale.width / 2)),
        '=': () => look(zoomed(scale, ZOOM_STEP, scale.width / 2)),
        '-': () => look(zoomed(scale, 1 / ZOOM_STEP, scale.width / 2)),
        'Shift+←': () => look(panned(scale, -PAN_SHARE * scale.width)),
        'Shift+→': () => look(panned(scale, PAN_SHARE * scale.width)),
        '0': board.fit,
        T: board.goToNow,
      }
    : {};
  const onSelected: Keys = selected
    ? {
        'Alt+←': () => moveInQueue(board, -1),
        'Alt+→': () => moveInQueue(board, 1),
        'Alt+↑': () => moveToMachine(board, -1),
        'Alt+↓': () => moveToMachine(board, 1),
        Space: () => doing.togglePin(selected),
        W: () => doing.explain(selected),
        Escape: () => board.select(null),
      }
    : {};
  return {
    ...looking,
    ...onSelected,
    '←': () => go(board, besideInLane, -1),
    '→': () => go(board, besideInLane, 1),
    '↑': () => go(board, besideInNextLane, -1),
    '↓': () => go(board, besideInNextLane, 1),
  };
}

/** The keys of keys.ts, while the board or nothing at all has the focus. */
export function useBoardKeys(board: Board): void {
  useKeyPresses((event) => {
    if (keysAreTaken(event)) return;
    const target = event.target as Node;
    if (target !== document.body && !board.surface.current?.contains(target)) return;
    const act = keysOf(board)[keyName(event)];
    if (!act) return;
    event.preventDefault();
    act();
  });
}
