import { Suspense } from 'react';
import { useStatus } from './queries/hooks.ts';
import { usePlace } from './router.ts';
import { isPrint, viewAt } from './routes.tsx';
import { Welcome } from './screens/welcome/welcome.tsx';
import { Shell } from './shell/shell.tsx';
import { SentenceError, Waiting } from './ui/states.tsx';
import { TroubleBoundary } from './ui/trouble-boundary.tsx';

export function App() {
  const place = usePlace();
  const { data: status, error } = useStatus();
  if (error) return <SentenceError message={error.message} />;
  if (!status) return <Waiting doing="Reading the shop" />;
  if (status.fresh) return <Welcome />;

  const view = (
    <TroubleBoundary key={place.path[0]} what="This screen">
      <Suspense fallback={<Waiting doing="Reading the screen" />}>{viewAt(place)}</Suspense>
    </TroubleBoundary>
  );
  return isPrint(place) ? view : <Shell>{view}</Shell>;
}
