// How the table answers to keys, without a browser: where the active cell is,
// whether it is being written in, and what a key asks to be done.
import type { Column } from './block.ts';

export type { Column } from './block.ts';

export const columns: readonly Column[] = ['phase', 'material', 'percent', 'grams', 'function'];

export interface Cell {
  row: string;
  column: Column;
}

export interface Edit {
  text: string;
  // Typing replaced what stood there: arrows leave the cell. Opened with F2
  // they move the caret.
  how: 'typed' | 'opened';
  all?: true; // opened by a click: what is typed next takes the place of all of it
}

export interface GridState {
  active: Cell;
  anchor: Cell | null; // the other corner of a range
  edit: Edit | null;
  home: Column | null; // where a row was begun, to which Enter comes back
  leaving: boolean; // after Escape, Tab leaves the table
}

// View is what can be seen: the rows in order, with the open one at the end,
// and the columns the width has room for.
export interface View {
  rows: readonly string[];
  columns: readonly Column[];
  text(cell: Cell): string; // what an edit of it begins with
}

export type Act =
  | { do: 'write'; cell: Cell; text: string }
  | { do: 'clear'; cells: Cell[] }
  | { do: 'insert'; beside: string; above: boolean }
  | { do: 'remove'; rows: string[] }
  | { do: 'shift'; rows: string[]; by: -1 | 1 }
  | { do: 'undo' }
  | { do: 'redo' }
  | { do: 'open'; row: string }
  | { do: 'leave' }; // the browser's own Tab goes on

export interface Key {
  key: string;
  ctrl?: boolean; // or the command key
  shift?: boolean;
  alt?: boolean;
}

export interface Step {
  state: GridState;
  act?: Act;
  used: boolean; // false: the key is the browser's
}

export function start(row: string, column: Column = 'material'): GridState {
  return { active: { row, column }, anchor: null, edit: null, home: null, leaving: false };
}

// settle keeps the active cell in the view after rows have gone.
export function settle(s: GridState, v: View, was?: readonly string[]): GridState {
  const known = (c: Cell | null) => c !== null && v.rows.includes(c.row) && v.columns.includes(c.column);
  if (known(s.active)) return s.anchor === null || known(s.anchor) ? s : { ...s, anchor: null };
  const at = was?.indexOf(s.active.row) ?? -1;
  const row = v.rows.includes(s.active.row) ? s.active.row : v.rows[Math.max(0, Math.min(at, v.rows.length - 1))];
  const column = v.columns.includes(s.active.column) ? s.active.column : (v.columns[0] as Column);
  return { ...s, active: { row: row ?? '', column }, anchor: null, edit: null };
}

export interface Range {
  rows: string[];
  columns: Column[];
}

export function rangeOf(s: GridState, v: View): Range {
  const [a, b] = [s.active, s.anchor ?? s.active];
  const cut = <T>(of: readonly T[], x: T, y: T): T[] => {
    const [i, j] = [of.indexOf(x), of.indexOf(y)];
    return of.slice(Math.min(i, j), Math.max(i, j) + 1);
  };
  return { rows: cut(v.rows, a.row, b.row), columns: cut(v.columns, a.column, b.column) };
}

export const cellsOf = (r: Range): Cell[] => r.rows.flatMap((row) => r.columns.map((column) => ({ row, column })));

export function to(s: GridState, active: Cell): GridState {
  return { ...s, active, anchor: null, edit: null, home: null, leaving: false };
}

export function stretch(s: GridState, active: Cell): GridState {
  return { ...s, active, anchor: s.anchor ?? s.active, edit: null, home: null, leaving: false };
}

const clamp = (n: number, most: number): number => Math.max(0, Math.min(most, n));

function moved(s: GridState, v: View, down: number, right: number): Cell {
  const r = clamp(v.rows.indexOf(s.active.row) + down, v.rows.length - 1);
  const c = clamp(v.columns.indexOf(s.active.column) + right, v.columns.length - 1);
  return { row: v.rows[r] as string, column: v.columns[c] as Column };
}

// along goes one cell on, over the end of a row to the next; null past the end.
function along(s: GridState, v: View, by: 1 | -1): Cell | null {
  const n = v.rows.indexOf(s.active.row) * v.columns.length + v.columns.indexOf(s.active.column) + by;
  if (n < 0 || n >= v.rows.length * v.columns.length) return null;
  return { row: v.rows[Math.floor(n / v.columns.length)] as string, column: v.columns[n % v.columns.length] as Column };
}

