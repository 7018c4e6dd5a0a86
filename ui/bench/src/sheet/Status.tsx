// One polite voice: what changed, in a sentence, once typing has stopped.
import { useEffect, useRef, useState } from 'react';
import type { Check } from '../api/types.ts';
import type { Snapshot } from '../grid/session.ts';
import { say } from '../words.ts';
import type { StripFigure } from './figures.ts';

const pause = 1500;

interface Said {
  values: Map<string, string>;
  notes: number;
}

// sayChange compares two states of the sheet. The figure that is said is the
// first that moved.
export function sayChange(was: Said, now: Said, titles: (id: string) => string): string {
  const out: string[] = [];
  // The activity comes first where it moved: it is what the sheet is about.
  const moved = [...now.values].filter(([id, v]) => was.values.has(id) && was.values.get(id) !== v);
  const first = moved.find(([id]) => id === 'water.activity') ?? moved[0];
  if (first) out.push(say('status.figure', { title: titles(first[0]), value: first[1] }));
  const n = now.notes - was.notes;
  if (n > 0) out.push(say('status.notes-new', { n }));
  if (n < 0) out.push(say('status.notes-gone', { n: -n }));
  return out.join(' ');
}

export function Status({
  snap,
  check,
  figures,
  told,
}: {
  snap: Snapshot;
  check: Check | null;
  figures: readonly StripFigure[];
  told: { text: string; at: number };
}) {
  const [text, setText] = useState('');
  const before = useRef<Said | null>(null);
  useEffect(() => {
    if (!check || snap.stale) return;
    const now: Said = {
      values: new Map(figures.filter((f) => f.read).map((f) => [f.id, f.read?.value ?? ''])),
      notes: check.margin.length,
    };
    const t = setTimeout(() => {
      const said =
        before.current && sayChange(before.current, now, (id) => figures.find((f) => f.id === id)?.title ?? id);
      before.current = now;
      if (said) setText(said);
    }, pause);
    return () => clearTimeout(t);
  }, [check, snap.stale, figures]);
  useEffect(() => {
    const s = snap.stepped;
    if (!s) return;
    if (s.label === null) setText(say(s.which === 'undo' ? 'status.nothing-undo' : 'status.nothing-redo'));
    else setText(say(s.which === 'undo' ? 'status.undone' : 'status.redone', { label: s.label }));
  }, [snap.stepped]);
  useEffect(() => {
    if (told.text) setText(told.text);
  }, [told]);
  return (
    <p role="status" className="status">
      {text}
    </p>
  );
}
