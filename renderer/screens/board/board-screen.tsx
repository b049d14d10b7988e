import { EmptyState } from '../../ui/states.tsx';

export const BoardScreen = () => <EmptyState title="The board" />;
