// Which finding stands at which line.

import type { MarginNote } from '../api/types.ts';
import type { Gravity } from '../design/parts.tsx';

export interface Dealt {
  note: MarginNote;
  gravity: Gravity;
  also: number[]; // the other lines it is about, counted from 1
}

export interface Deal {
  line: Map<string, Dealt[]>;
  water: Dealt[];
  whole: Dealt[];
  stops: Dealt[];
}

export function gravityOf(n: MarginNote): Gravity {
  if (n.verdict === 'cannot-tell') return 'cannot-tell';
  return n.severity === 'stop' || n.severity === 'warn' ? n.severity : 'advice';
}

const order: Gravity[] = ['stop', 'warn', 'cannot-tell', 'advice'];

// dealOf puts what must be settled first. A finding about one line stands there;
// one about several goes to the line of theirs with the fewest notes yet.
export function dealOf(margin: readonly MarginNote[], rows: readonly string[]): Deal {
  const out: Deal = { line: new Map(), water: [], whole: [], stops: [] };
  const sorted = margin
    .map((note) => ({ note, gravity: gravityOf(note), also: [] as number[] }))
    .sort((a, b) => order.indexOf(a.gravity) - order.indexOf(b.gravity));
  const put = (d: Dealt, row: string) => {
    d.also = d.note.rows
      .filter((r) => r !== row)
      .map((r) => rows.indexOf(r) + 1)
      .filter((n) => n > 0)
      .sort((a, b) => a - b);
    out.line.set(row, [...(out.line.get(row) ?? []), d]);
  };
  const about = (d: Dealt) => d.note.rows.filter((r) => rows.includes(r));
  for (const d of sorted) {
    if (d.gravity === 'stop') out.stops.push(d);
    const lines = about(d);
    if (lines.length === 1) put(d, lines[0] as string);
    else if (lines.length === 0) (d.note.figures.some((f) => f.startsWith('water.')) ? out.water : out.whole).push(d);
  }
  for (const d of sorted) {
    const lines = about(d);
    if (lines.length < 2) continue;
    const load = (r: string) => out.line.get(r)?.length ?? 0;
    put(
      d,
      lines.reduce((best, r) => (load(r) < load(best) ? r : best)),
    );
  }
  for (const list of out.line.values()) list.sort((a, b) => order.indexOf(a.gravity) - order.indexOf(b.gravity));
  return out;
}

// linesText writes 1, 2, 3, 5 as "1–3, 5".
export function linesText(n: readonly number[]): string {
  const runs: [number, number][] = [];
  for (const x of n) {
    const last = runs.at(-1);
    if (last && x === last[1] + 1) last[1] = x;
    else runs.push([x, x]);
  }
  return runs.map(([a, b]) => (a === b ? `${a}` : b === a + 1 ? `${a}, ${b}` : `${a}–${b}`)).join(', ');
}
