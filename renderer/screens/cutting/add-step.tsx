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
import { groupOfStack, stacksOf, stepsOf } from './use-steps.ts';

interface Props {
  shop: Shop;
  cut: RunCut;
  onAdd: (step: CutStep) => void;
  onClose: () => void;
}

const CUTS = [
  { id: 'width', name: 'Rip: sets the girth' },
  { id: 'length', name: 'Crosscut: sets the length' },
] as const;

/** Where a cut piece can go: the run's blank sizes, another stack, kept, or thrown away. */
function destinations(shop: Shop, cut: RunCut): { id: string; name: string; to: Destination }[] {
  const { units } = shop.settings;
  const blanks = blankSizes(cut.input).map(({ girthMm, lengthMm }) => ({
    id: `${girthMm} ${lengthMm}`,
    name: `Blank ${formatCutSize(girthMm, lengthMm, units)}`,
    to: { kind: 'blank', girthMm, lengthMm } as const,
  }));
  const sheets = cut.plan.ok ? cut.plan.value.groups.map(({ id }) => id) : [];
  const stacks = stacksOf(cut)
    .filter((id) => !sheets.includes(id))
    .map((stack) => ({
      id: `stack ${stack}`,
      name: `Stack ${stack}`,
      to: { kind: 'stack', stack } as const,
    }));
  return [
    ...blanks,
    ...stacks,
    { id: 'remnant', name: 'Remnant', to: { kind: 'remnant' } },
    { id: 'scrap', name: 'Scrap', to: { kind: 'scrap' } },
  ];
}

/** A setting of one's own, put last; the list is checked with it. */
export function AddStep({ shop, cut, onAdd, onClose }: Props) {
  const stacks = stacksOf(cut);
  const gives = destinations(shop, cut);
  const [stack, setStack] = useState(stacks[0] ?? 'A');
  const [axis, setAxis] = useState<CutStep['axis']>('width');
  const [sizeMm, setSize] = useState(NaN);
  const [cutsEach, setCuts] = useState(1);
  const [to, setTo] = useState(gives[0]?.id ?? 'scrap');
  const ready = sizeMm > 0 && cutsEach >= 1;
  const add = () => {
    const goes = gives.find(({ id }) => id === to)?.to ?? { kind: 'scrap' };
    onAdd(stepOf(cut, { stack, axis, sizeMm, cutsEach, to: goes }));
    onClose();
  };
  return (
    <Dialog
      title="Add a step"
      isOpen
      onClose={onClose}
      actions={
        <Button look="primary" isDisabled={!ready} onPress={add}>
          Add
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
      </div>
    </Dialog>
  );
}

type Chosen = Pick<CutStep, 'stack' | 'axis' | 'sizeMm' | 'cutsEach' | 'to'>;

/** The step as the list keeps it, cut to the gauge where that reaches; the list itself counts what is fed and finished. */
function stepOf(cut: RunCut, chosen: Chosen): CutStep {
  const { min, max } = cut.input.shear.backGaugeMm;
  const sizeMm = hundredth(chosen.sizeMm);
  return {
    ...chosen,
    number: stepsOf(cut).length + 1,
    group: groupOfStack(cut, chosen.stack),
    fed: 0,
    sizeMm,
    backGaugeMm: sizeMm >= min && sizeMm <= max ? sizeMm : null,
    stroke: 'single',
    rest: null,
    lines: [],
    blanks: 0,
    blanksSoFar: 0,
  };
}
