// What a person does in the table, turned into changes of the document.
import { type Block, type Column, type PastedLine, readBlock } from './block.ts';
import { basis, percentOf, readGrams, readPercent } from './cells.ts';
import { print } from './decimal.ts';
import type { Change, Document, Row } from './document.ts';
import type { Cell, Range } from './model.ts';
import { sumsOf } from './sums.ts';
import { readTSV, writeTSV } from './tsv.ts';

export interface Edits {
  label: string;
  changes: Change[];
  rows: string[]; // those it wrote, to be selected
  unclear?: Cell; // its text cannot be turned into anything: it stays where it was typed
  fromGrams?: boolean;
}

export type Wording = (key: 'write' | 'clear' | 'paste' | 'cut' | 'insert' | 'remove' | 'move', n: number) => string;

const none = (label: string): Edits => ({ label, changes: [], rows: [] });
const field = (column: Column): string => (column === 'grams' ? 'percent' : column);

export const cellText = (row: Row | undefined, column: Column): string => row?.cells[field(column)] ?? '';

// set writes a cell over what its writer saw there, which is what stands there
// now unless somebody else has written since.
function set(row: Row, name: string, text: string, seen?: string): Change[] {
  const now = row.cells[name] ?? '';
  const from = seen ?? now;
  if (now === text || from === text) return [];
  return [{ do: 'set', list: 'lines', row: row.id, field: name, from, to: text }];
}

const move = (row: string, after: string): Change => ({ do: 'move', list: 'lines', row, from: '', to: '', after });

const insert = (row: string, after: string, cells: Record<string, string>): Change => ({
  do: 'insert',
  list: 'lines',
  row,
  from: '',
  to: '',
  after,
  cells: Object.fromEntries(Object.entries(cells).filter(([, v]) => v !== '')),
});

const last = (d: Document): Row | undefined => d.lines.at(-1);
const phaseOf = (row: Row | undefined): string => (row?.cells.phase ?? '').trim();

// amount gives what is written in the percent cell for what was typed in a
// column; null where grams cannot be read.
function amount(d: Document, column: Column, text: string): string | null {
  const t = text.trim();
  if (column !== 'grams' || t === '') return t;
  if (readPercent(t).is === 'qs') return 'qs';
  const g = readGrams(t);
  return g && g.digits >= 0n ? percentOf(g, basis(d.head.batch).grams) : null;
}

// write puts a text into one cell. The open row at the end becomes a line by
// being written in. seen is what stood in the cell when the writing began.
export function write(d: Document, cell: Cell, text: string, w: Wording, seen?: string): Edits {
  const value = amount(d, cell.column, text);
  if (value === null) return { ...none(w('write', 1)), unclear: cell };
  const name = field(cell.column);
  const row = d.lines.find((l) => l.id === cell.row);
  if (!row) {
    if (value === '') return none(w('insert', 1));
    const cells = { phase: phaseOf(last(d)), [name]: value };
    return { label: w('insert', 1), changes: [insert(cell.row, last(d)?.id ?? '', cells)], rows: [cell.row] };
  }
  const changes = set(row, name, value, seen);
  if (name === 'phase' && changes.length > 0 && value !== '') changes.push(...joinPhase(d, row, value));
  return { label: w('write', 1), changes, rows: [row.id] };
}

// joinPhase puts a line whose phase was typed behind that phase's other lines,
// or behind its own old phase where it begins a new one, so that no phase is
// torn in two.
function joinPhase(d: Document, row: Row, phase: string): Change[] {
  const at = d.lines.indexOf(row);
  const near = [d.lines[at - 1], d.lines[at + 1]].some((l) => l && phaseOf(l) === phase);
  if (near) return [];
  const others = d.lines.filter((l) => l !== row);
  const mates = others.filter((l) => phaseOf(l) === phase);
  if (mates.length > 0) return [move(row.id, (mates.at(-1) as Row).id)];
  const own = phaseOf(row);
  let end = at;
  while (d.lines[end + 1] && phaseOf(d.lines[end + 1]) === own) end++;
  return end > at && at > 0 && phaseOf(d.lines[at - 1]) === own ? [move(row.id, (d.lines[end] as Row).id)] : [];
}

export function clear(d: Document, cells: readonly Cell[], w: Wording, label: 'clear' | 'cut' = 'clear'): Edits {
  const changes: Change[] = [];
  const done = new Set<string>();
  for (const c of cells) {
    const row = d.lines.find((l) => l.id === c.row);
    const key = `${c.row}/${field(c.column)}`;
    if (!row || done.has(key)) continue;
    done.add(key);
    changes.push(...set(row, field(c.column), ''));
  }
  return { label: w(label, cells.length), changes, rows: [] };
}

export function insertLine(d: Document, beside: string, above: boolean, id: string, w: Wording): Edits {
  const at = d.lines.findIndex((l) => l.id === beside);
  const row = d.lines[at];
  if (!row) return none(w('insert', 1));
  const after = above ? (d.lines[at - 1]?.id ?? '') : row.id;
  return { label: w('insert', 1), changes: [insert(id, after, { phase: phaseOf(row) })], rows: [id] };
}

export function remove(d: Document, rows: readonly string[], w: Wording): Edits {
  const there = d.lines.filter((l) => rows.includes(l.id));
  return {
    label: w('remove', there.length),
    changes: there.map((l) => ({ do: 'remove', list: 'lines', row: l.id, from: '', to: '' })),
    rows: [],
  };
}

