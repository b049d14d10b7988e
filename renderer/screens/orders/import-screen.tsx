import { Page } from '../../ui/page.tsx';
import { EmptyState } from '../../ui/states.tsx';

export function ImportScreen() {
  return (
    <Page title="Import orders">
      <EmptyState title="Nothing here yet" />
    </Page>
  );
}
