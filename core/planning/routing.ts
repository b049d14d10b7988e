import { hits } from '../part/girth.ts';
import type { Part } from '../part/part.ts';
import type { FurtherStep } from '../part/further-step.ts';
import { isFurther, STAGES, type Stage } from '../part/stage.ts';
import { lineOfOperation, operationIdOf, stageOfOperation, type OrderLine } from '../shop/order.ts';
import type { OperationRecord } from '../shop/plan.ts';
import type { Shop } from '../shop/state.ts';

type Routed = Pick<Part, 'profile' | 'steps'>;

/** The steps of a part, in the order of the work. Flat parts skip the brake; further steps are those that it asks for. */
export const routingOf = (part: Routed): Stage[] =>
  STAGES.filter((stage) => {
    if (isFurther(stage)) return stepAt(part, stage) !== undefined;
    return stage === 'shear' || hits(part.profile) > 0;
  });

/** What a part says of a further step; nothing of shearing and bending. */
export const stepAt = ({ steps }: Pick<Part, 'steps'>, stage: Stage): FurtherStep | undefined =>
  steps.find((step) => step.stage === stage);

/** The steps ahead of one and behind it in a part's routing; null: there is none. */
export const stageBefore = (part: Routed, stage: Stage): Stage | null => beside(part, stage, -1);
export const stageAfter = (part: Routed, stage: Stage): Stage | null => beside(part, stage, 1);

function beside(part: Routed, stage: Stage, by: number): Stage | null {
  const routing = routingOf(part);
  return routing[routing.indexOf(stage) + by] ?? null;
}

const earlier = (stage: Stage): readonly Stage[] => STAGES.slice(0, STAGES.indexOf(stage));
const later = (stage: Stage): readonly Stage[] => STAGES.slice(STAGES.indexOf(stage) + 1);

/** May a step begin on the first pieces of the one before? Blanks are passed on lot by lot, but a line is sent away whole. */
export const inLots = (before: Stage, to: Stage | null): boolean => before === 'shear' && to !== 'outside';

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
