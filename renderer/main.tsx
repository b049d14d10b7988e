import './zod-setup.ts';
import './styles/tokens.css';
import './styles/reset.css';
import { QueryClientProvider } from '@tanstack/react-query';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './app.tsx';
import { makeClient, missedSome, takePush } from './queries/client.ts';
import { askFirst } from './queries/hooks.ts';
import { onPush } from './queries/invoke.ts';
import { startTheme } from './styles/theme.ts';
import { TroubleBoundary } from './ui/trouble-boundary.tsx';

startTheme();
const client = makeClient();
askFirst(client);
onPush((push) => takePush(client, push), missedSome(client));

const root = document.getElementById('root');
if (!root) throw new Error('index.html has no #root');
createRoot(root).render(
  <StrictMode>
    <QueryClientProvider client={client}>
      <TroubleBoundary what="Foldweek">
        <App />
      </TroubleBoundary>
    </QueryClientProvider>
  </StrictMode>,
);
