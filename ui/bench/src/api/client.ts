// The server's answers, typed. Anything that is not an answer is a Failure that
// says whether asking again could help.
import type { Command, Document } from '../grid/document.ts';
import type { Answer, Check, Draft, DraftInfo, Fault, Material, Table } from './types.ts';

export class Failure extends Error {
  constructor(
    readonly status: number, // 0: nobody answered
    readonly fault: Fault,
  ) {
    super(fault.message);
  }
  // Nobody there, or the server's own fault: what was asked may yet be done.
  get again(): boolean {
    return this.status === 0 || this.status === 401 || this.status === 429 || this.status >= 500;
  }
}

const sentence = (t: string): string => t.slice(0, 1).toUpperCase() + t.slice(1);

// whyOf says what went wrong, and what to do where the server knew it.
export function whyOf(e: unknown): string {
  if (!(e instanceof Failure)) return e instanceof Error ? e.message : String(e);
  return [e.fault.message, sentence(e.fault.help)].filter(Boolean).join('. ');
}

// The temperature is the sheet's own cell, unit and all, which the server reads.
export interface CheckAsk {
  working?: string | undefined;
  curves?: boolean | undefined;
}

function query(of: Record<string, string | number | boolean | undefined>): string {
  const q = new URLSearchParams();
  for (const [k, v] of Object.entries(of)) {
    if (v !== undefined && v !== '' && v !== false) q.set(k, v === true ? '1' : String(v));
  }
  const text = q.toString();
  return text && `?${text}`;
}

async function ask<T>(method: string, path: string, body?: unknown, signal?: AbortSignal): Promise<T> {
  let r: Response;
  try {
    r = await fetch(`/api${path}`, {
      method,
      ...(body === undefined ? {} : { body: JSON.stringify(body), headers: { 'Content-Type': 'application/json' } }),
      ...(signal ? { signal } : {}),
      credentials: 'same-origin',
    });
  } catch (cause) {
    if (signal?.aborted) throw cause;
    throw new Failure(0, { code: 'offline', message: 'nobody answered', help: '' });
  }
  if (r.status === 204) return undefined as T;
  const text = await r.text().catch(() => '');
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    json = null;
  }
  if (!r.ok || json === null) {
    const fault = (json ?? {}) as Partial<Fault>;
    throw new Failure(r.ok ? 502 : r.status, {
      ...fault,
      code: fault.code ?? 'internal',
      message: fault.message ?? `the server answered ${r.status}`,
      help: fault.help ?? '',
    });
  }
  return json as T;
}

const draft = (id: string): string => `/drafts/${encodeURIComponent(id)}`;

export const api = {
  drafts: (text = '', most = 200, signal?: AbortSignal) =>
    ask<{ drafts: DraftInfo[] }>('GET', `/drafts${query({ text, most })}`, undefined, signal),
  create: (id: string, document: Document) => ask<{ draft: Draft }>('POST', '/drafts', { id, document }),
  createFrom: (id: string, file: string) => ask<{ draft: Draft }>('POST', '/drafts', { id, file }),
  draft: (id: string) => ask<{ draft: Draft; check: Check }>('GET', draft(id)),
  discard: (id: string) => ask<void>('DELETE', draft(id)),
  send: (command: Command) =>
    ask<Answer>('POST', `${draft(command.draft)}/commands`, {
      id: command.id,
      base: command.base,
      label: command.label,
      changes: command.changes,
    }),
  step: (id: string, which: 'undo' | 'redo', command: string) =>
    ask<Answer>('POST', `${draft(id)}/${which}`, { id: command }),
  commands: (id: string, after: number) =>
    ask<{ commands: { revision: number; command: Command }[] }>('GET', `${draft(id)}/commands${query({ after })}`),
  check: (id: string, of: CheckAsk = {}, signal?: AbortSignal) =>
    ask<Check>('GET', `${draft(id)}/check${query({ ...of })}`, undefined, signal),
  assess: (document: Document, signal?: AbortSignal) => ask<Check>('POST', '/assess', { document }, signal),
  materials: (text: string, most = 20, signal?: AbortSignal) =>
    ask<{ materials: Material[] }>('GET', `/materials${query({ text, most })}`, undefined, signal),
  explain: (id: string) => ask<Explained>('GET', `/explain/${encodeURIComponent(id)}`),
  file: (id: string): string => `/api${draft(id)}/file`,
};

export interface Explained {
  id?: string;
  title: string;
  kind: string;
  sections: { head?: string; text?: string; items?: string[] | null; table?: Table | null }[];
}

export type Api = typeof api;

// Latest runs one question at a time. What is asked meanwhile waits, and only
// the newest of it; an answer that is no longer wanted is dropped.
export class Latest<Q, A> {
  private running = false;
  private next: { q: Q } | null = null;
  private wanted = 0;

  constructor(
    private readonly run: (q: Q) => Promise<A>,
    private readonly done: (a: A, q: Q) => void,
    private readonly failed: (e: unknown) => void = () => {},
  ) {}

  ask(q: Q): void {
    this.wanted++;
    this.next = { q };
    if (!this.running) void this.loop();
  }

  forget(): void {
    this.wanted++;
    this.next = null;
  }

  private async loop(): Promise<void> {
    this.running = true;
    while (this.next) {
      const { q } = this.next;
      const mine = this.wanted;
      this.next = null;
      try {
        const a = await this.run(q);
        if (mine === this.wanted) this.done(a, q);
      } catch (e) {
        if (mine === this.wanted) this.failed(e);
      }
    }
    this.running = false;
  }
}
