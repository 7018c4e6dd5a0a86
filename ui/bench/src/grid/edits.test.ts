import { expect, test } from 'vitest';
import { print } from './decimal.ts';
import { apply, type Document } from './document.ts';
import { clear, copy, drop, type Edits, insertLine, paste, remove, shift, write } from './edits.ts';
import { type Column, columns } from './model.ts';
import { sumsOf } from './sums.ts';

const w = (key: string, n: number) => `${key} ${n}`;
const line = (id: string, phase: string, material: string, percent: string) => ({
  id,
  cells: { phase, material, percent },
});
const doc = (): Document => ({
  head: { batch: '250 g' },
  lines: [
    line('a', 'A', 'Glycerin', '21'),
    line('b', 'A', 'Aqua', '2'),
    line('c', 'B', 'Sunflower oil', 'qs'),
    line('d', 'B', 'Kaolin', '8'),
  ],
  making: [],
});
const after = (d: Document, e: Edits) =>
  (e.changes.length ? apply(d, e.changes) : { document: d, inverse: [], clashes: [] }).document;
const order = (d: Document) => d.lines.map((l) => `${l.cells.phase ?? ''}${l.id}`).join(' ');
const pasted = (d: Document, text: string, row = 'open', column: Column = 'material', more = {}) => {
  let n = 0;
  return paste(
    d,
    {
      text,
      at: { row, column },
      range: { rows: [row], columns: [column] },
      columns,
      own: false,
      ids: () => `n${++n}`,
      ...more,
    },
    w,
  );
};

test('a cell says what was seen in it', () => {
  expect(write(doc(), { row: 'a', column: 'percent' }, ' 22,5 ', w).changes).toEqual([
    { do: 'set', list: 'lines', row: 'a', field: 'percent', from: '21', to: '22,5' },
  ]);
  expect(write(doc(), { row: 'a', column: 'percent' }, '21', w).changes).toEqual([]);
});

test('grams become percent of the batch; what cannot be read is given back', () => {
  expect(write(doc(), { row: 'a', column: 'grams' }, '50', w).changes[0]).toMatchObject({ field: 'percent', to: '20' });
  expect(write(doc(), { row: 'a', column: 'grams' }, '1', w).changes[0]).toMatchObject({ to: '0.4' });
  expect(write(doc(), { row: 'c', column: 'grams' }, 'q.s.', w).changes).toEqual([]);
  expect(write(doc(), { row: 'a', column: 'grams' }, 'some', w)).toMatchObject({ changes: [], unclear: { row: 'a' } });
});

test('the open row becomes a line of the last phase', () => {
  const d = after(doc(), write(doc(), { row: 'open', column: 'material' }, 'Maize starch', w));
  expect(d.lines.at(-1)).toEqual({ id: 'open', cells: { phase: 'B', material: 'Maize starch' } });
  expect(write(doc(), { row: 'open', column: 'material' }, '  ', w).changes).toEqual([]);
});

test('a typed phase never tears another in two', () => {
  expect(order(after(doc(), write(doc(), { row: 'a', column: 'phase' }, 'B', w)))).toBe('Ab Bc Bd Ba');
  expect(order(after(doc(), write(doc(), { row: 'b', column: 'phase' }, 'B', w)))).toBe('Aa Bb Bc Bd');
  expect(order(after(doc(), write(doc(), { row: 'd', column: 'phase' }, 'C', w)))).toBe('Aa Ab Bc Cd');
  const three = { ...doc(), lines: [...doc().lines, line('e', 'B', 'Starch', '3')] };
  expect(order(after(three, write(three, { row: 'd', column: 'phase' }, 'C', w)))).toBe('Aa Ab Bc Be Cd');
});

test('lines move within a phase, and over its edge by changing phase first', () => {
  let d = doc();
  const up = () => (d = after(d, shift(d, ['d'], -1, w)));
  expect(order(up())).toBe('Aa Ab Bd Bc');
  expect(order(up())).toBe('Aa Ab Ad Bc');
  expect(order(up())).toBe('Aa Ad Ab Bc');
  expect(order(after(d, shift(d, ['a'], -1, w)))).toBe('Aa Ad Ab Bc');
  expect(order(after(doc(), shift(doc(), ['a', 'b'], 1, w)))).toBe('Ba Bb Bc Bd');
  expect(order(after(doc(), shift(doc(), ['a'], 1, w)))).toBe('Ab Aa Bc Bd');
});

test('dragged lines land before the one they were dropped on, in its phase', () => {
  expect(order(after(doc(), drop(doc(), ['d'], 'b', 'A', w)))).toBe('Aa Ad Ab Bc');
  expect(order(after(doc(), drop(doc(), ['a', 'b'], null, 'B', w)))).toBe('Bc Bd Ba Bb');
  expect(drop(doc(), ['a', 'b'], 'b', 'A', w).changes).toEqual([]);
  expect(order(after(doc(), drop(doc(), ['b'], 'c', 'B', w)))).toBe('Aa Bb Bc Bd');
});

