import { Button } from '../../ui/button.tsx';
import { Dialog } from '../../ui/dialog.tsx';
import type { Counts } from './use-counts.ts';

interface Props {
  pieces: number;
  counts: Counts;
  isOpen: boolean;
  onDone: (counts: Counts) => void;
  onClose: () => void;
}

/** Asks about pieces that nobody counted before an operation is reported done. */
export function DoneDialog({ pieces, counts, isOpen, onDone, onClose }: Props) {
  const missing = pieces - counts.good - counts.scrapped;
  const answer = (made: Counts) => {
    onClose();
    onDone(made);
  };
  return (
    <Dialog
      title={`${missing} of ${pieces} pieces are not counted`}
      isOpen={isOpen}
      onClose={onClose}
      actions={
        <>
          <Button onPress={onClose}>Keep counting</Button>
          <Button onPress={() => answer({ ...counts, scrapped: counts.scrapped + missing })}>
            They are scrapped
          </Button>
          <Button look="primary" autoFocus onPress={() => answer({ ...counts, good: counts.good + missing })}>
            They are good
          </Button>
        </>
      }
    >
      <p>Good ones go on to the next step. Scrapped ones are put on a line of their own, to be made again.</p>
    </Dialog>
  );
}
