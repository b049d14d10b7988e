import { useMemo, useSyncExternalStore } from 'react';

/** Where the user is, from the address after '#': "/orders/1042?sort=due" → ['orders', '1042'] and the query. */
export interface Place {
  readonly path: readonly string[];
  readonly query: URLSearchParams;
}

export function readPlace(hash: string): Place {
  const [path = '', query = ''] = hash.replace(/^#/, '').split('?');
  return {
    path: path.split('/').filter(Boolean).map(decodeURIComponent),
    query: new URLSearchParams(query),
  };
}

/** An address for `navigate` or a link: `placeOf('orders', '1042/2')` → "#/orders/1042%2F2". */
export const placeOf = (...path: readonly string[]): string => `#/${path.map(encodeURIComponent).join('/')}`;

export const navigate = (...path: readonly string[]): void => {
  window.location.hash = placeOf(...path);
};

const subscribe = (listener: () => void) => {
  window.addEventListener('hashchange', listener);
  return () => window.removeEventListener('hashchange', listener);
};

export function usePlace(): Place {
  const hash = useSyncExternalStore(subscribe, () => window.location.hash);
  return useMemo(() => readPlace(hash), [hash]);
}
