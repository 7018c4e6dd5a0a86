import { lazy, Suspense, useEffect, useState } from 'react';
import { List } from './sheet/List.tsx';
import { Sheet } from './sheet/Sheet.tsx';

const Components = lazy(() => import('./design/Components.tsx').then((m) => ({ default: m.Components })));

// where reads the address behind the #, so that every page is a file of one
// origin and a reload needs nothing of the server.
export function where(hash: string): { page: 'list' | 'components' } | { page: 'sheet'; id: string } {
  const path = hash.replace(/^#\/?/, '');
  const m = /^f\/([^/?]+)$/.exec(path);
  if (m) {
    try {
      return { page: 'sheet', id: decodeURIComponent(m[1] as string) };
    } catch {
      return { page: 'list' };
    }
  }
  return { page: path === 'components' ? 'components' : 'list' };
}

export function App() {
  const [at, setAt] = useState(() => where(location.hash));
  useEffect(() => {
    const on = () => {
      setAt(where(location.hash));
      window.scrollTo(0, 0);
    };
    window.addEventListener('hashchange', on);
    return () => window.removeEventListener('hashchange', on);
  }, []);
  if (at.page === 'sheet') return <Sheet key={at.id} id={at.id} />;
  if (at.page === 'components')
    return (
      <Suspense>
        <Components />
      </Suspense>
    );
  return <List />;
}
