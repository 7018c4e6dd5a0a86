import { expect, test } from 'vitest';
import {
  type Cell,
  type Column,
  columns,
  type GridState,
  press,
  rangeOf,
  type Step,
  settle,
  start,
  type View,
} from './model.ts';

const view = (cols: readonly Column[] = columns): View => ({
  rows: ['a', 'b', 'c', 'open'],
  columns: cols,
  text: (c: Cell) => `${c.row}.${c.column}`,
});
const at = (s: GridState) => `${s.active.row}.${s.active.column}`;

function keys(s: GridState, text: string, v = view()): Step {
  let step: Step = { state: s, used: true };
  for (const k of text.split(' ')) {
    const parts = k.split('+');
    const key = parts.pop() as string;
    step = press(
      step.state,
      { key, ctrl: parts.includes('C'), shift: parts.includes('S'), alt: parts.includes('A') },
      v,
    );
  }
  return step;
}

test('arrows, Home, End and their far ends', () => {
  const s = start('a');
  expect(at(keys(s, 'ArrowDown ArrowRight').state)).toBe('b.percent');
  expect(at(keys(s, 'ArrowUp ArrowLeft ArrowLeft ArrowLeft').state)).toBe('a.phase');
  expect(at(keys(s, 'C+ArrowDown').state)).toBe('open.material');
  expect(at(keys(s, 'End').state)).toBe('a.function');
  expect(at(keys(s, 'C+End Home').state)).toBe('open.phase');
  expect(at(keys(s, 'PageDown PageUp').state)).toBe('a.material');
});

test('Tab walks along the rows, Enter comes back to where the row was begun', () => {
  expect(at(keys(start('a'), 'Tab Tab Enter').state)).toBe('b.material');
  expect(at(keys(start('a', 'function'), 'Tab').state)).toBe('b.phase');
  expect(at(keys(start('b', 'phase'), 'S+Tab').state)).toBe('a.function');
  expect(at(keys(start('b'), 'S+Enter').state)).toBe('a.material');
});

test('the table is no trap: past its end, or after Escape, Tab leaves', () => {
  expect(keys(start('open', 'function'), 'Tab')).toMatchObject({ act: { do: 'leave' }, used: false });
  expect(keys(start('a', 'phase'), 'S+Tab').used).toBe(false);
  expect(keys(start('b'), 'Escape Tab')).toMatchObject({ act: { do: 'leave' }, used: false });
  expect(keys(start('b'), 'Escape ArrowDown Tab').used).toBe(true);
});

test('typing replaces, F2 opens, Escape restores, Enter writes and goes down', () => {
  const typed = keys(start('a', 'percent'), '7');
  expect(typed.state.edit).toEqual({ text: '', how: 'typed' });
  expect(typed.used).toBe(false); // the character itself is the browser's to put in
  const opened = keys(start('a', 'percent'), 'F2');
  expect(opened.state.edit).toEqual({ text: 'a.percent', how: 'opened' });
  expect(keys(opened.state, 'Escape')).toMatchObject({ state: { edit: null, active: { row: 'a' } }, used: true });
  expect(keys(opened.state, 'Escape').act).toBeUndefined();
  const written = keys({ ...opened.state, edit: { text: '7,5', how: 'opened' } }, 'Enter');
  expect(written.act).toEqual({ do: 'write', cell: { row: 'a', column: 'percent' }, text: '7,5' });
  expect(at(written.state)).toBe('b.percent');
  expect(at(keys(typed.state, 'Tab').state)).toBe('a.grams');
  expect(at(keys(typed.state, 'Tab 5 Enter').state)).toBe('b.percent');
});

test('arrows leave a typed cell and move the caret in an opened one', () => {
  const typed = { ...start('a'), edit: { text: 'x', how: 'typed' as const } };
  expect(keys(typed, 'ArrowDown')).toMatchObject({ act: { do: 'write', text: 'x' }, used: true });
  expect(keys(typed, 'F2 ArrowLeft').used).toBe(false);
});

test('a range grows with Shift from where it began', () => {
  const s = keys(start('b', 'material'), 'S+ArrowDown S+ArrowRight S+ArrowRight').state;
  expect(rangeOf(s, view())).toEqual({ rows: ['b', 'c'], columns: ['material', 'percent', 'grams'] });
  expect(rangeOf(keys(s, 'S+ArrowUp S+ArrowUp').state, view())).toEqual({
    rows: ['a', 'b'],
    columns: ['material', 'percent', 'grams'],
  });
  expect(keys(s, 'Delete').act).toMatchObject({ do: 'clear' });
  expect(keys(s, 'C+Delete').act).toEqual({ do: 'remove', rows: ['b', 'c'] });
  expect(keys(s, 'A+ArrowUp').act).toEqual({ do: 'shift', rows: ['b', 'c'], by: -1 });
  expect(rangeOf(keys(s, 'C+a').state, view()).rows).toHaveLength(4);
  expect(keys(s, 'ArrowDown').state.anchor).toBeNull();
});

test('undo, redo, opening and inserting are asked for, never done here', () => {
  const s = start('b');
  expect(keys(s, 'C+z').act).toEqual({ do: 'undo' });
  expect(keys(s, 'C+S+Z').act).toEqual({ do: 'redo' });
  expect(keys(s, 'C+y').act).toEqual({ do: 'redo' });
  expect(keys(s, 'A+Enter').act).toEqual({ do: 'open', row: 'b' });
  expect(keys(s, 'C+Enter').act).toEqual({ do: 'insert', beside: 'b', above: false });
  expect(keys(s, 'C+c').used).toBe(false);
});

test('composed characters begin an edit; keys that write nothing do not', () => {
  expect(keys(start('a'), 'Dead').state.edit).not.toBeNull();
  expect(keys(start('a'), 'é').state.edit).not.toBeNull();
  for (const k of ['Shift', 'F5', 'CapsLock', 'A+x']) expect(keys(start('a'), k).state.edit).toBeNull();
});

test('the active cell settles when its row or column goes', () => {
  const s = start('c', 'function');
  const narrow = { ...view(['material', 'percent']), rows: ['a', 'b', 'open'] };
  expect(at(settle(s, narrow, ['a', 'b', 'c', 'open']))).toBe('open.material');
  expect(settle(start('a'), view())).toEqual(start('a'));
});
