// Puts the notes of the table level with their lines and draws the leaders.
// Heights are only known once the browser has set the text, so this is the one
// place that measures.
import { type RefObject, useCallback, useEffect, useLayoutEffect } from 'react';
import { place } from './place.ts';

const wide = '(min-width: 1121px)';
const gap = 8;
const middle = 16; // of a row's first line

export function useMargin(grid: RefObject<HTMLElement | null>): void {
  const set = useCallback(() => {
    const el = grid.current;
    if (!el) return;
    const notes = [...el.querySelectorAll<HTMLElement>('.margin')];
    if (!window.matchMedia(wide).matches || notes.length === 0) {
      el.style.minHeight = '';
      for (const n of notes) n.style.top = '';
      return;
    }
    const top = el.getBoundingClientRect().top;
    const read = notes.map((n) => {
      const row = n.closest<HTMLElement>('[role="row"]');
      const level = row ? row.getBoundingClientRect().top - top : 0;
      return { n, level, height: n.offsetHeight };
    });
    const tops = place(
      read.map((r) => ({ at: r.level + 6, height: r.height })),
      gap,
    );
    let lowest = 0;
    read.forEach((r, i) => {
      const at = tops[i] as number;
      lowest = Math.max(lowest, at + r.height);
      r.n.style.top = `${at}px`;
      const from = r.level + middle - at;
      const path = r.n.querySelector('path.lead');
      path?.setAttribute('d', Math.abs(from - 10) < 8 ? `M0 ${from}H52` : `M0 ${from}H14L42 10H52`);
      r.n.querySelector('circle.lead')?.setAttribute('cy', String(from));
    });
    el.style.minHeight = `${Math.ceil(lowest)}px`;
  }, [grid]);
  useLayoutEffect(set);
  useEffect(() => {
    const el = grid.current;
    if (!el) return;
    const watch = new ResizeObserver(set);
    watch.observe(el);
    for (const n of el.querySelectorAll('.margin')) watch.observe(n);
    document.fonts?.ready.then(set).catch(() => {});
    return () => watch.disconnect();
  }, [grid, set]);
}
