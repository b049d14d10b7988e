// @vitest-environment jsdom
import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { cleanup, render, screen, within } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { otherNameId } from '../../../core/shop/other-name.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { FileMemory } from '../../../renderer/screens/settings/file-memory.tsx';
import { aShop } from '../../support/builders.ts';

afterEach(cleanup);

const show = (shop: Shop) =>
  render(
    <QueryClientProvider client={new QueryClient()}>
      <FileMemory shop={shop} />
    </QueryClientProvider>,
  );
const named = (kind: 'colour' | 'customer', text: string, oursId: string) => ({
  id: otherNameId(kind, text),
  kind,
  text,
  oursId,
  revision: 1,
});

describe('what is remembered of files', () => {
  it('is listed with what it stands for, each with its way to forget it', () => {
    show(
      aShop({
        otherName: [named('colour', 'RAL 7016', 'moss'), named('colour', 'RAL 1', 'gone')],
        fileLayout: [
          {
            id: 'orders:3:0badcafe',
            kind: 'orders',
            layout: {
              columns: { order: 'Job No', length: 'Len', release: '' },
              units: { length: 'ft' },
              dates: { due: 'dmy' },
              decimals: { length: 'comma' },
              toNote: ['Bay'],
            },
            revision: 1,
          },
        ],
      }),
    );
    const names = within(screen.getByRole('table', { name: 'Other names in files' }));
    expect(names.getByRole('row', { name: /RAL 7016/ }).textContent).toBe(
      'RAL 7016Moss green (moss)colourForget',
    );
    expect(names.getByRole('row', { name: /^RAL 1 / }).textContent).toContain(
      'gone, which is no longer there',
    );
    expect(screen.getByRole('button', { name: 'Forget “RAL 7016”' })).toBeTruthy();
    const layouts = screen.getByRole('table', { name: 'How files are read' });
    expect(layouts.textContent).toContain('Job No → order, Len → length, no release');
    expect(layouts.textContent).toContain(
      'length in ft, due as d-m-y, length with a decimal comma, Bay → note',
    );
  });

  it('says so where there is nothing', () => {
    show(aShop());
    expect(screen.getByText(/No file called anything by another name/)).toBeTruthy();
    expect(screen.getByText(/Nothing was said of a file’s columns/)).toBeTruthy();
  });
});
