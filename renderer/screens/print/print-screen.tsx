import { EmptyState } from '../../ui/states.tsx';

export const PrintScreen = () => <EmptyState title="Nothing to print" />;
