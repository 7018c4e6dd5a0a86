// Raw materials as a name is typed. What was asked before answers at once, and
// a longer text is first answered out of the shorter one's list.
import { useEffect, useRef, useState } from 'react';
import { api } from '../api/client.ts';
import type { Material } from '../api/types.ts';

const cache = new Map<string, Material[]>();
const most = 12;

export const fold = (s: string): string => s.toLowerCase().normalize('NFD').replace(/\p{M}/gu, '');

export function within(list: readonly Material[], text: string): Material[] {
  const t = fold(text);
  return list.filter((m) => [m.name, m.code, ...m.inci].some((x) => fold(x).includes(t)));
}

function remembered(text: string): { list: Material[]; whole: boolean } {
  const t = fold(text);
  const exact = cache.get(t);
  if (exact) return { list: exact, whole: true };
  for (let n = t.length - 1; n > 0; n--) {
    const shorter = cache.get(t.slice(0, n));
    // A list that was not cut off holds all there is.
    if (shorter) return { list: within(shorter, text), whole: shorter.length < most };
  }
  return { list: [], whole: false };
}

export function useSuggestions(text: string, on: boolean): Material[] {
  const [list, setList] = useState<Material[]>([]);
  const abort = useRef<AbortController | null>(null);
  useEffect(() => {
    abort.current?.abort();
    const t = text.trim();
    if (!on || t === '') {
      setList([]);
      return;
    }
    const had = remembered(t);
    if (had.list.length > 0 || had.whole) setList(had.list);
    if (had.whole) return;
    const mine = new AbortController();
    abort.current = mine;
    api.materials(t, most, mine.signal).then(
      ({ materials }) => {
        if (cache.size > 500) cache.clear();
        cache.set(fold(t), materials);
        if (!mine.signal.aborted) setList(materials);
      },
      () => {},
    );
    return () => mine.abort();
  }, [text, on]);
  return list;
}
