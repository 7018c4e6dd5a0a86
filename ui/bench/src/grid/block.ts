// A pasted block understood as lines of a formula: which column holds what,
// which rows are headings of phases, and which are totals. Names are never
// changed here.
import { percentOf, readGrams, readPercent } from './cells.ts';
import { add, compare, type Decimal, hundred, print, subtract, sum, trim } from './decimal.ts';

export type Column = 'phase' | 'material' | 'percent' | 'grams' | 'function';

export interface PastedLine {
  phase?: string;
  material?: string;
  percent?: string;
  grams?: string;
  function?: string;
}

export interface Block {
  lines: PastedLine[];
  fromGrams: boolean; // percentages were worked out from grams
}

const titles: [Column, RegExp][] = [
  ['phase', /^(phase|part|ph\.?)$/i],
  ['material', /^(raw materials?|materials?|ingredients?|trade name|names?|inci( names?)?|substance|component)$/i],
  ['percent', /^(%|% ?\(?w\/w\)?|w\/w( ?%)?|wt\.? ?%|percent(age)?|% by weight|mass ?%|amount ?\(?%\)?)$/i],
  ['grams', /^(g|grams?|gm|weight( ?\(?g\)?)?|amount ?\(?g\)?|mass ?\(?g\)?)$/i],
  ['function', /^(functions?|role|purpose|use)$/i],
];

const highest = 6; // rows in which the row of titles is looked for

const heading = /^(?:phase|part)\s+([A-Za-z0-9]{1,3})\b|^([A-H]\d?)\s*[:.)]?$/i;
const total = /^(grand |sub-?)?(total|sum)s?( (of )?(phase )?[a-z0-9]{0,2})?\s*[:.]?\s*(%|g)?$/i;

const empty = (cells: readonly string[]): boolean => cells.every((c) => c === '');
const amount = (c: string): boolean => {
  const p = readPercent(c);
  return p.is === 'number' || p.is === 'qs' || readGrams(c) !== null;
};

// readBlock looks for a row of titles; without one it goes by what stands in
// the columns.
export function readBlock(cells: readonly (readonly string[])[]): Block {
  const rows = cells.filter((r) => !empty(r));
  const width = Math.max(0, ...rows.map((r) => r.length));
  // A sheet's own name and date may stand above its row of titles.
  const above = rows.slice(0, highest).findIndex((r) => byTitles(r) !== null);
  const titled = byTitles(rows[above] ?? []);
  const body = titled ? rows.slice(above + 1) : rows;
  const columns = titled ?? byContent(body, width);
  const at = (row: readonly string[], column: Column): string => row[columns.indexOf(column)] ?? '';
  const lines: PastedLine[] = [];
  let phase: string | undefined;
  for (const row of body) {
    const filled = row.filter((c) => c !== '');
    const lone =
      filled.length === 1
        ? (filled[0] as string)
        : filled.length === 2 && amount(filled[1] as string)
          ? (filled[0] as string)
          : null;
    const m = lone !== null && filled.length === 1 ? heading.exec(lone) : null;
    if (m) {
      phase = (m[1] ?? m[2] ?? '').toUpperCase();
      continue;
    }
    // A row of a phase with its own sum: "Phase A  26.0".
    const summed = lone !== null && filled.length === 2 ? /^(?:phase|part)\s+([A-Za-z0-9]{1,3})\b/i.exec(lone) : null;
    if (summed) {
      phase = (summed[1] ?? '').toUpperCase();
      continue;
    }
    if (filled.some((c) => total.test(c)) && filled.length <= 4) continue;
    const own = at(row, 'phase').replace(/^phase\s+/i, '');
    if (own !== '') phase = own;
    const line: PastedLine = { material: at(row, 'material') };
    if (phase !== undefined) line.phase = phase;
    if (columns.includes('percent')) line.percent = at(row, 'percent');
    if (columns.includes('grams')) line.grams = at(row, 'grams');
    if (columns.includes('function')) line.function = at(row, 'function');
    if (!line.material && !line.percent && !line.grams) continue;
    lines.push(line);
  }
  if (sumsUp(lines)) lines.pop();
  const fromGrams = !columns.includes('percent') && columns.includes('grams') && percentFromGrams(lines);
  return { lines, fromGrams };
}