const arrows: Record<string, [number, number]> = {
  ArrowUp: [-1, 0],
  ArrowDown: [1, 0],
  ArrowLeft: [0, -1],
  ArrowRight: [0, 1],
};
const far = 1_000_000;

export function press(s: GridState, k: Key, v: View): Step {
  return s.edit ? writing(s, s.edit, k, v) : walking(s, k, v);
}

function writing(s: GridState, edit: Edit, k: Key, v: View): Step {
  const write: Act = { do: 'write', cell: s.active, text: edit.text };
  const done = { ...s, edit: null };
  switch (k.key) {
    case 'Escape':
      return { state: done, used: true };
    case 'F2':
      return { state: { ...s, edit: { ...edit, how: edit.how === 'typed' ? 'opened' : 'typed' } }, used: true };
    case 'Enter':
      if (k.alt) return { state: s, used: true };
      return { state: enter(done, v, k.shift ? -1 : 1), act: write, used: true };
    case 'Tab': {
      const next = along(s, v, k.shift ? -1 : 1);
      return {
        state: next ? { ...to(s, next), home: s.home ?? s.active.column } : done,
        act: write,
        used: next !== null,
      };
    }
  }
  const a = arrows[k.key];
  if (a && edit.how === 'typed' && !k.shift && !k.ctrl && !k.alt) {
    return { state: to(s, moved(s, v, a[0], a[1])), act: write, used: true };
  }
  return { state: s, used: false };
}

function enter(s: GridState, v: View, by: 1 | -1): GridState {
  const next = moved(s, v, by, 0);
  return to(s, { row: next.row, column: s.home && v.columns.includes(s.home) ? s.home : next.column });
}

function walking(s: GridState, k: Key, v: View): Step {
  const range = rangeOf(s, v);
  const go = (state: GridState, act?: Act): Step => (act ? { state, act, used: true } : { state, used: true });
  const a = arrows[k.key];
  if (a) {
    if (k.alt)
      return a[0] === 0 ? { state: s, used: false } : go(s, { do: 'shift', rows: range.rows, by: a[0] as -1 | 1 });
    const cell = k.ctrl ? moved(s, v, a[0] * far, a[1] * far) : moved(s, v, a[0], a[1]);
    return go(k.shift ? stretch(s, cell) : to(s, cell));
  }
  const jump: Record<string, [number, number]> = {
    Home: [k.ctrl ? -far : 0, -far],
    End: [k.ctrl ? far : 0, far],
    PageUp: [-10, 0],
    PageDown: [10, 0],
  };
  const j = jump[k.key];
  if (j) {
    const cell = moved(s, v, j[0], j[1]);
    return go(k.shift ? stretch(s, cell) : to(s, cell));
  }
  switch (k.key) {
    case 'Enter':
      if (k.alt) return go(s, { do: 'open', row: s.active.row });
      if (k.ctrl) return go(s, { do: 'insert', beside: s.active.row, above: k.shift === true });
      return go(enter(s, v, k.shift ? -1 : 1));
    case 'Tab': {
      const next = s.leaving ? null : along(s, v, k.shift ? -1 : 1);
      if (!next) return { state: { ...s, leaving: false, anchor: null }, act: { do: 'leave' }, used: false };
      return go({ ...to(s, next), home: s.home ?? s.active.column });
    }
    case 'Escape':
      return go({ ...s, anchor: null, leaving: true });
    case 'F2':
      return go({ ...s, anchor: null, edit: { text: v.text(s.active), how: 'opened' } });
    case 'Delete':
    case 'Backspace':
      return go(s, k.ctrl ? { do: 'remove', rows: range.rows } : { do: 'clear', cells: cellsOf(range) });
  }
  if (k.ctrl && !k.alt) {
    switch (k.key.toLowerCase()) {
      case 'z':
        return go(s, { do: k.shift ? 'redo' : 'undo' });
      case 'y':
        return go(s, { do: 'redo' });
      case 'a':
        return go({
          ...s,
          anchor: { row: v.rows[0] as string, column: v.columns[0] as Column },
          active: { row: v.rows.at(-1) as string, column: v.columns.at(-1) as Column },
        });
    }
    return { state: s, used: false };
  }
  // One character, or the start of a composed one.
  if (!k.ctrl && !k.alt && ([...k.key].length === 1 || k.key === 'Dead' || k.key === 'Process')) {
    return { state: { ...s, anchor: null, leaving: false, edit: { text: '', how: 'typed' } }, used: false };
  }
  return { state: s, used: false };
}
