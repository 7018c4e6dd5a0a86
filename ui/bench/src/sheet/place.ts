// Where notes stand in the margin: at the level of their lines, and where two
// collide both moved apart by the least total distance.
export interface Wanted {
  at: number; // the level it would like
  height: number;
}

// place answers with the top of each note, in the order given, which must be
// that of their levels. None stands above least; gap is kept clear between two.
export function place(notes: readonly Wanted[], gap: number, least = 0): number[] {
  // With the heights above it taken off, "clear of the one before" becomes "not
  // smaller than the one before": a monotone regression, by pooling.
  const offset: number[] = [];
  let sum = 0;
  for (const n of notes) {
    offset.push(sum);
    sum += n.height + gap;
  }
  const pools: { wants: number[]; at: number }[] = [];
  notes.forEach((n, i) => {
    let pool = { wants: [n.at - (offset[i] as number)], at: n.at - (offset[i] as number) };
    for (;;) {
      const before = pools.at(-1);
      if (!before || before.at <= pool.at) break;
      pools.pop();
      const wants = [...before.wants, ...pool.wants];
      pool = { wants, at: median(wants) };
    }
    pools.push(pool);
  });
  return pools.flatMap((p) => p.wants.map(() => Math.max(least, p.at))).map((at, i) => at + (offset[i] as number));
}

// The middle one moves no note more than needed; between two, any place costs
// the same, and the middle shares it.
function median(of: readonly number[]): number {
  const s = [...of].sort((a, b) => a - b);
  const n = s.length;
  return n % 2 ? (s[(n - 1) / 2] as number) : ((s[n / 2 - 1] as number) + (s[n / 2] as number)) / 2;
}
