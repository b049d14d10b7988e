import type { Result } from '../result.ts';
import type { Edit } from '../shop/row-change.ts';
import type { Shop } from '../shop/state.ts';
import {
  beginChangeover,
  pauseOperation,
  resumeOperation,
  startOperation,
  type FloorCommand,
} from './floor-commands.ts';
import { correctRecord } from './floor-correct.ts';
import { countCuts } from './floor-cuts.ts';
import { countPieces } from './floor-counts.ts';
import { finishOperation } from './floor-done.ts';
import { suspend } from './floor-suspend.ts';

type Reported = FloorCommand<
  | 'floor.changeover'
  | 'floor.start'
  | 'floor.pause'
  | 'floor.suspend'
  | 'floor.resume'
  | 'floor.count'
  | 'floor.cut'
  | 'floor.done'
  | 'floor.correct'
>;

/** What the floor reports, as row changes or a refusal (see `applyCommand`). */
export function applyFloorCommand(shop: Shop, command: Reported): Result<Edit> {
  switch (command.do) {
    case 'floor.changeover':
      return beginChangeover(shop, command);
    case 'floor.start':
      return startOperation(shop, command);
    case 'floor.pause':
      return pauseOperation(shop, command);
    case 'floor.suspend':
      return suspend(shop, command);
    case 'floor.resume':
      return resumeOperation(shop, command);
    case 'floor.count':
      return countPieces(shop, command);
    case 'floor.cut':
      return countCuts(shop, command);
    case 'floor.done':
      return finishOperation(shop, command);
    case 'floor.correct':
      return correctRecord(shop, command);
  }
}