// sumsUp says of an amount without a name at the end that it is the sum of those
// above it.
function sumsUp(lines: readonly PastedLine[]): boolean {
  const end = lines.at(-1);
  if (!end || end.material || lines.length < 3) return false;
  return (['percent', 'grams'] as const).some((column) => {
    const given = numbersOf([end[column] ?? ''])[0];
    if (!given) return false;
    const off = subtract(sum(numbersOf(lines.slice(0, -1).map((l) => l[column] ?? ''))), given);
    return compare(off.digits < 0n ? { ...off, digits: -off.digits } : off, { digits: 5n, scale: 1 }) <= 0;
  });
}

function byTitles(row: readonly string[]): (Column | null)[] | null {
  const seen = new Set<Column>();
  const out = row.map((c) => {
    const found = titles.find(([column, words]) => !seen.has(column) && words.test(c));
    if (!found) return null;
    seen.add(found[0]);
    return found[0];
  });
  return seen.has('material') && seen.size > 1 ? out : null;
}

// Letters in a narrow column are phases, the first column of names is the
// material. Numbers that come to about 100 are percent; else they are grams.
function byContent(rows: readonly (readonly string[])[], width: number): (Column | null)[] {
  const out: (Column | null)[] = Array.from({ length: width }, () => null);
  const column = (i: number) => rows.map((r) => r[i] ?? '').filter((c) => c !== '');
  const numeric: number[] = [];
  for (let i = 0; i < width; i++) {
    const cells = column(i);
    if (cells.length === 0) continue;
    const numbers = cells.filter(amount).length;
    if (numbers * 2 >= cells.length) numeric.push(i);
    else if (
      !out.includes('phase') &&
      !out.includes('material') &&
      cells.every((c) => /^(phase\s+)?[A-Za-z]\d?$/i.test(c))
    )
      out[i] = 'phase';
    else if (!out.includes('material')) out[i] = 'material';
    else if (!out.includes('function')) out[i] = 'function';
  }
  // A column of 1, 2, 3 before the names only counts the lines.
  const counts = (i: number) =>
    i < out.indexOf('material') && column(i).every((c, n) => c.replace(/\.$/, '') === String(n + 1));
  const amounts = numeric.filter((i) => !counts(i));
  const like =
    amounts.find((i) => column(i).some((c) => /%/.test(c) || readPercent(c).is === 'qs')) ??
    amounts.find((i) => isHundred(column(i)));
  const percent =
    like ??
    (amounts.length === 1 &&
    !column(amounts[0] as number).some((c) => /g$/i.test(c)) &&
    below(column(amounts[0] as number))
      ? amounts[0]
      : undefined);
  if (percent !== undefined) out[percent] = 'percent';
  const grams = amounts.find((i) => i !== percent);
  if (grams !== undefined) out[grams] = 'grams';
  return out;
}

const numbersOf = (cells: readonly string[]): Decimal[] =>
  cells.flatMap((c) => readGrams(c.replace(/\s*%$/, '')) ?? []);
const isHundred = (cells: readonly string[]): boolean => {
  const s = sum(numbersOf(cells));
  // Rounding of ten lines to a hundredth moves a sum by a tenth at most; a
  // total row doubles it.
  return [hundred, add(hundred, hundred)].some((h) => {
    const off = subtract(s, h);
    return compare(off.digits < 0n ? { ...off, digits: -off.digits } : off, { digits: 5n, scale: 1 }) <= 0;
  });
};
const below = (cells: readonly string[]): boolean => compare(sum(numbersOf(cells)), hundred) <= 0;

// Grams of a whole formula become percentages of their sum. What rounding
// leaves over goes to the largest line, so that they come to 100 exactly.
function percentFromGrams(lines: PastedLine[]): boolean {
  const read = lines.map((l) => readGrams(l.grams ?? ''));
  // What cannot be read would be missing from the sum of the others.
  if (read.some((g, i) => g === null && lines[i]?.grams)) return false;
  const known = read.filter((g): g is Decimal => g !== null);
  const all = sum(known);
  if (known.length === 0 || all.digits <= 0n) return false;
  let largest = -1;
  let left = hundred;
  const percents = read.map((g, i) => {
    if (!g) return null;
    if (largest < 0 || compare(g, read[largest] as Decimal) > 0) largest = i;
    const p = readPercent(percentOf(g, all) ?? '');
    if (p.is !== 'number') return null;
    left = subtract(left, p.value);
    return p.value;
  });
  lines.forEach((l, i) => {
    const p = percents[i];
    delete l.grams;
    if (p) l.percent = print(trim(i === largest ? add(p, left) : p));
  });
  return true;
}
