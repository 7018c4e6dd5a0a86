import { expect, test } from 'vitest';
import { readBlock } from './block.ts';
import { readPercent } from './cells.ts';
import { print, sum, trim } from './decimal.ts';
import { readTSV } from './tsv.ts';

const block = (text: string) => readBlock(readTSV(text));

test('a whole sheet with titles, phases in a column and a total', () => {
  const { lines } = block(
    'Phase\tIngredient\tINCI\t% w/w\tFunction\nA\tGlycerin\tGlycerin\t21,0\thumectant\n\tWater\tAqua\t2\t\nB\tMy oil\tOil\tq.s.\toil\n\tTotal\t\t100\t',
  );
  expect(lines).toEqual([
    { phase: 'A', material: 'Glycerin', percent: '21,0', function: 'humectant' },
    { phase: 'A', material: 'Water', percent: '2', function: '' },
    { phase: 'B', material: 'My oil', percent: 'q.s.', function: 'oil' },
  ]);
});

test('headings of phases stand in rows of their own', () => {
  const { lines } = block('Phase A\nGlycerin\t26\nAqua\t2\n\nPhase B: oils\nSunflower\tqs\nSub-total\t72');
  expect(lines.map((l) => [l.phase, l.material, l.percent])).toEqual([
    ['A', 'Glycerin', '26'],
    ['A', 'Aqua', '2'],
    ['B', 'Sunflower', 'qs'],
  ]);
  expect(block('Phase A\t28\nGlycerin\t26\nAqua\t2').lines.map((l) => [l.phase, l.material])).toEqual([
    ['A', 'Glycerin'],
    ['A', 'Aqua'],
  ]);
});

test('names that look like a phase or a total are kept where they have an amount', () => {
  const { lines } = block('C\tTotal eclipse wax\t3\nC\tE 471 blend\t97\n\tTotal phase C\t100\n\tSum:\t100');
  expect(lines.map((l) => l.material)).toEqual(['Total eclipse wax', 'E 471 blend']);
});

test('without titles the columns are told by what stands in them', () => {
  expect(block('1\tGlycerin\t20\t50\n2\tAqua\t80\t200').lines).toEqual([
    { material: 'Glycerin', percent: '20', grams: '50' },
    { material: 'Aqua', percent: '80', grams: '200' },
  ]);
  expect(block('40\tGlycerin\n60\tAqua').lines.map((l) => [l.material, l.percent])).toEqual([
    ['Glycerin', '40'],
    ['Aqua', '60'],
  ]);
  expect(block('12,5 %\tclay').lines).toEqual([{ percent: '12,5 %', material: 'clay' }]);
});

test('grams become percentages that come to 100 exactly', () => {
  const got = block('Glycerin\t100\nAqua\t100\nOil\t100 g');
  expect(got.fromGrams).toBe(true);
  const values = got.lines.map((l) => {
    const p = readPercent(l.percent ?? '');
    if (p.is !== 'number') throw new Error(l.percent);
    return p.value;
  });
  expect(print(trim(sum(values)))).toBe('100');
});

test('unknown names and unclear amounts are kept as typed', () => {
  expect(block('Grandmother’s "secret"\tabout 3\nOil\t97').lines[0]).toEqual({
    material: 'Grandmother’s "secret"',
    percent: 'about 3',
  });
  expect(block('').lines).toEqual([]);
});

test('the name of a sheet above its titles, and a sum without a word, are no lines', () => {
  const { lines } = block(
    'My hand cream\t\t\n12 May\t\tbatch 7\n\t\t\nPhase\tRaw material\t%\nA\tGlycerin\t33,3\nA\tAqua\t66,7\n\t\t100',
  );
  expect(lines).toEqual([
    { phase: 'A', material: 'Glycerin', percent: '33,3' },
    { phase: 'A', material: 'Aqua', percent: '66,7' },
  ]);
  expect(block('Glycerin\t33.3\nAqua\t33.3\nKaolin\t33.4\n\t100').lines).toHaveLength(3);
  expect(block('Glycerin\t30\nAqua\t50\n\t20').lines).toHaveLength(3);
});

test('grams that cannot be read leave the others as they are', () => {
  const { lines, fromGrams } = block('Ingredient\tg\nGlycerin\t125\nAqua\ta cup\nKaolin\t75');
  expect(fromGrams).toBe(false);
  expect(lines.map((l) => l.grams)).toEqual(['125', 'a cup', '75']);
});
