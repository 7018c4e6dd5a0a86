import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { everyWord, say } from './words.ts';

const sources = (folder: string): [string, string][] =>
  readdirSync(folder, { withFileTypes: true }).flatMap((e) =>
    e.isDirectory()
      ? sources(`${folder}/${e.name}`)
      : /(?<!\.test)\.tsx?$/.test(e.name)
        ? [[e.name, readFileSync(`${folder}/${e.name}`, 'utf8')] as [string, string]]
        : [],
  );

test('arguments are filled in, and one is said as one', () => {
  expect(say('state.changes', { n: 3 })).toBe('3 changes');
  expect(say('state.changes', { n: 1 })).toBe('1 change');
  expect(say('grid.over', { n: '0.40' })).toBe('over by 0.40');
});

test('every word is used somewhere', () => {
  const text = sources(import.meta.dirname)
    .filter(([name]) => name !== 'words.ts')
    .map(([, t]) => t)
    .join('\n');
  const unused = Object.keys(everyWord).filter((k) => {
    const key = k.replace(/\.one$/, '');
    // Families are looked up by a key put together from a part that varies.
    const family = ['figure.', 'note.', 'reading.', 'severity.', 'kind.', 'grade.', 'edit.', 'grid.column.'].some((f) =>
      key.startsWith(f),
    );
    return !family && !text.includes(`'${key}'`);
  });
  expect(unused).toEqual([]);
});

test('nothing is promised that no program can', () => {
  for (const [key, text] of Object.entries(everyWord)) {
    expect(/\b(safe|compliant|protected|self-preserving)\b|preservative needed/i.test(text), `${key}: ${text}`).toBe(
      false,
    );
  }
});
