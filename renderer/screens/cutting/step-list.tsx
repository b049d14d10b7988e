import { ArrowDown, ArrowUp, Copy, GripVertical, Pencil, Trash2 } from 'lucide-react';
import { useState, type KeyboardEvent } from 'react';
import {
  Button as Handle,
  DropIndicator,
  GridList,
  GridListItem,
  useDragAndDrop,
} from 'react-aria-components';
import type { CutStep } from '../../../core/cutting/step.ts';
import type { RunCut } from '../../../core/planning/cut-run.ts';
import { stepRows, type StepRow } from '../../../core/report/cutting-words.ts';
import { IconButton } from '../../ui/icon-button.tsx';
import { CopyToRun } from './copy-to-run.tsx';
import { GroupHead, itemsOf, numberIn, useFolded } from './step-groups.tsx';
import { ListTools } from './list-tools.tsx';
import { StepDialog } from './step-dialog.tsx';
import type { ReadyCuts } from '../../queries/cuts.ts';
import styles from './cutting.module.css';
import { stepsOf, type StepEdit } from './use-steps.ts';

interface Props {
  query: ReadyCuts;
  cut: RunCut;
  /** null: the list is only to be read. */
  edit: StepEdit | null;
}

const HEADS = [
  '',
  'No.',
  'Feed',
  'Back gauge',
  'Cut',
  'Cuts',
  'Stroke',
  'Drop, behind the blade',
  'Held, in front',
  'For lines',
  'Blanks',
  '',
];

/** The settings in the order to cut. Drag a row, or hold Alt and press an arrow; Enter changes one, Delete takes it out. */
export function StepList({ query, cut, edit }: Props) {
  const [copied, setCopied] = useState<CutStep | null>(null);
  const [changing, setChanging] = useState<CutStep | null>(null);
  const steps = stepsOf(cut);
  const rows = cut.plan.ok ? stepRows(cut.plan.value, cut.input) : [];
  const [folded, fold] = useFolded();
  const items = itemsOf(rows, folded);
  const dragAndDropHooks = useRowDrag(edit);
  return (
    <div className={styles.scroll}>
      <div className={styles.steps} onKeyDownCapture={(event) => edit && pressed(event, edit)}>
        <Heads />
        <GridList
          // A list that can be dragged and one that cannot are two: the grid's hooks differ.
          key={edit ? 'edit' : 'read'}
          aria-label="Steps"
          items={items}
          {...(edit ? { dragAndDropHooks } : {})}
          onAction={(key) => {
            const group = items.find(({ id }) => id === key)?.group;
            if (group) fold(group.heading);
            else if (edit) setChanging(steps[Number(key) - 1] ?? null);
          }}
          renderEmptyState={() => <p className={styles.padded}>No steps: every one was removed.</p>}
          dependencies={[cut, folded]}
        >
          {({ id, row, group }) =>
            group ? (
              <GroupHead id={id} group={group} />
            ) : (
              <GridListItem id={id} textValue={spoken(row)} className={styles.step ?? ''}>
                <StepCells row={row} movable={edit !== null} />
                {edit && (
                  <StepTools
                    {...{ row, edit, last: rows.length }}
                    onChange={() => setChanging(steps[row.number - 1] ?? null)}
                    onCopy={() => setCopied(steps[row.number - 1] ?? null)}
                  />
                )}
              </GridListItem>
            )
          }
        </GridList>
        {edit && <ListTools query={query} cut={cut} edit={edit} />}
      </div>
      {edit && changing && (
        <StepDialog
          {...{ cut, step: changing, shop: query.shop }}
          onDone={(step) => edit.change(changing.number - 1, step)}
          onClose={() => setChanging(null)}
        />
      )}
      {edit && copied && (
        <CopyToRun {...{ query, cut, edit, step: copied }} onClose={() => setCopied(null)} />
      )}
    </div>
  );
}

const spoken = ({ number, setting, drop }: StepRow): string => `Step ${number}, ${setting}, ${drop}`;

const Heads = () => (
  <div className={styles.stepHead} aria-hidden>
    {HEADS.map((head, i) => (
      <span key={i}>{head}</span>
    ))}
  </div>
);

/** Rows are dragged to another place; a line shows where one would come. */
function useRowDrag(edit: StepEdit | null) {
  const { dragAndDropHooks } = useDragAndDrop({
    getItems: (keys) => [...keys].map((key) => ({ 'text/plain': String(key) })),
    renderDropIndicator: (target) => <DropIndicator target={target} className={styles.dropHere ?? ''} />,
    onReorder({ keys, target }) {
      const from = Number([...keys][0]) - 1;
      const to = numberIn(target.key) - 1 + (target.dropPosition === 'after' ? 1 : 0);
      if (Number.isNaN(from)) return;
      edit?.move(from, to > from ? to - 1 : to);
    },
  });
  return dragAndDropHooks;
}

/** Alt and an arrow move the row with the focus, Delete takes it out. */
function pressed(event: KeyboardEvent, edit: StepEdit): void {
  const row = (event.target as HTMLElement).closest('[data-key]');
  const at = Number(row?.getAttribute('data-key') ?? NaN) - 1;
  const by = event.altKey ? { ArrowUp: -1, ArrowDown: 1 }[event.key] : undefined;
  if (Number.isNaN(at) || (by === undefined && event.key !== 'Delete')) return;
  event.preventDefault();
  event.stopPropagation();
  if (by === undefined) edit.remove(at);
  else edit.move(at, at + by);
}

const StepCells = ({ row, movable }: { row: StepRow; movable: boolean }) => (
  <>
    {movable ? (
      <Handle slot="drag" className={styles.handle ?? ''}>
        <GripVertical size={16} aria-label="Drag" />
      </Handle>
    ) : (
      <span />
    )}
    <span>{row.number}</span>
    <span>{row.feed}</span>
    <span className={styles.setting}>{row.setting}</span>
    <span>{row.cut}</span>
    <span>{`${row.cutsEach} each`}</span>
    <span>{row.stroke}</span>
    <span>{row.drop}</span>
    <span>{row.held}</span>
    <span>{row.lines}</span>
    <span className={styles.right}>{`${row.blanks} (${row.blanksSoFar})`}</span>
  </>
);

function StepTools({
  row: { number },
  last,
  edit,
  onChange,
  onCopy,
}: {
  row: StepRow;
  last: number;
  edit: StepEdit;
  onChange: () => void;
  onCopy: () => void;
}) {
  const at = number - 1;
  return (
    <span className={styles.tools}>
      <IconButton small label={`Change step ${number}`} keys="Enter" icon={Pencil} onPress={onChange} />
      <IconButton
        small
        label={`Move step ${number} up`}
        keys="Alt+↑"
        icon={ArrowUp}
        isDisabled={at === 0}
        onPress={() => edit.move(at, at - 1)}
      />
      <IconButton
        small
        label={`Move step ${number} down`}
        keys="Alt+↓"
        icon={ArrowDown}
        isDisabled={number === last}
        onPress={() => edit.move(at, at + 1)}
      />
      <IconButton small label={`Copy step ${number} to another run`} icon={Copy} onPress={onCopy} />
      <IconButton
        small
        label={`Remove step ${number}`}
        keys="Delete"
        icon={Trash2}
        onPress={() => edit.remove(at)}
      />
    </span>
  );
}
