// What the table adds up itself, exactly and at once: the line that fills up,
// grams, phases, total. The server's answer says the same a moment later.
import { basis, gramsOf, readPercent } from './cells.ts';
import { add, compare, type Decimal, hundred, subtract, sum, zero } from './decimal.ts';
import type { Document } from './document.ts';

export interface LineSum {
  percent: Decimal | null; // null for an empty or unclear cell, and for a q.s. that cannot be filled
  qs: boolean;
  grams: Decimal | null;
}

export interface PhaseSum {
  phase: string;
  rows: string[];
  percent: Decimal;
  grams: Decimal;
}

export interface Sums {
  lines: Map<string, LineSum>;
  phases: PhaseSum[]; // runs of lines with the same phase
  total: Decimal;
  grams: Decimal;
  over: Decimal | null; // above 100 by so much
  under: Decimal | null;
  batch: Decimal;
  stated: boolean; // false: grams count for 100 g
}

export function sumsOf(d: Document): Sums {
  const { grams: batch, stated } = basis(d.head.batch);
  const read = d.lines.map((l) => ({
    id: l.id,
    phase: (l.cells.phase ?? '').trim(),
    percent: readPercent(l.cells.percent ?? ''),
  }));
  const written = sum(read.map((l) => (l.percent.is === 'number' ? l.percent.value : zero)));
  // Of several lines that fill up the first does; the others are asked about.
  const filling = read.find((l) => l.percent.is === 'qs');
  const rest = subtract(hundred, written);
  const filled = filling && rest.digits >= 0n ? rest : null;
  const lines = new Map<string, LineSum>();
  const phases: PhaseSum[] = [];
  for (const l of read) {
    const qs = l.percent.is === 'qs';
    const percent = l.percent.is === 'number' ? l.percent.value : l === filling ? filled : null;
    const grams = percent && gramsOf(percent, batch);
    lines.set(l.id, { percent, qs, grams });
    let run = phases.at(-1);
    if (!run || run.phase !== l.phase) {
      run = { phase: l.phase, rows: [], percent: zero, grams: zero };
      phases.push(run);
    }
    run.rows.push(l.id);
    if (percent && grams) {
      run.percent = add(run.percent, percent);
      run.grams = add(run.grams, grams);
    }
  }
  const total = sum(phases.map((p) => p.percent));
  const off = compare(total, hundred);
  return {
    lines,
    phases,
    total,
    grams: sum(phases.map((p) => p.grams)),
    over: off > 0 ? subtract(total, hundred) : null,
    under: off < 0 ? subtract(hundred, total) : null,
    batch,
    stated,
  };
}
