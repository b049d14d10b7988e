import { BookMarked, Copy, Group, Layers, Plus } from 'lucide-react';
import { useState } from 'react';
import type { RunCut } from '../../../core/planning/cut-run.ts';
import { Button } from '../../ui/button.tsx';
import type { ReadyCuts } from '../../queries/cuts.ts';
import { AddSheets } from './add-sheets.tsx';
import { CopyToRun } from './copy-to-run.tsx';
import styles from './cutting.module.css';
import { GroupSteps } from './group-steps.tsx';
import { KeptLists } from './kept-lists.tsx';
import { StepDialog } from './step-dialog.tsx';
import type { StepEdit } from './use-steps.ts';

/** What is done to a list as a whole: a step or sheets more, steps grouped, all of it copied or kept by a name. */
export function ListTools({ query, cut, edit }: { query: ReadyCuts; cut: RunCut; edit: StepEdit }) {
  const [open, setOpen] = useState<'step' | 'sheets' | 'copy' | 'group' | 'kept' | null>(null);
  const close = () => setOpen(null);
  return (
    <div className={styles.listTools}>
      <Button small icon={Plus} onPress={() => setOpen('step')}>
        Add a step
      </Button>
      <Button small icon={Layers} onPress={() => setOpen('sheets')}>
        Add sheets
      </Button>
      <Button small icon={Copy} onPress={() => setOpen('copy')}>
        Copy the list
      </Button>
      <Button small icon={Group} onPress={() => setOpen('group')}>
        Group steps
      </Button>
      <Button small icon={BookMarked} onPress={() => setOpen('kept')}>
        Lists by name
      </Button>
      {open === 'step' && (
        <StepDialog shop={query.shop} cut={cut} step={null} onDone={edit.add} onClose={close} />
      )}
      {open === 'sheets' && <AddSheets shop={query.shop} cut={cut} edit={edit} onClose={close} />}
      {open === 'group' && <GroupSteps cut={cut} edit={edit} onClose={close} />}
      {open === 'kept' && <KeptLists shop={query.shop} cut={cut} edit={edit} onClose={close} />}
      {open === 'copy' && <CopyToRun query={query} cut={cut} step={null} edit={edit} onClose={close} />}
    </div>
  );
}
