import { expect, test } from 'vitest';
import type { MarginNote } from '../api/types.ts';
import { dealOf, linesText } from './deal.ts';

const note = (
  rule: string,
  severity: string,
  rows: string[],
  figures: string[] = [],
  verdict = 'broken',
): MarginNote => ({ rule, severity, verdict, rows, figures, text: rule, help: '', needs: '' });

test('each finding stands once, the gravest first, spread over its lines', () => {
  const d = dealOf(
    [
      note('a', 'advice', ['1']),
      note('b', 'advice', ['1', '2', '3']),
      note('c', 'stop', ['1']),
      note('d', 'warn', ['gone']),
      note('e', 'advice', [], ['water.reserve']),
      note('f', 'stop', ['2'], [], 'cannot-tell'),
    ],
    ['1', '2', '3'],
  );
  expect(d.line.get('1')?.map((x) => x.note.rule)).toEqual(['c', 'a']);
  expect(d.line.get('3')?.map((x) => [x.note.rule, ...x.also])).toEqual([['b', 1, 2]]);
  expect(d.line.get('2')?.[0]?.gravity).toBe('cannot-tell');
  expect(d.whole.map((x) => x.note.rule)).toEqual(['d']);
  expect(d.water.map((x) => x.note.rule)).toEqual(['e']);
  expect(d.stops.map((x) => x.note.rule)).toEqual(['c']);
});

test('runs of lines are written short', () => {
  expect(linesText([1, 2, 3, 5, 7, 8])).toBe('1–3, 5, 7, 8');
});
