import { Suspense } from 'react';
import { useStatus } from './queries/hooks.ts';
import { usePlace } from './router.ts';
import { isPrint, viewAt } from './routes.tsx';
import { Welcome } from './screens/welcome/welcome.tsx';
import { Shell } from './shell/shell.tsx';
import { SentenceError, Waiting } from './ui/states.tsx';

export function App() {
  const place = usePlace();
  const { data: status, error } = useStatus();
  if (error) return <SentenceError message={error.message} />;
  if (!status) return <Waiting what="the shop" />;
  if (status.fresh) return <Welcome />;

  const view = <Suspense fallback={<Waiting what="the screen" />}>{viewAt(place)}</Suspense>;
  return isPrint(place) ? view : <Shell>{view}</Shell>;
}
