// Edits that the server has not confirmed, kept where a reload finds them. Each
// page of the browser keeps its own, so that two pages do not write over each
// other; what a page that is gone has left behind is taken over by the next.
import type { Command } from './document.ts';

export type Entry = { is: 'command'; command: Command } | { is: 'undo' | 'redo'; id: string };

export interface Store {
  readonly length: number;
  key(n: number): string | null;
  getItem(key: string): string | null;
  setItem(key: string, value: string): void;
  removeItem(key: string): void;
}

const prefix = (draft: string): string => `levigate/unsent/${draft}/`;

export class Outbox {
  // full: the browser would not keep the edits; they last as long as the page.
  full = false;

  constructor(
    private readonly store: Store | null,
    private readonly draft: string,
    private readonly page: string,
  ) {}

  read(): Entry[] {
    return this.load(prefix(this.draft) + this.page);
  }

  write(entries: readonly Entry[]): void {
    try {
      const key = prefix(this.draft) + this.page;
      if (entries.length === 0) this.store?.removeItem(key);
      else this.store?.setItem(key, JSON.stringify(entries));
      this.full = false;
    } catch {
      this.full = true;
    }
  }

  // others names the pages that have left edits of this draft.
  others(): string[] {
    const out: string[] = [];
    for (let i = 0; i < (this.store?.length ?? 0); i++) {
      const key = this.store?.key(i);
      if (key?.startsWith(prefix(this.draft))) {
        const page = key.slice(prefix(this.draft).length);
        if (page !== this.page) out.push(page);
      }
    }
    return out;
  }

  take(page: string): Entry[] {
    const key = prefix(this.draft) + page;
    const entries = this.load(key);
    this.store?.removeItem(key);
    return entries;
  }

  private load(key: string): Entry[] {
    try {
      const list = JSON.parse(this.store?.getItem(key) ?? '[]') as Entry[];
      return Array.isArray(list)
        ? list.filter((e) => (e.is === 'command' ? Array.isArray(e.command?.changes) : typeof e.id === 'string'))
        : [];
    } catch {
      return [];
    }
  }
}
