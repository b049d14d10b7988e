import { hits } from '../part/girth.ts';
import type { Part } from '../part/part.ts';
import { STAGES, type Stage } from '../part/stage.ts';
import { lineOfOperation, operationIdOf, stageOfOperation, type OrderLine } from '../shop/order.ts';
import type { OperationRecord } from '../shop/plan.ts';
import type { Shop } from '../shop/state.ts';

/** The steps of a part, in the order of the work. Flat parts skip the brake. */
export const routingOf = (part: Pick<Part, 'profile'>): Stage[] =>
  STAGES.filter((stage) => stage === 'shear' || hits(part.profile) > 0);

/** The step that a part comes from; null: it is the first. */
export function stageBefore(part: Pick<Part, 'profile'>, stage: Stage): Stage | null {
  const routing = routingOf(part);
  return routing[routing.indexOf(stage) - 1] ?? null;
}

const earlier = (stage: Stage): readonly Stage[] => STAGES.slice(0, STAGES.indexOf(stage));
const later = (stage: Stage): readonly Stage[] => STAGES.slice(STAGES.indexOf(stage) + 1);

/** May a step begin on the first pieces of the one before? Blanks are passed on from the shear lot by lot. */
export const inLots = (before: Stage): boolean => before === 'shear';

type Find<R> = (operation: string) => R | undefined;
export const recordIn =
  ({ record }: Pick<Shop, 'record'>): Find<OperationRecord> =>
  (operation) =>
    record.find(({ id }) => id === operation);

/** What was recorded last of a line's steps before an operation, where anything was. */
export const recordBefore = <R>(find: Find<R>, operation: string): R | undefined =>
  firstOf(find, lineOfOperation(operation), earlier(stageOfOperation(operation)).toReversed());

/** What was recorded first of the steps behind it. */
export const recordAfter = <R>(find: Find<R>, operation: string): R | undefined =>
  firstOf(find, lineOfOperation(operation), later(stageOfOperation(operation)));

const firstOf = <R>(find: Find<R>, lineId: string, stages: readonly Stage[]): R | undefined =>
  stages.map((stage) => find(operationIdOf(lineId, stage))).find((record) => record !== undefined);

/** Good pieces a line needs of a step: its own, or those that the steps before, once done, have left good. */
export const piecesFor = (
  line: Pick<OrderLine, 'id' | 'quantity'>,
  stage: Stage,
  records: ReadonlyMap<string, OperationRecord>,
): number =>
  earlier(stage).reduce((pieces, before) => {
    const record = records.get(operationIdOf(line.id, before));
    return record && record.end !== null ? Math.min(pieces, record.good) : pieces;
  }, line.quantity);
