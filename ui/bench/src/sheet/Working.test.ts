import { expect, test } from 'vitest';
import { rowOf, tableOf } from './Working.tsx';

test('the table and the row behind a number are found in where it is from', () => {
  expect(tableOf('isotherms/solutes, row glycerol')).toEqual({ table: 'isotherms/solutes', row: 'glycerol' });
  expect(tableOf('the root')).toBeNull();
  expect(tableOf('water and Glycerin by volume')).toBeNull();
});

test('a row is shown as a list of what stands in it', () => {
  const t = {
    head: ['name', 'r', 'chi'],
    rows: [
      ['diglycerol', '6', ''],
      ['glycerol', '4.49', ''],
    ],
  };
  expect(rowOf(t, 'Glycerol')).toEqual({ head: ['name', 'glycerol'], rows: [['r', '4.49']] });
  expect(rowOf(t, 'honey')).toBe(t);
});
