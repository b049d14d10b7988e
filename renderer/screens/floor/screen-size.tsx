import { MonitorCog } from 'lucide-react';
import { useState } from 'react';
import { Button } from '../../ui/button.tsx';
import { Dialog } from '../../ui/dialog.tsx';
import { BigButton } from './big-button.tsx';
import { USUAL_INCHES, type useScreenSize } from './far.ts';
import styles from './floor.module.css';

/** How large the screen is: what must be read from three metres is made as large as that asks. */
export function ScreenSizeButton({ screen }: { screen: ReturnType<typeof useScreenSize> }) {
  const [isOpen, setOpen] = useState(false);
  const { inches, said, say } = screen;
  const answer = (size: number | null) => {
    say(size);
    setOpen(false);
  };
  return (
    <>
      <BigButton brief icon={MonitorCog} onPress={() => setOpen(true)}>
        {`${inches} in screen`}
      </BigButton>
      <Dialog
        title="How large is this screen?"
        isOpen={isOpen}
        onClose={() => setOpen(false)}
        actions={<Button onPress={() => answer(null)}>As assumed</Button>}
      >
        <p>
          {`Across the corners. Line, pieces, gauge and caution are then large enough to be read from three metres. ${said === null ? `Taken for ${inches} in, since nobody has said.` : `${inches} in, as was said here.`}`}
        </p>
        <div className={styles.reasons}>
          {USUAL_INCHES.map((size) => (
            <Button key={size} look={size === said ? 'primary' : 'usual'} onPress={() => answer(size)}>
              {`${size} in`}
            </Button>
          ))}
        </div>
      </Dialog>
    </>
  );
}
