// The columns a width has room for.
import { useSyncExternalStore } from 'react';
import type { Column } from '../grid/model.ts';

const all: readonly Column[] = ['phase', 'material', 'percent', 'grams', 'function'];
const fewer: readonly Column[] = ['phase', 'material', 'percent', 'grams'];
const wide = '(min-width: 1361px)';

const subscribe = (f: () => void): (() => void) => {
  const q = window.matchMedia(wide);
  q.addEventListener('change', f);
  return () => q.removeEventListener('change', f);
};

export const useColumns = (): readonly Column[] =>
  useSyncExternalStore(subscribe, () => (window.matchMedia(wide).matches ? all : fewer));
