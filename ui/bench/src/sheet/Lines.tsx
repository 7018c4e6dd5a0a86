// biome-ignore-all lint/a11y/useSemanticElements: a grid that is typed in is no <table>
// biome-ignore-all lint/a11y/useFocusableInteractive: one cell of a grid has the focus, the others do not
// The formula by phases: the table that is typed in, with the notes beside it.
// What keys mean is in grid/model.ts, what they do to the document in
// grid/edits.ts; here both meet the browser.
import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import { flushSync } from 'react-dom';
import type { Check } from '../api/types.ts';
import { isKind, Mark } from '../design/parts.tsx';
import { cut, gramsText, percentText, point } from '../format.ts';
import { compare, type Decimal, hundred, print } from '../grid/decimal.ts';
import type { Row } from '../grid/document.ts';
import {
  cellText,
  clear,
  copy,
  drop,
  type Edits,
  insertLine,
  paste,
  remove,
  shift,
  type Wording,
  write,
} from '../grid/edits.ts';
import { newID } from '../grid/ids.ts';
import {
  type Act,
  type Cell,
  type Column,
  cellsOf,
  type GridState,
  press,
  rangeOf,
  settle,
  start,
  stretch,
  to,
  type View,
} from '../grid/model.ts';
import type { Session, Snapshot } from '../grid/session.ts';
import { type Sums, sumsOf } from '../grid/sums.ts';
import { say, type Word } from '../words.ts';
import { Editor } from './Cell.tsx';
import { type Deal, dealOf } from './deal.ts';
import { LineNotes, type RowProblem } from './Notes.tsx';
import { OpenedLine } from './OpenedLine.tsx';
import { useColumns } from './useColumns.ts';
import { useMargin } from './useMargin.ts';

const wording: Wording = (key, n) => say(`edit.${key}` as Word, { n });
const cellKey = (c: Cell): string => `${c.row}/${c.column}`;

export interface LinesProps {
  session: Session;
  snap: Snapshot;
  check: Check | null;
  tell: (text: string) => void;
  onWhy: (rule: string) => void;
}

