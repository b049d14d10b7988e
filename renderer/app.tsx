import { Suspense, type ReactNode } from 'react';
import { useShop, useStatus } from './queries/hooks.ts';
import { usePlace } from './router.ts';
import { isPrint, viewAt } from './routes.tsx';
import { Welcome } from './screens/welcome/welcome.tsx';
import { Shell } from './shell/shell.tsx';
import { SentenceError, Waiting } from './ui/states.tsx';
import { Decimals } from './ui/decimals.ts';
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
  return <ShopsMark>{isPrint(place) ? view : <Shell>{view}</Shell>}</ShopsMark>;
}

/** Figures are typed and shown with the shop's own decimal mark. */
function ShopsMark({ children }: { children: ReactNode }) {
  const { data: shop } = useShop();
  return <Decimals value={shop?.settings.decimals ?? 'point'}>{children}</Decimals>;
}
