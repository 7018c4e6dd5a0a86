import { expect, test } from 'vitest';
import { readTSV, writeTSV } from './tsv.ts';

test('a block is cut into cells', () => {
  expect(readTSV('A\tGlycerin\t21,0\r\nB\tOil\tq.s.\r\n')).toEqual([
    ['A', 'Glycerin', '21,0'],
    ['B', 'Oil', 'q.s.'],
  ]);
  expect(readTSV('one')).toEqual([['one']]);
  expect(readTSV('a\t\n\tb')).toEqual([
    ['a', ''],
    ['', 'b'],
  ]);
  expect(readTSV('a\n\nb')).toEqual([['a'], [''], ['b']]);
});

test('quotes hold tabs, line ends and quotes', () => {
  expect(readTSV('"Oil, ""light"""\t"two\nlines"\n3')).toEqual([['Oil, "light"', 'two lines'], ['3']]);
  expect(readTSV('5" mesh\t"not closed\t1')).toEqual([['5" mesh', '"not closed', '1']]);
  expect(readTSV('hard\u00a0space\t 12,5\u202f% ')).toEqual([['hard space', '12,5 %']]);
});

test('what is written is read back', () => {
  const rows = [
    ['Oil "light"', '12.5'],
    ['', 'q.s.'],
  ];
  expect(readTSV(writeTSV(rows))).toEqual(rows);
});
