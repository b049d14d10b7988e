import type { ReactNode } from 'react';
import { drawProfile } from '../../../core/part/drawing.ts';
import { formingOf, blankBasisOf } from '../../../core/part/forming.ts';
import { blanksWords } from '../../../core/report/blank-words.ts';
import { metalWords } from '../../../core/report/metal-words.ts';
import { whyPeople } from '../../../core/report/people-words.ts';
import { dispatchLists, type SetupStep } from '../../../core/report/dispatch.ts';
import { stepDone, stepTitle } from '../../../core/part/stage.ts';
import { routingOf } from '../../../core/planning/routing.ts';
import { lineLotWords } from '../../../core/planning/line-lot.ts';
import { metalName } from '../../../core/shop/metal-name.ts';
import { operationIdOf, stageOfOperation } from '../../../core/shop/order.ts';
import { formatClock, formatWall, formatWallDate } from '../../../core/time/wall.ts';
import { instant } from '../../../core/units/brand.ts';
import { formatDuration } from '../../../core/units/duration.ts';
import { formatCutLength, formatCutSize } from '../../../core/units/length.ts';
import { Button } from '../../ui/button.tsx';
import { Swatch } from '../../ui/choice.tsx';
import { Notes } from '../../ui/notes.tsx';
import { Tag } from '../../ui/tag.tsx';
import { partAddress } from '../print/part-choice.ts';
import { ProfileDrawing } from '../shop/parts/profile-drawing.tsx';
import styles from './board.module.css';
import type { Chosen } from './chosen.ts';
import { writeNumber } from '../../../core/units/number.ts';

const Fact = ({ label, children }: { label: string; children: ReactNode }) => (
  <div className={styles.fact}>
    <dt>{label}</dt>
    <dd>{children}</dd>
  </div>
);

const dayAndTime = (at: number, timeZone: string): string =>
  `${formatWallDate(instant(at), timeZone)}, ${formatClock(instant(at), timeZone)}`;

/** The part's cross-section, where its metal is known. */
export function PartPicture({ chosen: { shop, operation } }: { chosen: Chosen }) {
  const { line, part } = operation;
  const material = shop.material.find((one) => one.id === line.materialId);
  const gauge = material?.gauges.find((one) => one.label === line.gauge);
  if (!material || !gauge) return null;
  const drawing = drawProfile(part.profile, formingOf(material, gauge, blankBasisOf(shop)));
  if (!drawing.ok) return null;
  return (
    <div className={styles.picture}>
      <ProfileDrawing
        drawing={drawing.value}
        thicknessMm={gauge.thicknessMm}
        label={`Cross-section of ${part.name}`}
      />
    </div>
  );
}

/** What of its metal is not in the shop. */
function Awaited({ chosen: { shop, plan, operation } }: { chosen: Chosen }) {
  const words = operation.metal ? metalWords(shop, operation.metal, plan.problem.input.now) : [];
  return words.length === 0 ? null : <Fact label="Metal not here">{words.join(' ')}</Fact>;
}

export function Facts({ chosen }: { chosen: Chosen }) {
  const { shop, bar, lane, operation } = chosen;
  const { timeZone } = shop.settings;
  const { line, terms, quantity, extra, part, blank, people } = operation;
  const why = whyPeople(lane.machine, operation, shop.settings);
  return (
    <dl className={styles.facts}>
      <Fact label="Part">{part.name}</Fact>
      <Fact label="Quantity">
        {blanksWords(quantity, extra)} × {formatCutLength(line.lengthMm, shop.settings)}
      </Fact>
      <Fact label="Metal">
        <Swatch hex={bar.hex} /> {metalName(shop, line)}
      </Fact>
      {operation.lot !== null && <Fact label="Lot">{lineLotWords(operation.lot)}</Fact>}
      {operation.metal && <Awaited chosen={chosen} />}
      <Fact label="Blank">{formatCutSize(blank.girthMm, blank.lengthMm, shop.settings)}</Fact>
      <Fact label="Machine">
        {lane.machine.name}, position {bar.position + 1} of {lane.bars.length}
      </Fact>
      {people > 1 && <Fact label="People">{`${people}: ${why}`}</Fact>}
      <Fact label="Start">{dayAndTime(bar.start, timeZone)}</Fact>
      <Fact label="End">{dayAndTime(bar.end, timeZone)}</Fact>
      <Fact label="Due">{dayAndTime(bar.due, timeZone)}</Fact>
      {terms.release !== null && <Fact label="Not before">{dayAndTime(terms.release, timeZone)}</Fact>}
      {terms.notes.length > 0 && (
        <Fact label="Note">
          <Notes notes={terms.notes} />
        </Fact>
      )}
    </dl>
  );
}

