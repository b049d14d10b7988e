import { Page } from '../../ui/page.tsx';
import { EmptyState } from '../../ui/states.tsx';

export function SettingsScreen() {
  return (
    <Page title="Settings">
      <EmptyState title="Nothing here yet" />
    </Page>
  );
}
