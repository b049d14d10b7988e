import { useState } from 'react';
import { sheetsFor } from '../../../core/edit/cutting-steps.ts';
import { keptListOf, timesFor, timesOver } from '../../../core/edit/kept-lists.ts';
import type { RunCut } from '../../../core/planning/cut-run.ts';
import { stockFor } from '../../../core/planning/run-stock.ts';
import { sentence } from '../../../core/result.ts';
import type { Shop } from '../../../core/shop/state.ts';
import type { KeptList } from '../../../core/shop/stock.ts';
import { counted } from '../../../core/units/count.ts';
import { useAct } from '../../form/use-act.ts';
import { Button } from '../../ui/button.tsx';
import { Dialog } from '../../ui/dialog.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { toastError } from '../../ui/toast.tsx';
import styles from './cutting.module.css';
import { sheetsOf, stepsOf, type StepEdit } from './use-steps.ts';

interface Props {
  shop: Shop;
  cut: RunCut;
  edit: StepEdit;
  onClose: () => void;
}

/** Lists kept by a name for parts that come again: this one kept, another used for this run, one removed. */
export function KeptLists({ shop, cut, edit, onClose }: Props) {
  const act = useAct();
  const [typed, setTyped] = useState('');
  const name = typed.trim();
  const known = shop.keptList.find(({ id }) => id === name);
  const keep = () => {
    const list = keptListOf(name, sheetsOf(cut), stepsOf(cut), known?.revision ?? 0);
    void act({ do: 'cutting.keep', list }).catch(toastError);
    onClose();
  };
  const use = (kept: KeptList) => {
    const laid = sheetsFor(kept.groups, stockFor(shop, cut.run), shop.settings);
    if (!laid.ok) return toastError(new Error(sentence(laid.issues)));
    const sheets = timesOver(laid.value, timesFor(kept, cut.input.lines) ?? 1);
    edit.put(kept.steps, `Use the list “${kept.id}” for run ${cut.run.id}`, sheets);
    onClose();
  };
  const forget = ({ id, revision }: KeptList) =>
    void act({ do: 'cutting.forget', list: { id, revision } }).catch(toastError);
  return (
    <Dialog title="Lists kept by name" isOpen onClose={onClose} actions={null}>
      <div className={styles.form}>
        <TextField
          label="Keep this list as"
          value={typed}
          onChange={setTyped}
          maxLength={80}
          help={
            known
              ? 'takes the place of the list of that name'
              : 'its sheets and steps, for runs of the same blanks'
          }
        />
        <Button isDisabled={name === '' || stepsOf(cut).length === 0} onPress={keep}>
          {known ? 'Replace the list' : 'Keep the list'}
        </Button>
        <Kept shop={shop} cut={cut} onUse={use} onForget={forget} />
      </div>
    </Dialog>
  );
}

interface KeptProps extends Pick<Props, 'shop' | 'cut'> {
  onUse: (kept: KeptList) => void;
  onForget: (kept: KeptList) => void;
}

function Kept({ shop, cut, onUse, onForget }: KeptProps) {
  if (shop.keptList.length === 0) return <p className={styles.soft}>No list is kept yet.</p>;
  return (
    <ul className={styles.kept} aria-label="Kept lists">
      {shop.keptList.map((kept) => (
        <li key={kept.id}>
          <span>
            <strong>{kept.id}</strong>
            <span className={styles.soft}>
              {givesWords(timesFor(kept, cut.input.lines), kept.steps.length)}
            </span>
          </span>
          <Button small aria-label={`Use ${kept.id} for this run`} onPress={() => onUse(kept)}>
            Use for this run
          </Button>
          <Button small aria-label={`Remove ${kept.id}`} onPress={() => onForget(kept)}>
            Remove
          </Button>
        </li>
      ))}
    </ul>
  );
}

/** Whether a kept list is for this run. */
function givesWords(times: number | null, steps: number): string {
  const size = counted(steps, 'step');
  if (times === null) return `${size}; gives other blanks than this run asks`;
  return times === 1
    ? `${size}; gives what this run asks`
    : `${size}; ${times} times over it gives what this run asks`;
}
