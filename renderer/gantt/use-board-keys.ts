import type { RefObject } from 'react';
import { keyName, keysAreTaken } from '../ui/key-name.ts';
import { useKeyPresses } from '../ui/use-key-presses.ts';
import { dropAt, movable, pastRun, runWith, sameStep, shifted, toEnd, type By } from './block-moves.ts';
import type { BoardDoing } from './doing.ts';
import { besideInLane, besideInNextLane, findBar } from './drop.ts';
import type { Lane } from './lanes.ts';
import { panned, zoomed, type Scale } from './scale.ts';
import { joined, rangeInLane, toggled } from './selection.ts';
import { useBoardView } from './view.ts';

interface Board {
  readonly surface: RefObject<HTMLElement | null>;
  readonly lanes: readonly Lane[];
  readonly scale: Scale | null;
  readonly selected: string | null;
  readonly chosen: readonly string[];
  readonly doing: BoardDoing;
  readonly look: (scale: Scale) => void;
  readonly fit: () => void;
  readonly goToNow: () => void;
}

export const ZOOM_STEP = 1.5;
const PAN_SHARE = 0.2;

type Keys = Readonly<Record<string, () => void>>;
type Beside = typeof besideInLane;

/** Move what is selected to the next machine above or below that can do it, at about the same time. */
function moveToMachine({ lanes, doing, chosen, selected }: Board, by: By): void {
  const found = findBar(lanes, selected);
  const bars = found ? sameStep(lanes, chosen, found.bar.operation) : [];
  const operations = bars.map((bar) => bar.operation);
  if (!found || !bars[0]) return;
  const able = doing.able(operations);
  const beside = by === 1 ? lanes.slice(found.lane + 1) : lanes.slice(0, found.lane).reverse();
  const target = beside.find(({ machine }) => able.has(machine.id));
  if (target) doing.move([dropAt(target, operations, bars[0].start)]);
  else if (beside[0]) doing.refuse(operations, beside[0].machine.id);
}

/** The operation beside the selected one; the first on the board while none is. */
function nextTo({ lanes, selected }: Board, beside: Beside, by: By): string | null {
  if (findBar(lanes, selected) && selected) return beside(lanes, selected, by);
  return lanes.find((lane) => lane.bars.length > 0)?.bars[0]?.operation ?? null;
}

const go = (board: Board, beside: Beside, by: By): void =>
  useBoardView.getState().select(nextTo(board, beside, by));

/** Go on, and keep what is selected. */
const goKeeping = (board: Board, beside: Beside, by: By): void =>
  useBoardView.getState().choose(board.chosen, nextTo(board, beside, by));

/** Take in everything from where the range began to the one beside. */
function extend(board: Board, by: By): void {
  const { anchor, choose } = useBoardView.getState();
  const to = nextTo(board, besideInLane, by);
  if (to !== null) choose(rangeInLane(board.lanes, anchor, to), to, anchor);
}

function selectRun({ lanes, chosen }: Board, selected: string): void {
  const run = lanes.flatMap((lane) => runWith(lane, selected) ?? []);
  useBoardView.getState().choose(joined(chosen, run), selected);
}

const lookingKeys = ({ look, fit, goToNow }: Board, scale: Scale): Keys => ({
  '+': () => look(zoomed(scale, ZOOM_STEP, scale.width / 2)),
  '=': () => look(zoomed(scale, ZOOM_STEP, scale.width / 2)),
  '-': () => look(zoomed(scale, 1 / ZOOM_STEP, scale.width / 2)),
  PageUp: () => look(panned(scale, -PAN_SHARE * scale.width)),
  PageDown: () => look(panned(scale, PAN_SHARE * scale.width)),
  '0': fit,
  T: goToNow,
});

function keysOnSelected(board: Board, selected: string): Keys {
  const { lanes, doing, chosen } = board;
  const { choose, select } = useBoardView.getState();
  const movingOn = (keys: Keys): Keys => (movable(lanes, chosen).length > 0 ? keys : {});
  return {
    ...movingOn({
      'Alt+←': () => doing.move(shifted(lanes, chosen, -1)),
      'Alt+→': () => doing.move(shifted(lanes, chosen, 1)),
      'Alt+Shift+←': () => doing.move(pastRun(lanes, chosen, -1)),
      'Alt+Shift+→': () => doing.move(pastRun(lanes, chosen, 1)),
      'Alt+↑': () => moveToMachine(board, -1),
      'Alt+↓': () => moveToMachine(board, 1),
      'Alt+Home': () => doing.move(toEnd(lanes, chosen, 'first')),
      'Alt+End': () => doing.move(toEnd(lanes, chosen, 'last')),
      'Alt+PageDown': () => doing.postpone(chosen),
    }),
    'Shift+←': () => extend(board, -1),
    'Shift+→': () => extend(board, 1),
    'Ctrl+Space': () => choose(toggled(chosen, [selected]), selected),
    G: () => selectRun(board, selected),
    S: () => doing.splitRun(selected),
    Space: () => doing.togglePin(chosen),
    W: () => doing.explain(selected),
    Escape: () => select(null),
  };
}

function keysOf(board: Board): Keys {
  return {
    ...(board.scale ? lookingKeys(board, board.scale) : {}),
    ...(board.selected === null ? {} : keysOnSelected(board, board.selected)),
    '←': () => go(board, besideInLane, -1),
    '→': () => go(board, besideInLane, 1),
    '↑': () => go(board, besideInNextLane, -1),
    '↓': () => go(board, besideInNextLane, 1),
    'Ctrl+←': () => goKeeping(board, besideInLane, -1),
    'Ctrl+→': () => goKeeping(board, besideInLane, 1),
    'Ctrl+↑': () => goKeeping(board, besideInNextLane, -1),
    'Ctrl+↓': () => goKeeping(board, besideInNextLane, 1),
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
