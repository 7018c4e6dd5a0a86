// A formula as typed, and what commands do to it. This is draft_apply.go said
// again, so that an edit is seen before the server has answered; the two are
// held together by testdata/apply.json, which the Go code wrote.
export interface Row {
  id: string;
  cells: Record<string, string>;
}

export interface Document {
  head: Record<string, string>;
  lines: Row[];
  making: Row[];
  own?: string;
}

export type List = 'head' | 'lines' | 'making';
export type Verb = 'set' | 'insert' | 'remove' | 'move';

export interface Change {
  do: Verb;
  list: List;
  row?: string;
  field?: string;
  from: string;
  to: string;
  after?: string;
  cells?: Record<string, string>;
}

export interface Command {
  id: string;
  draft: string;
  base: number;
  label: string;
  changes: Change[];
  undoes?: string;
  at?: string;
  by?: string;
}

export interface Clash {
  list: List;
  row?: string;
  field?: string;
  seen: string;
  now: string;
  mine: string;
  gone: boolean;
}

export const heads = [
  'code',
  'name',
  'product',
  'batch',
  'markets',
  'claims',
  'area',
  'eye',
  'spray',
  'under-3',
  'pack',
  'notes',
  'temperature',
];
export const lineCells = ['phase', 'material', 'percent', 'sits', 'function', 'note'];
export const stepCells = ['step', 'phase', 'text', 'temperature', 'minutes'];

export const bounds = { rows: 500, cell: 20_000, changes: 2_000, rowID: 64 };

export class Refused extends Error {}

export interface Outcome {
  document: Document; // the one given, where there are clashes
  inverse: Change[];
  clashes: Clash[];
}

const bytes = (s: string): number => (s.length * 3 <= bounds.cell ? s.length : new TextEncoder().encode(s).length);

// apply makes all changes or none; it throws Refused for one that no document
// could take.
export function apply(document: Document, changes: readonly Change[]): Outcome {
  if (changes.length === 0 || changes.length > bounds.changes) {
    throw new Refused(`a command makes 1 to ${bounds.changes} changes, not ${changes.length}`);
  }
  const next = clone(document);
  const clashes: Clash[] = [];
  const inverse: Change[] = [];
  for (const ch of changes) {
    const made = change(next, ch);
    if (made.clash) clashes.push(made.clash);
    else if (made.undo) inverse.push(made.undo);
  }
  if (clashes.length > 0) return { document, inverse: [], clashes };
  return { document: next, inverse: inverse.reverse(), clashes };
}

interface Made {
  undo?: Change;
  clash?: Clash;
}

function change(d: Document, ch: Change): Made {
  if (bytes(ch.to ?? '') > bounds.cell) throw new Refused(`a cell holds at most ${bounds.cell} bytes`);
  if (ch.list === 'head') {
    if (ch.do !== 'set' || !heads.includes(ch.field ?? ''))
      throw new Refused(`the head has no field "${ch.field}" that can be ${ch.do}`);
    return setCell(d.head, ch);
  }
  const fields = ch.list === 'lines' ? lineCells : ch.list === 'making' ? stepCells : null;
  if (!fields) throw new Refused(`a document has no list "${ch.list}"`);
  const rows = d[ch.list];
  const id = ch.row ?? '';
  if (id === '' || bytes(id) > bounds.rowID) throw new Refused(`a row's id has 1 to ${bounds.rowID} bytes`);
  const at = rows.findIndex((r) => r.id === id);
  const row = rows[at];
  const gone: Made = { clash: clashOf(ch, '', true) };
  switch (ch.do) {
    case 'set':
      if (!fields.includes(ch.field ?? '')) throw new Refused(`${ch.list} have no field "${ch.field}"`);
      return row ? setCell(row.cells, ch) : gone;
    case 'insert': {
      if (row) throw new Refused(`row "${id}" is there already`);
      if (rows.length >= bounds.rows) throw new Refused(`a formula has at most ${bounds.rows} ${ch.list}`);
      for (const [f, v] of Object.entries(ch.cells ?? {})) {
        if (!fields.includes(f) || bytes(v) > bounds.cell)
          throw new Refused(`${ch.list} have no field "${f}", or it holds too much`);
      }
      place(rows, { id, cells: { ...ch.cells } }, ch.after ?? '');
      return { undo: { do: 'remove', list: ch.list, row: id, from: '', to: '' } };
    }
    case 'remove': {
      if (!row) return {};
      const after = before(rows, at);
      rows.splice(at, 1);
      return {
        undo: {
          do: 'insert',
          list: ch.list,
          row: id,
          from: '',
          to: '',
          after,
          cells: { ...row.cells },
        },
      };
    }
    case 'move': {
      if (!row) return gone;
      const was = before(rows, at);
      rows.splice(at, 1);
      place(rows, row, ch.after ?? '');
      return { undo: { do: 'move', list: ch.list, row: id, from: '', to: '', after: was } };
    }
  }
  throw new Refused(`"${ch.do}" is nothing a change can do`);
}

// A cell that holds already what is wanted has been written, by her or by
// someone of her mind.
function setCell(cells: Record<string, string>, ch: Change): Made {
  const field = ch.field ?? '';
  const now = cells[field] ?? '';
  if (now === ch.to) return {};
  if (now !== ch.from) return { clash: clashOf(ch, now, false) };
  if (ch.to === '') delete cells[field];
  else cells[field] = ch.to;
  return { undo: { do: 'set', list: ch.list, row: ch.row, field, from: ch.to, to: now } };
}

const clashOf = (ch: Change, now: string, gone: boolean): Clash => ({
  list: ch.list,
  row: ch.row,
  field: ch.field,
  seen: ch.from ?? '',
  now,
  mine: ch.to ?? '',
  gone,
});

// Behind another row; at the top for an empty id, last where that row has gone.
function place(rows: Row[], row: Row, after: string): void {
  const at = after === '' ? 0 : rows.findIndex((r) => r.id === after) + 1 || rows.length;
  rows.splice(at, 0, row);
}

const before = (rows: readonly Row[], at: number): string => rows[at - 1]?.id ?? '';

export function clone(d: Document): Document {
  const rows = (of: readonly Row[] | null) => (of ?? []).map((r) => ({ id: r.id, cells: { ...r.cells } }));
  const out: Document = { head: { ...d.head }, lines: rows(d.lines), making: rows(d.making) };
  if (d.own) out.own = d.own;
  return out;
}

export const emptyDocument = (): Document => ({ head: {}, lines: [], making: [] });
