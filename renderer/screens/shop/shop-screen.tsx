import { Page } from '../../ui/page.tsx';
import { EmptyState } from '../../ui/states.tsx';

export function ShopScreen() {
  return (
    <Page title="Shop">
      <EmptyState title="Nothing here yet" />
    </Page>
  );
}