test('lines are put in and taken out', () => {
  expect(order(after(doc(), insertLine(doc(), 'b', false, 'n', w)))).toBe('Aa Ab An Bc Bd');
  expect(order(after(doc(), insertLine(doc(), 'a', true, 'n', w)))).toBe('An Aa Ab Bc Bd');
  expect(order(after(doc(), remove(doc(), ['a', 'c', 'open'], w)))).toBe('Ab Bd');
});

test('a block is copied with q.s. and exact grams, and comes back the same', () => {
  const range = { rows: ['a', 'b', 'c', 'd', 'open'], columns: ['phase', 'material', 'percent', 'grams'] as Column[] };
  const text = copy(doc(), range, ',');
  expect(text).toBe('A\tGlycerin\t21\t52,5\nA\tAqua\t2\t5\nB\tSunflower oil\tq.s.\t172,5\nB\tKaolin\t8\t20');
  const back = pasted(doc(), copy(doc(), { rows: ['a', 'b'], columns: [...columns] }, '.'), 'c', 'phase', {
    own: true,
  });
  expect(after(doc(), back).lines.map((l) => l.cells.material)).toEqual(['Glycerin', 'Aqua', 'Glycerin', 'Aqua']);
  const cut = after(
    doc(),
    clear(
      doc(),
      [
        { row: 'a', column: 'percent' },
        { row: 'a', column: 'grams' },
      ],
      w,
      'cut',
    ),
  );
  expect(cut.lines[0]?.cells).toEqual({ phase: 'A', material: 'Glycerin' });
});

test('a pasted block writes over lines and goes on below them', () => {
  const d = after(doc(), pasted(doc(), 'Kaolin\t7,5\nZinc thing\t1\nThird\t2', 'd'));
  expect(d.lines.map((l) => [l.id, l.cells.phase, l.cells.material, l.cells.percent])).toEqual([
    ['a', 'A', 'Glycerin', '21'],
    ['b', 'A', 'Aqua', '2'],
    ['c', 'B', 'Sunflower oil', 'qs'],
    ['d', 'B', 'Kaolin', '7,5'],
    ['n1', 'B', 'Zinc thing', '1'],
    ['n2', 'B', 'Third', '2'],
  ]);
});

test('a whole formula is pasted into the open row, with its phases', () => {
  const empty: Document = { head: {}, lines: [], making: [] };
  const e = pasted(empty, 'Phase A\nGlycerin\t26\nPhase B\nMy own oil\tq.s.');
  const d = after(empty, e);
  expect(order(d)).toBe('Aopen Bn1');
  expect(e.rows).toEqual(['open', 'n1']);
  expect(d.lines[1]?.cells).toEqual({ phase: 'B', material: 'My own oil', percent: 'q.s.' });
});

test('one value fills a range', () => {
  const e = pasted(doc(), '5', 'a', 'percent', { range: { rows: ['a', 'b'], columns: ['percent'] } });
  expect(
    after(doc(), e)
      .lines.slice(0, 2)
      .map((l) => l.cells.percent),
  ).toEqual(['5', '5']);
});

test('the sums are exact and the q.s. fills them', () => {
  const s = sumsOf(doc());
  expect(print(s.lines.get('c')?.percent ?? { digits: 0n, scale: 0 })).toBe('69');
  expect(s.phases.map((p) => [p.phase, print(p.percent), print(p.grams)])).toEqual([
    ['A', '23', '57.5'],
    ['B', '77', '192.5'],
  ]);
  expect([s.over, s.under]).toEqual([null, null]);
  const over = doc();
  over.lines[0] = line('a', 'A', 'Glycerin', '90.4');
  const o = sumsOf(over);
  expect(o.lines.get('c')?.percent).toBeNull();
  expect(o.over && print(o.over)).toBe('0.4');
  const two = doc();
  two.lines[0] = line('a', 'A', 'Glycerin', 'q.s.');
  expect(sumsOf(two).lines.get('c')?.percent).toBeNull();
  expect(print(sumsOf(two).lines.get('a')?.percent ?? { digits: 0n, scale: 0 })).toBe('90'); // as on the server
});

test('a cell is written over what was seen, not over what came meanwhile', () => {
  const d = doc(); // another window has made 21 of what was 20 when the writing began
  expect(write(d, { row: 'a', column: 'percent' }, '23', w, '20').changes).toEqual([
    { do: 'set', list: 'lines', row: 'a', field: 'percent', from: '20', to: '23' },
  ]);
  expect(write(d, { row: 'a', column: 'percent' }, '20', w, '20').changes).toEqual([]); // nothing was written
  expect(write(d, { row: 'a', column: 'percent' }, '21', w, '20').changes).toEqual([]); // both want the same
});
