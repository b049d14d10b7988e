import { FileUp } from 'lucide-react';
import { FileTrigger } from 'react-aria-components';
import type { Shop } from '../../../../core/shop/state.ts';
import { Button } from '../../../ui/button.tsx';
import { EmptyState } from '../../../ui/states.tsx';
import { FileExample } from '../no-orders.tsx';
import { useImport } from './import-state.ts';

/** Nothing chosen yet: the ways a file gets here. The whole window also takes a dropped file. */
export const ChooseFile = ({ shop }: { shop: Shop }) => (
  <EmptyState icon={FileUp} title="Choose a file of work orders">
    <p>
      A CSV file or a spreadsheet (.xlsx), or drop one anywhere on this window. Every row is checked first;
      nothing is imported until you say so.
    </p>
    <FileButton look="primary" label="Choose a file" />
    <FileExample shop={shop} />
  </EmptyState>
);

export function FileButton({ look, label }: { look: 'primary' | 'usual'; label: string }) {
  const { read, busy } = useImport();
  return (
    <FileTrigger
      acceptedFileTypes={['.csv', '.txt', '.tsv', '.xlsx', 'text/csv']}
      onSelect={(files) => {
        const file = files?.[0];
        if (file) void read(file);
      }}
    >
      <Button look={look} icon={FileUp} isDisabled={busy !== null}>
        {label}
      </Button>
    </FileTrigger>
  );
}
