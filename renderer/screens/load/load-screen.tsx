import { Page } from '../../ui/page.tsx';
import { EmptyState } from '../../ui/states.tsx';

export function LoadScreen() {
  return (
    <Page title="Load">
      <EmptyState title="Nothing here yet" />
    </Page>
  );
}
