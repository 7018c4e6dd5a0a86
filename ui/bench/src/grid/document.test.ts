import { expect, test } from 'vitest';
import { apply, bounds, type Change, type Clash, clone, type Document, Refused } from './document.ts';
import cases from './testdata/apply.json' with { type: 'json' };

interface Case {
  name: string;
  before: Document; // of the first only; each goes on from the one before
  changes: Change[];
  after: Document;
  inverse: Change[];
  clashes: Clash[];
  refused: boolean;
}

const chained = (): Case[] => {
  let before: Document | undefined;
  return (cases as unknown as Case[]).map((c) => {
    const out = { ...c, before: before ?? c.before };
    before = c.after;
    return out;
  });
};

// bare leaves out what Go leaves out of its JSON: empty and absent are one.
const bare = (v: unknown): unknown =>
  JSON.parse(
    JSON.stringify(v, (_, x) =>
      x === '' || x === false || (typeof x === 'object' && x && !Array.isArray(x) && Object.keys(x).length === 0)
        ? undefined
        : x,
    ),
  );

test('does what the server does, command by command', () => {
  let [clashed, refused] = [0, 0];
  for (const c of chained()) {
    const kept = structuredClone(c.before);
    if (c.refused) {
      refused++;
      expect(() => apply(c.before, c.changes), c.name).toThrow(Refused);
      expect(c.before, c.name).toEqual(kept);
      continue;
    }
    const got = apply(c.before, c.changes);
    clashed += c.clashes.length > 0 ? 1 : 0;
    expect(bare(got.clashes), c.name).toEqual(bare(c.clashes));
    expect(bare(got.document), c.name).toEqual(bare(c.after));
    expect(bare(got.inverse), c.name).toEqual(bare(c.inverse));
    expect(c.before, c.name).toEqual(kept);
  }
  expect(clashed).toBeGreaterThan(10);
  expect(refused).toBeGreaterThan(10);
});

test('an inverse gives the document back', () => {
  for (const c of chained()) {
    if (c.refused || c.inverse.length === 0) continue;
    const there = apply(c.before, c.changes);
    expect(apply(there.document, there.inverse).document, c.name).toEqual(clone(c.before));
  }
});

test('bounds are kept', () => {
  const d: Document = { head: {}, lines: [{ id: 'a', cells: {} }], making: [] };
  expect(() => apply(d, [])).toThrow(Refused);
  expect(() =>
    apply(d, [
      {
        do: 'set',
        list: 'lines',
        row: 'a',
        field: 'note',
        from: '',
        to: 'µ'.repeat(bounds.cell / 2 + 1),
      },
    ]),
  ).toThrow(Refused);
  expect(() => apply(d, [{ do: 'insert', list: 'lines', row: 'x'.repeat(65), from: '', to: '' }])).toThrow(Refused);
});
