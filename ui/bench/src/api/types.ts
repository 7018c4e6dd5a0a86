// What the server says, as docs of the contract have it.
import type { Clash, Command, Document } from '../grid/document.ts';

export interface DraftInfo {
  id: string;
  code: string;
  name: string;
  product: string;
  revision: number;
  changed: string;
}

export interface Draft {
  id: string;
  revision: number;
  document: Document;
  created?: string;
  changed?: string;
}

export interface Source {
  key: string;
  text: string;
  at: string;
}

export interface Table {
  head: string[];
  rows: string[][];
  foot?: string[];
}

export interface Input {
  symbol: string;
  means: string;
  value: number | null;
  unit: string;
  grade: string;
  from: string;
}

export interface WorkStep {
  title?: string;
  text?: string;
  method?: string;
  numbers?: string;
  result?: number | null;
  unit?: string;
  inputs?: Input[];
  table?: Table;
  sources?: Source[];
  steps?: WorkStep[];
}

export interface Cause {
  name: string;
  low: number | null;
  high: number | null;
}

export interface Figure {
  id: string;
  title: string;
  value: number | null;
  unit: string;
  low: number | null;
  high: number | null;
  state: 'good' | 'out-of-range' | 'missing' | string;
  grade: string;
  method: string;
  causes: Cause[];
  sources: Source[];
  notes: string[];
  calculated?: { value: number | null; low: number | null; high: number | null };
  reading?: string;
  working?: WorkStep;
}

export interface Held {
  kind: string;
  name: string;
  grams: number | null;
  low: number | null;
  high: number | null;
  from: number[];
}

export interface Contained {
  inci: string;
  percent: number | null;
  low: number | null;
  high: number | null;
  from: number[];
}

export interface Assessment {
  figures: Figure[];
  held: Held[];
  composition: Contained[];
  conditions?: { temperature: number };
}

export interface Problem {
  list?: string;
  row?: string;
  field?: string;
  text: string;
  help: string;
}

export interface LineFound {
  code: string;
  name: string;
  inci: string[];
  function: string;
  percent: string;
  grams: string;
  kind: string;
  nearest?: string[]; // to a name the library does not hold
}

export interface MarginNote {
  rule: string;
  severity: string;
  verdict: string;
  rows: string[];
  figures: string[];
  text: string;
  help: string;
  needs: string;
}

export interface Curve {
  id: string;
  title: string;
  sentence: string;
  svg: string;
  narrow?: string; // drawn for a phone
  table: { head: string[]; rows: string[][] };
}

export interface Check {
  revision: number;
  total: string;
  over: string;
  qs: { row: string; percent: string } | null;
  rows: string[];
  answer: string;
  problems: Problem[];
  lines: Record<string, LineFound>;
  strip: string[];
  limits?: Record<string, string>; // activity each room for water is counted to, by figure
  assessment: Assessment | null;
  margin: MarginNote[];
  working?: WorkStep | null;
  curves?: Curve[] | null;
}

export interface Answer {
  revision: number;
  again?: boolean;
  command: Command | null;
  check: Check;
}

export interface Material {
  code: string;
  name: string;
  inci: string[];
  water?: unknown;
  role: string[];
  origin: string;
  form: string;
}

export interface Fault {
  code: string;
  message: string;
  help: string;
  clashes?: Clash[];
  revision?: number;
}

export interface DraftEvent {
  id: string;
  revision: number;
  command: string;
}
