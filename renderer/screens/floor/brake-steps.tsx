import { drawProfile } from '../../../core/part/drawing.ts';
import { blankBasisOf, formingOf } from '../../../core/part/forming.ts';
import { brakeSteps, type BrakeStep } from '../../../core/report/brake-steps.ts';
import type { FloorWork } from '../../../core/report/floor.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { ProfileDrawing } from '../shop/parts/profile-drawing.tsx';
import { StepCard } from './step-card.tsx';
import { useStepTurn } from './step-turn.ts';

/** The bends in their order, one at a time: what lies at the gauge and how far, which way, through what angle. */
export function BrakeSteps({ shop, work: { row, operation } }: { shop: Shop; work: FloorWork }) {
  const { line, part } = row;
  const material = shop.material.find(({ id }) => id === line.materialId);
  const gauge = material?.gauges.find(({ label }) => label === line.gauge);
  const basis = blankBasisOf(shop);
  const steps = material && gauge ? brakeSteps(part, material, gauge, basis) : [];
  const { shown, turn } = useStepTurn(operation.id, steps.length, 0);
  const step = steps[shown];
  if (!step || !material || !gauge) return null;
  const next = steps[shown + 1];
  const drawing = drawProfile(part.profile, formingOf(material, gauge, basis));
  return (
    <StepCard
      id={`${operation.id} ${shown}`}
      {...{ shown, turn }}
      count={steps.length}
      how={step.gauged === '' ? step.note : step.gauged}
      figures={step.figures}
      unit={step.unit}
      words={[
        <b key="do">{`${step.before === '' ? '' : `${capital(step.before)}, then `}${bendOf(step)}.`}</b>,
        ...(step.gauged !== '' && step.note !== '' ? [step.note] : []),
        `Painted side ${step.paint}.${step.figures === '' ? '' : ' Bend line to the stops, as the blank was worked out: check it on the first piece.'}`,
      ]}
      next={next ? `${next.before === '' ? '' : `${next.before}, then `}${bendOf(next)}` : null}
      picture={
        drawing.ok && (
          <ProfileDrawing
            drawing={drawing.value}
            thicknessMm={gauge.thicknessMm}
            label={`Cross-section of ${part.name}, ${step.step} marked`}
            lengths={{ flangesMm: part.profile.flangesMm, units: shop.settings, far: true }}
            marked={step.step}
          />
        )
      }
    />
  );
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** "bend 2 up, 90° turned, 90° included" */
const bendOf = ({ step, direction, angle }: BrakeStep): string => `${step} ${direction}, ${angle}`;
