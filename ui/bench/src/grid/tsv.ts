// Blocks of cells as spreadsheets put them on the clipboard: tabs between
// cells, line ends between rows, quotes around a cell that holds either.
export function readTSV(text: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  let cell = '';
  let quoted = false;
  let fresh = true; // at the start of a cell, where alone a quote opens one
  const t = text.replace(/\r\n?/g, '\n');
  for (let i = 0; i < t.length; i++) {
    const c = t[i] as string;
    if (quoted) {
      if (c !== '"') cell += c;
      else if (t[i + 1] === '"') {
        cell += '"';
        i++;
      } else quoted = false;
    } else if (c === '"' && fresh && closes(t, i + 1)) {
      quoted = true;
      fresh = false;
    } else if (c === '\t') {
      row.push(cell);
      cell = '';
      fresh = true;
    } else if (c === '\n') {
      row.push(cell);
      rows.push(row);
      row = [];
      cell = '';
      fresh = true;
    } else {
      cell += c;
      fresh = false;
    }
  }
  row.push(cell);
  rows.push(row);
  const last = rows.at(-1);
  if (rows.length > 1 && last?.length === 1 && last[0] === '') rows.pop();
  return rows.map((r) => r.map(clean));
}

// A quote that never closes at the end of a cell is an inch mark, not a quote.
function closes(t: string, from: number): boolean {
  for (let i = from; i < t.length; i++) {
    if (t[i] !== '"') continue;
    if (t[i + 1] === '"') {
      i++;
      continue;
    }
    return i + 1 === t.length || t[i + 1] === '\t' || t[i + 1] === '\n';
  }
  return false;
}

// Spreadsheets and web pages leave hard spaces; a cell is one line of text.
const clean = (cell: string): string => cell.replace(/[\s\u00a0\u202f]+/g, ' ').trim();

export function writeTSV(rows: readonly (readonly string[])[]): string {
  return rows.map((r) => r.map((c) => (/["\t\n]/.test(c) ? `"${c.replaceAll('"', '""')}"` : c)).join('\t')).join('\n');
}
