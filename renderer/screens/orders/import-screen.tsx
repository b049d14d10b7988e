import { ArrowLeft } from 'lucide-react';
import { useEffect } from 'react';
import { useShop } from '../../queries/hooks.ts';
import { navigate } from '../../router.ts';
import { Button } from '../../ui/button.tsx';
import { Page } from '../../ui/page.tsx';
import { SentenceError, Waiting } from '../../ui/states.tsx';
import { droppedFile } from './dropped-file.ts';
import { CheckedFile } from './import/checked-file.tsx';
import { ChooseFile } from './import/choose-file.tsx';
import { useImport } from './import/import-state.ts';

const doing = {
  reading: 'Reading the file',
  checking: 'Checking your changes',
  taking: 'Importing the lines',
} as const;

/** Work orders from a CSV file: choose, look, fix, take. */
export function ImportScreen() {
  const { data: shop, error } = useShop();
  const { reading, busy, trouble } = useImport();
  useDroppedFile();
  return (
    <Page
      title="Import orders"
      actions={
        <Button icon={ArrowLeft} onPress={() => navigate('orders')}>
          Back to orders
        </Button>
      }
    >
      {error && <SentenceError message={error.message} />}
      {trouble && <SentenceError message={trouble} />}
      {busy && !reading && <Waiting doing={doing[busy]} />}
      {reading && <CheckedFile reading={reading} />}
      {!reading && !busy && shop && <ChooseFile shop={shop} />}
    </Page>
  );
}

/** Read a file that was dropped on the window, now or while this screen is open. */
function useDroppedFile(): void {
  useEffect(() => {
    const read = () => {
      const file = droppedFile.take();
      if (file) void useImport.getState().read(file);
    };
    read();
    return droppedFile.onGiven(read);
  }, []);
}