export function Lines({ session, snap, check, tell, onWhy }: LinesProps) {
  const doc = snap.document;
  const columns = useColumns();
  const [ghost, setGhost] = useState(newID);
  const [grid, setGrid] = useState<GridState>(() =>
    start(doc.lines[0]?.id ?? ghost, doc.lines.length ? 'percent' : 'material'),
  );
  const [odd, setOdd] = useState<ReadonlyMap<string, string>>(new Map()); // typed, and nothing to be made of it
  const [opened, setOpened] = useState<string | null>(null);
  const [drag, setDrag] = useState<{ rows: string[]; before: string | null; phase: string } | null>(null);
  const box = useRef<HTMLDivElement>(null);
  const wanted = useRef(false); // the active cell is to have the focus
  const copied = useRef(''); // what was copied here last
  useMargin(box);

  useEffect(() => {
    if (doc.lines.some((l) => l.id === ghost)) setGhost(newID());
  }, [doc, ghost]);

  const rows = useMemo(
    () => [...doc.lines.map((l) => l.id), ...(doc.lines.some((l) => l.id === ghost) ? [] : [ghost])],
    [doc, ghost],
  );
  const sums = useMemo(() => sumsOf(doc), [doc]);
  const view: View = useMemo(
    () => ({
      rows,
      columns,
      text: (c) =>
        editText(
          doc.lines.find((l) => l.id === c.row),
          c.column,
          sums,
        ),
    }),
    [rows, columns, doc, sums],
  );
  const deal: Deal = useMemo(
    () =>
      dealOf(
        check?.margin ?? [],
        doc.lines.map((l) => l.id),
      ),
    [check, doc],
  );

  const was = useRef(rows);
  const state = settle(grid, view, was.current);
  useLayoutEffect(() => {
    was.current = rows;
    if (state !== grid) setGrid(state);
  });
  const now = useRef(state);
  now.current = state;

  // The focus follows the active cell, but only while it is in the table.
  useLayoutEffect(() => {
    if (!wanted.current || state.edit) return;
    const el = box.current?.querySelector<HTMLElement>(`[data-cell="${CSS.escape(cellKey(state.active))}"]`);
    if (el && document.activeElement !== el) {
      el.focus({ preventScroll: true });
      el.scrollIntoView({ block: 'nearest', inline: 'nearest' });
    }
    wanted.current = false;
  });

  // What stood in the cell when writing in it began: somebody else may write
  // there meanwhile, and is not to be written over unasked.
  const seen = useRef<string | undefined>(undefined);
  const move = (next: GridState) => {
    if (next.edit && !now.current.edit) {
      const row = session.snapshot().document.lines.find((l) => l.id === next.active.row);
      seen.current = row ? cellText(row, next.active.column) : undefined;
    }
    wanted.current = true;
    now.current = next;
    setGrid(next);
  };

  const done = (e: Edits): boolean => {
    if (e.fromGrams) tell(say('status.from-grams'));
    return session.edit(e.label, e.changes);
  };

  function writeCell(cell: Cell, text: string): void {
    const e = write(session.snapshot().document, cell, text, wording, seen.current);
    const rest = new Map(odd);
    if (e.unclear) rest.set(cellKey(e.unclear), text);
    else rest.delete(cellKey(cell));
    if (rest.size > 0 || odd.size > 0) setOdd(rest);
    session.type(null);
    done(e);
  }

  function perform(act: Act): void {
    const d = session.snapshot().document;
    switch (act.do) {
      case 'write':
        writeCell(act.cell, act.text);
        return;
      case 'clear':
        done(clear(d, act.cells, wording));
        return;
      case 'insert': {
        const id = newID();
        if (done(insertLine(d, act.beside, act.above, id, wording))) move(start(id));
        return;
      }
      case 'remove':
        done(remove(d, act.rows, wording));
        wanted.current = true;
        return;
      case 'shift':
        done(shift(d, act.rows, act.by, wording));
        wanted.current = true;
        return;
      case 'undo':
      case 'redo':
        session.step(act.do);
        return;
      case 'open':
        if (d.lines.some((l) => l.id === act.row)) setOpened(opened === act.row ? null : act.row);
        return;
    }
  }

  const keyOf = (e: React.KeyboardEvent) => ({
    key: e.key,
    ctrl: e.ctrlKey || e.metaKey,
    shift: e.shiftKey,
    alt: e.altKey,
  });

  function onKeyDown(e: React.KeyboardEvent): void {
    if (now.current.edit || !(e.target as HTMLElement).dataset.cell) return;
    const step = press(now.current, keyOf(e), view);
    if (step.used) e.preventDefault();
    if (step.state !== now.current) {
      // At once, so that the character being typed lands in the box.
      flushSync(() => move(step.state));
      if (step.act?.do === 'leave') wanted.current = false;
    }
    if (step.act) perform(step.act);
  }

  function onEditKey(e: React.KeyboardEvent, text: string): boolean {
    const s = now.current;
    if (!s.edit) return false;
    const step = press({ ...s, edit: { ...s.edit, text } }, keyOf(e), view);
    if (step.state.edit) {
      if (step.used) move(step.state);
      return step.used;
    }
    move(step.state);
    if (step.act) perform(step.act);
    else session.type(null);
    if (e.key !== 'Tab') onward(step.state.active);
    return step.used;
  }

  // onward goes on to a new open row where the one that was written in has just
  // become a line: staying on it, the next name would be typed over this one.
  function onward(at: Cell): void {
    if (at.row !== ghost || !session.snapshot().document.lines.some((l) => l.id === ghost)) return;
    const next = newID();
    setGhost(next);
    move(to(now.current, { row: next, column: at.column }));
  }

  function onText(text: string): void {
    const s = now.current;
    if (!s.edit) return;
    const next = { ...s, edit: { ...s.edit, text } };
    now.current = next;
    setGrid(next);
    if (s.active.column === 'percent' || s.active.column === 'grams') {
      const e = write(session.snapshot().document, s.active, text, wording);
      if (!e.unclear) session.type(e.changes);
    }
  }

  function leaveEdit(): void {
    const s = now.current;
    if (!s.edit) return;
    now.current = { ...s, edit: null };
    setGrid(now.current);
    writeCell(s.active, s.edit.text);
  }

  // A cell still being written when its page is left, by Back or a reload, is
  // written, as by a click elsewhere.
  const leaving = useRef(leaveEdit);
  leaving.current = leaveEdit;
  useLayoutEffect(() => {
    const leave = () => leaving.current();
    window.addEventListener('pagehide', leave);
    return () => {
      window.removeEventListener('pagehide', leave);
      leave();
    };
  }, []);

  function pick(name: string): void {
    const s = now.current;
    move({ ...to(s, { row: s.active.row, column: 'percent' }) });
    writeCell(s.active, name);
  }

  function onPointerDown(e: React.PointerEvent): void {
    const cell = readCell(e.target);
    if (!cell || e.button !== 0) return;
    const s = now.current;
    if (s.edit && cellKey(s.active) === cellKey(cell)) return;
    if (s.edit) leaveEdit();
    const again =
      !e.shiftKey &&
      cellKey(now.current.active) === cellKey(cell) &&
      !now.current.anchor &&
      document.activeElement === (e.target as HTMLElement).closest('[data-cell]');
    e.preventDefault();
    if (again) flushSync(() => move({ ...now.current, edit: { text: view.text(cell), how: 'opened', all: true } }));
    else move(e.shiftKey ? stretch(now.current, cell) : to(now.current, cell));
  }

  // A pointer held down and drawn over cells selects them.
  function onPointerOver(e: React.PointerEvent): void {
    if (e.buttons !== 1 || drag || now.current.edit || e.pointerType !== 'mouse') return;
    const cell = readCell(e.target);
    if (cell && cellKey(cell) !== cellKey(now.current.active) && box.current?.contains(document.activeElement))
      move(stretch(now.current, cell));
  }

  function onCopy(e: React.ClipboardEvent): void {
    if (now.current.edit || !(e.target as HTMLElement).dataset.cell) return;
    const d = session.snapshot().document;
    const range = rangeOf(now.current, view);
    const text = copy(d, range, point);
    e.clipboardData.setData('text/plain', text);
    e.preventDefault();
    copied.current = text;
    if (e.type === 'cut') done(clear(d, cellsOf(range), wording, 'cut'));
  }

  function onPaste(e: React.ClipboardEvent): void {
    if (now.current.edit || !(e.target as HTMLElement).dataset.cell) return;
    const text = e.clipboardData.getData('text/plain');
    e.preventDefault();
    if (text === '') return;
    const s = now.current;
    const edits = paste(
      session.snapshot().document,
      {
        text,
        at: s.anchor ? first(s) : s.active,
        range: rangeOf(s, view),
        columns,
        own: text.replace(/\r\n/g, '\n') === copied.current,
        ids: newID,
      },
      wording,
    );
    if (!done(edits)) return;
    if (edits.rows.length > 1) {
      tell(say('status.pasted', { n: edits.rows.length }));
      move({ ...to(s, { row: edits.rows[0] as string, column: s.active.column }) });
    }
  }

  function first(s: GridState): Cell {
    const r = rangeOf(s, view);
    return { row: r.rows[0] as string, column: r.columns[0] as Column };
  }

  // Lines are dragged by their number.
  function grip(e: React.PointerEvent, row: string): void {
    if (e.button !== 0 || !doc.lines.some((l) => l.id === row)) return;
    e.preventDefault();
    e.stopPropagation();
    if (now.current.edit) leaveEdit();
    const range = rangeOf(now.current, view);
    const held = range.rows.length > 1 && range.rows.includes(row) ? range.rows : [row];
    const from = { x: e.clientX, y: e.clientY };
    let at: { rows: string[]; before: string | null; phase: string } | null = null;
    const over = (ev: PointerEvent) => {
      if (!at && Math.hypot(ev.clientX - from.x, ev.clientY - from.y) < 4) return;
      at = { rows: held, ...target(ev.clientY) };
      setDrag(at);
      if (ev.clientY < 48) window.scrollBy(0, -16);
      if (ev.clientY > window.innerHeight - 48) window.scrollBy(0, 16);
    };
    const end = (ev: PointerEvent | KeyboardEvent) => {
      if (ev instanceof KeyboardEvent && ev.key !== 'Escape') return;
      window.removeEventListener('pointermove', over);
      window.removeEventListener('pointerup', end);
      window.removeEventListener('pointercancel', end);
      window.removeEventListener('keydown', end);
      setDrag(null);
      if (ev.type === 'pointerup' && at) done(drop(session.snapshot().document, at.rows, at.before, at.phase, wording));
      else if (ev.type === 'pointerup' && (ev as PointerEvent).pointerType !== 'mouse') perform({ do: 'open', row });
      else if (ev.type === 'pointerup')
        move({
          ...to(now.current, { row, column: columns.at(-1) as Column }),
          anchor: { row, column: columns[0] as Column },
        });
    };
    window.addEventListener('pointermove', over);
    window.addEventListener('pointerup', end);
    window.addEventListener('pointercancel', end);
    window.addEventListener('keydown', end);
  }

  // The upper half of a line means before it, the lower half behind it, both in
  // its phase.
  function target(y: number): { before: string | null; phase: string } {
    const lines = session.snapshot().document.lines;
    const els = [...(box.current?.querySelectorAll<HTMLElement>('[data-line]') ?? [])];
    for (const [i, el] of els.entries()) {
      const r = el.getBoundingClientRect();
      const phase = (lines[i]?.cells.phase ?? '').trim();
      if (y < r.top + r.height / 2) return { before: lines[i]?.id ?? null, phase };
      if (y < r.bottom || i === els.length - 1) return { before: lines[i + 1]?.id ?? null, phase };
    }
    return { before: null, phase: '' };
  }

  const range = rangeOf(state, view);
  const many = range.rows.length > 1 || range.columns.length > 1;
  const fraction = Math.max(
    2,
    ...[...sums.lines.values()].map((l) => (l.percent ? (percentText(l.percent).split('.')[1]?.length ?? 0) : 0)),
  );
  const gramFraction = Math.max(
    2,
    ...[...sums.lines.values()].map((l) => (l.grams ? (gramsText(l.grams).split('.')[1]?.length ?? 0) : 0)),
  );

  const problems = useMemo(() => {
    const out = new Map<string, (RowProblem & { field: string })[]>();
    for (const p of check?.problems ?? []) {
      if (p.row && p.list !== 'making')
        out.set(p.row, [...(out.get(p.row) ?? []), { text: p.text, help: p.help, field: p.field ?? '' }]);
    }
    return out;
  }, [check]);
  const clashes = (row: string) =>
    snap.disputes.flatMap((dispute) =>
      dispute.clashes.filter((c) => c.list === 'lines' && c.row === row).map((clash) => ({ dispute, clash })),
    );

  function cell(
    row: string,
    n: number,
    column: Column,
    content: React.ReactNode,
    value: string,
    extra: { className: string; readonly?: boolean },
  ) {
    const at: Cell = { row, column };
    const active = state.active.row === row && state.active.column === column;
    const chosen = many && range.rows.includes(row) && range.columns.includes(column);
    const typed = odd.get(cellKey(at));
    const wrong =
      typed !== undefined ||
      (problems.get(row)?.some((p) => p.field === column || (p.field === '' && column === 'material')) ?? false);
    const disputed = clashes(row).some((c) => c.clash.field === column);
    const ghostly = row === ghost;
    const label = say(ghostly ? 'grid.cell-new' : 'grid.cell', {
      column: say(`grid.column.${column}` as Word),
      n,
      value: (typed ?? value) || say('grid.empty-cell'),
    });
    const editing = active && state.edit !== null;
    return (
      <span
        key={column}
        role="gridcell"
        className={`${extra.className}${active ? ' active' : ''}${chosen ? ' chosen' : ''}${wrong && !editing ? ' wrong' : ''}${disputed ? ' disputed' : ''}`}
        data-cell={cellKey(at)}
        tabIndex={active && !editing ? 0 : -1}
        aria-selected={active || chosen}
        aria-label={editing ? undefined : label}
        aria-invalid={wrong || undefined}
      >
        {editing && state.edit ? (
          <Editor
            edit={state.edit}
            column={column}
            label={label}
            onText={onText}
            onKey={onEditKey}
            onPick={pick}
            onLeave={leaveEdit}
          />
        ) : (
          (typed ?? content)
        )}
      </span>
    );
  }

  const number = (d: Decimal | null, text: (d: Decimal) => string) => {
    if (!d) return null;
    const c = cut(text(d));
    return (
      <span className="num">
        <span className="i">{c.whole}</span>
        <span className="f">{c.fraction}</span>
      </span>
    );
  };

  // Text that is no number is shown as it was typed.
  const percentShown = (row: Row | undefined) => {
    const l = row && sums.lines.get(row.id);
    if (!row || !l) return null;
    if (l.qs)
      return (
        <>
          {<em>{say('grid.qs')}</em>}
          <span className="qs">{number(l.percent, percentText) ?? '–'}</span>
        </>
      );
    return number(l.percent, percentText) ?? row.cells.percent ?? '';
  };
  const percentRead = (row: Row | undefined): string => {
    const l = row && sums.lines.get(row.id);
    if (!row || !l) return '';
    if (!l.qs) return l.percent ? percentText(l.percent) : (row.cells.percent ?? '');
    return l.percent ? say('grid.qs-read', { value: percentText(l.percent) }) : say('grid.qs-none');
  };

  let n = 0;
  const line = (id: string, firstOfPhase: boolean) => {
    const row = doc.lines.find((l) => l.id === id);
    const found = check?.lines?.[id];
    n++;
    const mine = problems.get(id) ?? [];
    const own: RowProblem[] = odd.has(`${id}/grams`)
      ? [{ text: say('grid.unclear-grams'), help: say('grid.unclear-grams-help') }, ...mine]
      : mine;
    const notes = { dealt: deal.line.get(id) ?? [], clashes: clashes(id) };
    const noted = notes.dealt.length + notes.clashes.length + own.length > 0;
    const noteID = `notes-${id}`;
    const inci = found?.inci?.join('; ') ?? '';
    const fn = row?.cells.function || found?.function || '';
    const dropping = drag?.before === id ? ' drop' : '';
    return (
      <div
        key={id}
        role="row"
        aria-rowindex={n + 1}
        data-line={row ? id : undefined}
        aria-describedby={noted ? noteID : undefined}
        className={`line${firstOfPhase ? ' first' : ''}${state.active.row === id ? ' on' : ''}${noted ? ' marked' : ''}${row ? '' : ' ghost'}${drag?.rows.includes(id) ? ' held' : ''}${dropping}`}
      >
        {cell(
          id,
          n,
          'phase',
          firstOfPhase || state.active.row === id ? row?.cells.phase : null,
          row?.cells.phase ?? '',
          { className: `ph${firstOfPhase ? '' : ' same'}` },
        )}
        <span
          role="gridcell"
          className="no"
          aria-label={row ? say('grid.drag', { n }) : undefined}
          onPointerDown={(e) => grip(e, id)}
        >
          {row ? n : ''}
        </span>
        {cell(
          id,
          n,
          'material',
          row ? (
            <>
              {found?.code && isKind(found.kind) ? <Mark of={found.kind} /> : <span className="mk none" />}
              <span className="nm">{row.cells.material}</span>
            </>
          ) : (
            <span className="nm open">{say('grid.open')}</span>
          ),
          [row?.cells.material ?? '', found?.code && isKind(found.kind) ? say(`kind.${found.kind}`) : '']
            .filter(Boolean)
            .join(', '),
          { className: 'mt' },
        )}
        <span role="gridcell" className="in">
          {inci}
        </span>
        {cell(id, n, 'percent', percentShown(row), percentRead(row), { className: 'pc' })}
        {cell(
          id,
          n,
          'grams',
          row ? number(sums.lines.get(id)?.grams ?? null, gramsText) : null,
          (() => {
            const g = sums.lines.get(id)?.grams;
            return g ? gramsText(g) : '';
          })(),
          { className: 'gr' },
        )}
        {columns.includes('function') &&
          cell(id, n, 'function', fn, fn, { className: `fn${row?.cells.function ? '' : ' given'}` })}
        {noted && (
          <div role="gridcell" className="margin">
            <svg className="leader" width="52" height="1" aria-hidden="true">
              <path className="lead" fill="none" stroke="var(--rule)" />
              <circle className="lead" cx="0" cy="0" r="2" fill="var(--rule)" />
            </svg>
            <LineNotes id={noteID} session={session} problems={own} onWhy={onWhy} {...notes} />
          </div>
        )}
      </div>
    );
  };

  const off = compare(sums.total, hundred);
  const gramsHead = sums.stated ? say('grid.grams') : say('grid.grams-100');
  return (
    <>
      <p className="vh" id="grid-how">
        {say('grid.how')}
      </p>
      <div
        ref={box}
        className={`lines f${Math.min(fraction, 6)} g${Math.min(gramFraction, 3)}${drag ? ' dragging' : ''}`}
        role="grid"
        aria-label={say('grid.name')}
        aria-describedby="grid-how"
        aria-multiselectable="true"
        aria-rowcount={-1}
        onKeyDown={onKeyDown}
        onPointerDown={onPointerDown}
        onPointerOver={onPointerOver}
        onCopy={onCopy}
        onCut={onCopy}
        onPaste={onPaste}
      >
        <div className="head" role="row">
          <span role="columnheader" className="ph">
            <span className="vh">{say('grid.phase')}</span>
          </span>
          <span role="columnheader" className="no">
            <span className="vh">{say('grid.line')}</span>
          </span>
          <span role="columnheader" className="mt">
            {say('grid.material')}
          </span>
          <span role="columnheader" className="in">
            {say('grid.inci')}
          </span>
          <span role="columnheader" className="pc">
            {say('grid.percent')}
          </span>
          <span role="columnheader" className="gr">
            {gramsHead}
          </span>
          {columns.includes('function') && (
            <span role="columnheader" className="fn">
              {say('grid.function')}
            </span>
          )}
          {deal.whole.length > 0 && (
            <div role="columnheader" className="margin whole" aria-label={say('grid.notes')}>
              <LineNotes
                id="notes-whole"
                dealt={deal.whole}
                problems={[]}
                clashes={[]}
                session={session}
                onWhy={onWhy}
              />
            </div>
          )}
        </div>
        {sums.phases.map((p) => [
          ...p.rows.flatMap((id, i) => [
            line(id, i === 0),
            opened === id && (
              <OpenedLine
                key={`${id}/opened`}
                session={session}
                row={doc.lines.find((l) => l.id === id) as Row}
                n={doc.lines.findIndex((l) => l.id === id) + 1}
                found={check?.lines?.[id]}
                wording={wording}
                fold={() => {
                  setOpened(null);
                  wanted.current = true;
                }}
                act={perform}
              />
            ),
          ]),
          <div key={`${p.rows[0]}/sum`} role="row" className="sum">
            <span role="gridcell" className="mt">
              {p.phase ? say('grid.phase-sum', { phase: p.phase }) : say('grid.no-phase-sum')}
            </span>
            <span role="gridcell" className="pc">
              {number(p.percent, percentText)}
            </span>
            <span role="gridcell" className="gr">
              {number(p.grams, gramsText)}
            </span>
          </div>,
        ])}
        {rows.includes(ghost) && line(ghost, false)}
        <div role="row" className={`total${drag && drag.before === null ? ' drop' : ''}`}>
          <span role="gridcell" className="mt">
            {say('grid.total')}
            {doc.lines.length > 0 && off !== 0 && (
              <em className="off">
                {' '}
                {off > 0 ? say('grid.over', { n: cutText(sums.over) }) : say('grid.under', { n: cutText(sums.under) })}
              </em>
            )}
          </span>
          <span role="gridcell" className="pc">
            {number(sums.total, percentText)}
          </span>
          <span role="gridcell" className="gr">
            {number(sums.grams, gramsText)}
          </span>
        </div>
      </div>
    </>
  );
}

// editText is what an edit of a cell begins with.
function editText(row: Row | undefined, column: Column, sums: Sums): string {
  if (column !== 'grams') return cellText(row, column);
  const g = row && sums.lines.get(row.id)?.grams;
  return g ? print(g).replace('.', point) : '';
}

const cutText = (d: Decimal | null): string => {
  if (!d) return '';
  const c = cut(percentText(d));
  return c.whole + c.fraction;
};

function readCell(of: EventTarget): Cell | null {
  const key = (of as HTMLElement).closest<HTMLElement>('[data-cell]')?.dataset.cell;
  if (!key) return null;
  const at = key.lastIndexOf('/');
  return { row: key.slice(0, at), column: key.slice(at + 1) as Column };
}
