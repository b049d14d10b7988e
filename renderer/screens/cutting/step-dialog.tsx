import { useState } from 'react';
import { blankSizes, hundredth } from '../../../core/cutting/run.ts';
import type { CutStep, Destination } from '../../../core/cutting/step.ts';
import type { RunCut } from '../../../core/planning/cut-run.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { formatCutSize } from '../../../core/units/length.ts';
import { Button } from '../../ui/button.tsx';
import { Select } from '../../ui/choice.tsx';
import { Dialog } from '../../ui/dialog.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { Length } from '../../form/parsed-field.tsx';
import styles from './cutting.module.css';
import { groupIn, newStackIn, stacksIn, stepsOf } from './use-steps.ts';

interface Props {
  shop: Shop;
  cut: RunCut;
  /** The step to change; null: one to add, put last. */
  step: CutStep | null;
  onDone: (step: CutStep) => void;
  onClose: () => void;
}

const CUTS = [
  { id: 'width', name: 'Rip: sets the girth' },
  { id: 'length', name: 'Crosscut: sets the length' },
] as const;

interface Place {
  readonly id: string;
  readonly name: string;
  readonly to: Destination;
}

const placeId = (to: Destination): string =>
  to.kind === 'blank' ? `${to.girthMm} ${to.lengthMm}` : to.kind === 'stack' ? `stack ${to.stack}` : to.kind;

/** Where a piece can go: the run's blank sizes, any stack, one of its own, kept, or thrown away. */
function places(shop: Shop, cut: RunCut, from: string, own: readonly (Destination | null)[]): Place[] {
  const place = (name: string, to: Destination): Place => ({ id: placeId(to), name, to });
  const sheets = cut.plan.ok ? cut.plan.value.groups.map(({ id }) => id) : [];
  const stacks = stacksIn(cut).filter((id) => !sheets.includes(id));
  const fresh = newStackIn(cut, from);
  // A size that nobody asks for any more is told as a fault of the list; here it stays what it is until it is changed.
  const sizes = [...blankSizes(cut.input), ...own.filter((to) => to?.kind === 'blank')];
  const blanks = new Map(
    sizes.map(({ girthMm, lengthMm }) => [
      `${girthMm} ${lengthMm}`,
      { kind: 'blank', girthMm, lengthMm } as const,
    ]),
  );
  return [
    ...[...blanks.values()].map((to) =>
      place(`Blank ${formatCutSize(to.girthMm, to.lengthMm, shop.settings)}`, to),
    ),
    ...stacks.map((stack) => place(`Stack ${stack}`, { kind: 'stack', stack })),
    place(`A new stack, ${fresh}`, { kind: 'stack', stack: fresh }),
    place('Remnant', { kind: 'remnant' }),
    place('Scrap', { kind: 'scrap' }),
  ];
}

/** What becomes of what is left, where nothing was said of the stack. */
const LEFT_OVER = 'scrap';

/** A setting of one's own, or one of the list changed in any figure; the list is checked with it. */
export function StepDialog({ shop, cut, step, onDone, onClose }: Props) {
  const stacks = stacksIn(cut);
  const [stack, setStack] = useState(step?.stack ?? stacks[0] ?? 'A');
  const [axis, setAxis] = useState<CutStep['axis']>(step?.axis ?? 'width');
  const [sizeMm, setSize] = useState(step?.sizeMm ?? NaN);
  const [cutsEach, setCuts] = useState(step?.cutsEach ?? 1);
  const said = stepsOf(cut).findLast((one) => one.stack === stack)?.rest ?? null;
  const gives = places(shop, cut, stack, [step?.to ?? null, said]);
  const [to, setTo] = useState(step ? placeId(step.to) : (gives[0]?.id ?? 'scrap'));
  const [rest, setRest] = useState<string | null>(null);
  const left = rest ?? (said ? placeId(said) : LEFT_OVER);
  const ready = sizeMm > 0 && cutsEach >= 1;
  const placeOf = (id: string): Destination => gives.find((one) => one.id === id)?.to ?? { kind: 'scrap' };
  const done = () => {
    onDone(stepOf(cut, step, { stack, axis, sizeMm, cutsEach, to: placeOf(to), rest: placeOf(left) }));
    onClose();
  };
  return (
    <Dialog
      title={step ? `Change step ${step.number}` : 'Add a step'}
      isOpen
      onClose={onClose}
      actions={
        <Button look="primary" isDisabled={!ready} onPress={done}>
          {step ? 'Change' : 'Add'}
        </Button>
      }
    >
      <div className={styles.form}>
        <Select
          label="Feed from stack"
          options={stacks.map((id) => ({ id, name: id }))}
          value={stack}
          onChange={setStack}
        />
        <Select label="Cut" options={CUTS} value={axis} onChange={(id) => setAxis(id as CutStep['axis'])} />
        <Length
          label="Size cut off"
          units={shop.settings.units}
          value={sizeMm}
          onChange={setSize}
          help="beyond the back gauge it is cut to a scribed line"
        />
        <NumberField label="Cuts on each piece" whole min={1} value={cutsEach} onChange={setCuts} />
        <Select label="Gives" options={gives} value={to} onChange={setTo} />
        <Select
          label={`Left over, after the last step of stack ${stack}`}
          options={gives}
          value={left}
          onChange={setRest}
        />
      </div>
    </Dialog>
  );
}

type Chosen = Pick<CutStep, 'stack' | 'axis' | 'sizeMm' | 'cutsEach' | 'to' | 'rest'>;

/** The step as the list keeps it, cut to the gauge where that reaches; the list itself counts what is fed and finished. */
function stepOf(cut: RunCut, step: CutStep | null, chosen: Chosen): CutStep {
  const { min, max } = cut.input.shear.backGaugeMm;
  // A figure that was not touched stays what it was, to the hundredth and beyond.
  const sizeMm = chosen.sizeMm === step?.sizeMm ? step.sizeMm : hundredth(chosen.sizeMm);
  const { continuousFrom } = cut.input.shear;
  return {
    ...chosen,
    number: step?.number ?? stepsOf(cut).length + 1,
    group: groupIn(cut, chosen.stack),
    fed: 0,
    sizeMm,
    backGaugeMm: sizeMm >= min && sizeMm <= max ? sizeMm : null,
    stroke: continuousFrom !== null && chosen.cutsEach >= continuousFrom ? 'continuous' : 'single',
    lines: [],
    blanks: 0,
    blanksSoFar: 0,
  };
}
