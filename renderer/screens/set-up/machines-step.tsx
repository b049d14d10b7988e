import { stillUsual, USUAL_MACHINE_BASIS } from '../../../core/estimate/usual-machine.ts';
import { addMachines } from '../../../core/report/remedies.ts';
import { inWorkOrder, type Machine } from '../../../core/shop/machine.ts';
import type { Stage } from '../../../core/part/stage.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { FormFrame } from '../../form/form-frame.tsx';
import { RowsFromFile } from '../../form/pasted-rows.tsx';
import { useAct } from '../../form/use-act.ts';
import { useRowForm } from '../../form/use-row-form.ts';
import { placeOf } from '../../router.ts';
import { Button } from '../../ui/button.tsx';
import { Tag } from '../../ui/tag.tsx';
import { toastError } from '../../ui/toast.tsx';
import { LimitFields } from '../shop/machines/limit-fields.tsx';
import styles from './set-up.module.css';
import { StepFoot } from './step-foot.tsx';
import { useGoOn } from './steps.ts';

const STAGES: readonly Stage[] = ['shear', 'brake'];

/** A shear and a brake with usual figures, each to be corrected by its plate. */
export function MachinesStep({ shop }: { shop: Shop }) {
  const goOn = useGoOn(shop);
  const act = useAct();
  const lacking = STAGES.filter((stage) => !shop.machine.some((machine) => machine.stage === stage));
  const offers = (lacking.length > 0 ? [lacking] : STAGES.map((stage) => [stage])).map((stages) =>
    addMachines(shop, stages),
  );
  return (
    <>
      <div className={styles.body}>
        <p>
          A plan needs what each machine can take. Begin with usual figures, then read yours off the machine’s
          plate: a figure too high plans work that the machine cannot do.
        </p>
        <p className={styles.offers}>
          {offers.map(({ label, command }) => (
            <Button
              key={label}
              look={lacking.length > 0 ? 'primary' : 'usual'}
              onPress={() => void act(command).catch(toastError)}
            >
              {shop.machine.length > 0 && lacking.length === 0
                ? label.replace('Add a ', 'Add another ')
                : label}
            </Button>
          ))}
          <RowsFromFile list="machines" label="Machines from a file" />
        </p>
        {inWorkOrder(shop.machine).map((machine) => (
          <MachineCard key={machine.id} shop={shop} machine={machine} />
        ))}
        {shop.machine.length > 0 && <Hours shop={shop} />}
      </div>
      <StepFoot step="machines" does={null} onGoOn={() => goOn('machines')} />
    </>
  );
}

const LIMIT_NAMES: Readonly<Record<string, string>> = {
  maxLengthMm: 'longest piece',
  maxThicknessMm: 'thickest sheet',
  tonnes: 'force',
  dieOpeningMm: 'die opening',
  backGaugeMm: 'back gauge',
  minStripMm: 'narrowest strip',
};

function MachineCard({ shop, machine }: { shop: Shop; machine: Machine }) {
  const form = useRowForm('machine', { shop, row: machine, isNew: false, onSaved: () => undefined });
  const usual = stillUsual(form.entries, shop.settings.units);
  return (
    <FormFrame title={`${machine.id} ${machine.name}`} form={form} onSaved={() => undefined}>
      {usual.length > 0 && (
        <p>
          <Tag look="warn">usual figures, correct them</Tag>{' '}
          {`${usual.map((key) => LIMIT_NAMES[key]).join(', ')}: ${USUAL_MACHINE_BASIS[shop.settings.units]}.`}
        </p>
      )}
      <LimitFields shop={shop} form={form} />
      <p>
        <a href={placeOf('shop', 'machines', machine.id)}>Name, changeovers and times of {machine.id}</a>
      </p>
    </FormFrame>
  );
}

/** When they are open, and where that is changed. */
const Hours = ({ shop }: { shop: Shop }) => (
  <p>
    {`Hours: ${shop.calendar.map(({ name }) => name).join(', ')}. `}
    <a href={placeOf('shop', 'calendars')}>See and change the hours</a>
  </p>
);