/** The line's steps and the neighbours in the queue, each a jump. */
export function Neighbours({ chosen, select }: { chosen: Chosen; select: (operation: string) => void }) {
  const { shop, plan, bar, lane, operation } = chosen;
  const { timeZone } = shop.settings;
  const steps = plan.schedule.operations
    .filter((o) => o.job === bar.lineId)
    .sort((a, b) => a.index - b.index);
  const open = new Set(steps.map((step) => step.operation));
  const done = routingOf(operation.part).filter((stage) => !open.has(operationIdOf(bar.lineId, stage)));
  const beside = [lane.bars[bar.position - 1], lane.bars[bar.position + 1]];
  return (
    <section className={styles.part}>
      <h3>Routing</h3>
      <div className={styles.jumps} role="group" aria-label="Routing">
        {done.map((stage) => (
          <Tag key={stage} look="fine">
            {stepDone[stage]}
          </Tag>
        ))}
        {steps.map((step) => (
          <Button
            key={step.operation}
            small
            isDisabled={step.operation === bar.operation}
            onPress={() => select(step.operation)}
          >
            {`${stepTitle[stageOfOperation(step.operation)]} ${formatWall(instant(step.start), timeZone)}`}
          </Button>
        ))}
      </div>
      <h3>In the queue</h3>
      <div className={styles.jumps}>
        {beside.map((other, i) =>
          other ? (
            <Button key={other.operation} small look="quiet" onPress={() => select(other.operation)}>
              {i === 0 ? `‹ after ${other.lineId}` : `before ${other.lineId} ›`}
            </Button>
          ) : (
            <span key={i} className={styles.advice}>
              {i === 0 ? 'first in the queue' : 'last in the queue'}
            </span>
          ),
        )}
      </div>
    </section>
  );
}

const stepWords = ({ attribute, from, to }: SetupStep): string => `${attribute} ${from ?? 'unknown'} → ${to}`;

/** What the machine has to change before this operation, and why. */
export function ChangeoverWhy({ chosen: { shop, plan, bar, lane } }: { chosen: Chosen }) {
  const list = dispatchLists(shop, plan, instant(bar.changeoverStart), instant(bar.end)).find(
    ({ machine }) => machine.id === lane.machine.id,
  );
  const run = list?.runs.find(({ rows }) => rows[0]?.operationId === bar.operation);
  const needed = bar.changeoverSeconds > 0;
  return (
    <section className={styles.part}>
      <h3>
        Changeover before it
        {needed &&
          `: ${formatDuration(bar.changeoverSeconds)}${run?.changeover?.firstPiece ? ', first piece included' : ''}`}
      </h3>
      {needed ? (
        <ul>
          {(run?.changeover?.steps ?? []).map((step) => (
            <li key={step.attribute}>{stepWords(step)}</li>
          ))}
        </ul>
      ) : (
        <p className={styles.advice}>None: the machine is set up for it.</p>
      )}
    </section>
  );
}

/** How the operation's time was made. */
export function TimeReasons({ chosen: { shop, operation, lane } }: { chosen: Chosen }) {
  const able = operation.machines.find((machine) => machine.id === lane.machine.id);
  if (!able) return null;
  const figure = (value: number, places: number) => writeNumber(value, shop.settings.decimals, places);
  return (
    <details className={styles.part}>
      <summary>Time on the machine: {formatDuration(able.seconds)}</summary>
      <table className={styles.reasons}>
        <tbody>
          {able.estimate.reasons.map((reason) => (
            <tr key={reason.label}>
              <th scope="row">{reason.label}</th>
              <td>
                {figure(reason.count, 2)} × {figure(reason.each, 1)} s
              </td>
              <td>{formatDuration(reason.seconds)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}

/** What someone should look at before it is run on this machine, and the paper that goes along. */
export function LookFirst({ chosen: { operation, lane } }: { chosen: Chosen }) {
  const warnings = operation.machines.find(({ id }) => id === lane.machine.id)?.warnings ?? [];
  return (
    <section className={styles.part}>
      {warnings.length > 0 && <h3>Check first</h3>}
      {warnings.map(({ rule, message, advice }) => (
        <p key={`${rule} ${message}`} className={styles.advice}>
          <Tag look="warn">{rule}</Tag> {message} {advice}
        </p>
      ))}
      <a href={partAddress({ what: 'traveller', id: operation.line.id })}>Traveller with drawing</a>
    </section>
  );
}
