import { Page } from '../../ui/page.tsx';
import { EmptyState } from '../../ui/states.tsx';

export function OrdersScreen() {
  return (
    <Page title="Orders">
      <EmptyState title="Nothing here yet" />
    </Page>
  );
}