// shift moves lines one place. At the edge of their phase they first change
// into the next one, without moving.
export function shift(d: Document, rows: readonly string[], by: -1 | 1, w: Wording): Edits {
  const there = d.lines.filter((l) => rows.includes(l.id));
  const out: Edits = { label: w('move', there.length), changes: [], rows: there.map((l) => l.id) };
  const edge = by < 0 ? there[0] : there.at(-1);
  if (!edge || new Set(there.map(phaseOf)).size > 1) return out;
  const next = d.lines[d.lines.indexOf(edge) + by];
  if (!next) return out;
  if (phaseOf(next) !== phaseOf(edge)) {
    out.changes = there.flatMap((l) => set(l, 'phase', phaseOf(next)));
    return out;
  }
  const first = d.lines.indexOf(there[0] as Row);
  out.changes = by < 0 ? [move(next.id, (there.at(-1) as Row).id)] : [move(next.id, d.lines[first - 1]?.id ?? '')];
  return out;
}

// drop puts dragged lines before another, or last for none, in the phase of
// the line they were dropped on.
export function drop(d: Document, rows: readonly string[], before: string | null, phase: string, w: Wording): Edits {
  const there = d.lines.filter((l) => rows.includes(l.id));
  const rest = d.lines.filter((l) => !rows.includes(l.id));
  let at = before === null ? rest.length : rest.findIndex((l) => l.id === before);
  if (before !== null && at < 0) {
    // Dropped on one of themselves: they gather there.
    const own = d.lines.findIndex((l) => l.id === before);
    at = d.lines.slice(0, own).filter((l) => !rows.includes(l.id)).length;
  }
  let after = rest[at - 1]?.id ?? '';
  const wanted = [...rest.slice(0, at), ...there, ...rest.slice(at)];
  const same = wanted.every((l, i) => l === d.lines[i]);
  const changes: Change[] = [];
  for (const l of there) {
    if (!same) changes.push(move(l.id, after));
    after = l.id;
    changes.push(...set(l, 'phase', phase));
  }
  return { label: w('move', there.length), changes, rows: there.map((l) => l.id) };
}

// copy gives a range as a spreadsheet takes it. Grams are written out in full,
// with the decimal sign of the place.
export function copy(d: Document, range: Range, point: string): string {
  const sums = sumsOf(d);
  const rows = range.rows.filter((id) => d.lines.some((l) => l.id === id));
  return writeTSV(
    rows.map((id) => {
      const row = d.lines.find((l) => l.id === id);
      return range.columns.map((c) => {
        const text = cellText(row, c);
        if (c === 'percent') return readPercent(text).is === 'qs' ? 'q.s.' : text;
        if (c !== 'grams') return text;
        const g = sums.lines.get(id)?.grams;
        return g ? print(g).replace('.', point) : '';
      });
    }),
  );
}

export interface Paste {
  text: string;
  at: Cell;
  range: Range; // selected when it was pasted
  columns: readonly Column[]; // in view
  own: boolean; // copied from this table: cells go where they stood, nothing is guessed
  ids: () => string;
}

// paste writes a block over the lines from the active cell down, and makes new
// lines for what goes beyond the last.
export function paste(d: Document, p: Paste, w: Wording): Edits {
  const cells = readTSV(p.text);
  const width = Math.max(0, ...cells.map((r) => r.length));
  if (cells.length === 1 && width === 1) {
    const text = cells[0]?.[0] ?? '';
    const targets = p.range.rows.flatMap((row) => p.range.columns.map((column) => ({ row, column })));
    if (targets.length <= 1) return write(d, p.at, text, w);
    const out = none(w('paste', p.range.rows.length));
    for (const t of targets) {
      if (!d.lines.some((l) => l.id === t.row)) continue; // the open row is not filled
      const one = write(d, t, text, w);
      out.changes.push(...one.changes);
      out.rows.push(...one.rows);
    }
    return out;
  }
  const guess =
    !p.own &&
    (p.at.column === 'phase' || p.at.column === 'material') &&
    (width > 1 || cells.some((r) => /^(phase|part)\s/i.test(r[0] ?? '')));
  const block: Block = guess ? readBlock(cells) : { lines: cells.map((r) => placed(r, p)), fromGrams: false };
  return lay(d, block, p, w);
}

function placed(row: readonly string[], p: Paste): PastedLine {
  const from = p.columns.indexOf(p.at.column);
  const out: PastedLine = {};
  row.forEach((text, i) => {
    const column = p.columns[from + i];
    if (column) out[column] = text;
  });
  return out;
}

function lay(d: Document, block: Block, p: Paste, w: Wording): Edits {
  const out: Edits = { label: w('paste', block.lines.length), changes: [], rows: [], fromGrams: block.fromGrams };
  const from = d.lines.findIndex((l) => l.id === p.at.row);
  const start = from < 0 ? d.lines.length : from;
  let after = last(d)?.id ?? '';
  let phase = phaseOf(d.lines[start - 1] ?? last(d));
  block.lines.forEach((line, i) => {
    const row = d.lines[start + i];
    const cells: Record<string, string> = {};
    if (line.phase !== undefined) cells.phase = line.phase;
    if (line.material !== undefined) cells.material = line.material;
    if (line.function !== undefined) cells.function = line.function;
    if (line.percent !== undefined) cells.percent = line.percent;
    else if (line.grams !== undefined) cells.percent = amount(d, 'grams', line.grams) ?? line.grams;
    phase = cells.phase ?? (row ? phaseOf(row) : phase);
    if (row) {
      for (const [name, text] of Object.entries(cells)) out.changes.push(...set(row, name, text));
      out.rows.push(row.id);
      return;
    }
    if (Object.values(cells).every((v) => v === '')) return;
    // The open row keeps its id, so that the active cell stays where it is.
    const id = from < 0 && i === 0 ? p.at.row : p.ids();
    out.changes.push(insert(id, after, { phase, ...cells }));
    out.rows.push(id);
    after = id;
  });
  return out;
}
