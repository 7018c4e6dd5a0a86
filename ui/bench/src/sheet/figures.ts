// The figures at the head of a sheet: on which axis each stands, and what is
// said under it.
import type { Figure } from '../api/types.ts';
import { evidence, local, type Read, readFigure, significant } from '../format.ts';
import { known, say, type Word } from '../words.ts';

export interface Tick {
  at: number;
  text: string;
}

export interface StripFigure {
  id: string;
  title: string;
  read: Read | null;
  why: string; // it is missing
  evidence: string;
  note: string;
  axis: { min: number; max: number; ticks: Tick[]; value: number; low: number; high: number } | null;
  spoken: string;
  figure: Figure;
}

export interface Told {
  figures: readonly Figure[];
  temperature: string;
  wrote: string; // water written as such, in % with one decimal
  limits: Record<string, string>; // activity each room for water is counted to
}

// A figure's axis is one of a few fixed ones, the first that holds it.
const axes: Record<string, { from: number; to: number[]; ticks?: Tick[] }> = {
  'water.total': { from: 0, to: [5, 25, 100] },
  'water.activity': { from: 0, to: [1] },
  'water.reserve': { from: 0, to: [20, 100, 1000] },
  'water.oil-room': { from: 0, to: [1, 5, 25] },
  'structure.internal-fraction': { from: 0, to: [1] },
  'structure.density': { from: 0.8, to: [1.6], ticks: [{ at: 1, text: '1' }] },
  'acidity.ph': { from: 0, to: [14], ticks: [{ at: 7, text: '7' }] },
};

const plain = (v: number): string => local(String(v));

export function stripFigure(f: Figure, told: Told): StripFigure {
  // Room that is less than none is said the other way round.
  const over = f.id === 'water.reserve' && f.high !== null && f.high < 0;
  const title = over ? say('strip.over') : (known(`figure.${f.id}`) ?? f.title);
  const read = readFigure(f, over);
  const why = read ? '' : f.notes.join('; ');
  return {
    id: f.id,
    title,
    read,
    why,
    evidence: read ? evidence(f) : '',
    note: read ? noteOf(f, told, over) : '',
    axis: read ? axisOf(f, told, over) : null,
    spoken: read
      ? say('strip.read', {
          title,
          value: read.value,
          unit: read.unit && ` ${read.unit}`,
          band: read.sentence,
          evidence: evidence(f),
        })
      : say('strip.read-missing', { title, why }),
    figure: f,
  };
}

function noteOf(f: Figure, told: Told, over: boolean): string {
  if (f.reading) return say('strip.reading', { reading: f.reading });
  if (f.id === 'water.reserve') {
    const limit = local(told.limits[f.id] ?? '');
    if (limit === '') return '';
    if (over) return say('note.water.reserve-over', { limit });
    const next = told.figures.find((x) => x.id === 'water.reserve-075');
    const read = next && next.value !== null && next.value > 0 ? readFigure(next) : null;
    const further = local(told.limits['water.reserve-075'] ?? '');
    return read && further !== ''
      ? say('note.water.reserve', { limit, next: read.value, further })
      : say('note.water.reserve-plain', { limit });
  }
  const key = `note.${f.id}`;
  return known(key) ? say(key as Word, { wrote: local(told.wrote), temperature: local(told.temperature) }) : '';
}

function axisOf(f: Figure, told: Told, over: boolean): StripFigure['axis'] {
  const [value, low, high] = [f.value ?? 0, f.low ?? 0, f.high ?? 0].map((v) => (over ? -v : v)) as [
    number,
    number,
    number,
  ];
  const [lo, hi] = [Math.min(low, high), Math.max(low, high)];
  const fixed = axes[f.id];
  // A band that reaches below the axis is shown whole.
  const from = fixed && lo < fixed.from ? -roomy(-lo) : (fixed?.from ?? 0);
  const to = fixed ? (fixed.to.find((e) => hi <= e) ?? (fixed.to.at(-1) as number)) : roomy(hi);
  if (to <= from) return null;
  const ticks: Tick[] = [
    { at: from, text: plain(from) },
    { at: to, text: plain(to) },
    ...(fixed?.ticks ?? []).map((t) => ({ at: t.at, text: local(t.text) })),
  ];
  const least = told.limits['water.reserve'];
  if (f.id === 'water.activity' && least) ticks.push({ at: Number(least), text: local(least) });
  if (f.id === 'water.total' && told.wrote !== '')
    ticks.push({
      at: Number(told.wrote),
      text: say('tick.wrote', { wrote: local(significant(Number(told.wrote), 2)) }),
    });
  return { min: from, max: to, ticks, value, low: lo, high: hi };
}

// roomy is the next of 1, 2, 5, 10, 20 … above a value.
export function roomy(v: number): number {
  if (!(v > 0) || !Number.isFinite(v)) return 1;
  const p = 10 ** Math.floor(Math.log10(v));
  return Number(((([1, 2, 5, 10].find((m) => m * p >= v) ?? 10) as number) * p).toPrecision(1));
}
