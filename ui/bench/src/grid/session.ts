// One draft being written: the document as the server last confirmed it, the
// edits on their way, and the two put together, which is what the page shows.
// Edits are sent one after the other, each until it is answered; the server
// applies each once, however often it arrives.
import { Failure, Latest, whyOf } from '../api/client.ts';
import type { Answer, Check, Draft } from '../api/types.ts';
import { apply, type Change, type Clash, type Command, clone, type Document, Refused } from './document.ts';
import { newID } from './ids.ts';
import type { Entry, Outbox } from './outbox.ts';

export interface Transport {
  draft(id: string): Promise<{ draft: Draft; check: Check }>;
  send(command: Command): Promise<Answer>;
  step(id: string, which: 'undo' | 'redo', command: string): Promise<Answer>;
  commands(id: string, after: number): Promise<{ commands: { revision: number; command: Command }[] }>;
  check(id: string): Promise<Check>;
  assess(document: Document): Promise<Check>;
}

export interface Dispute {
  id: string;
  label: string;
  changes: Change[];
  clashes: Clash[];
}

export type Saving = 'saved' | 'saving' | 'offline' | 'locked';

export interface Snapshot {
  document: Document;
  revision: number;
  saving: Saving;
  trouble: string; // why the server, which is there, could not keep an edit
  unsent: number;
  unkept: boolean; // the browser would not keep the unsent edits
  disputes: readonly Dispute[];
  refusal: string; // an edit that was refused, and why
  gone: boolean; // the draft was discarded elsewhere
  check: Check | null;
  previewing: boolean;
  stale: boolean; // the check is of an older document than the one shown
  savedAt: number; // when the last edit was confirmed
  stepped: { which: 'undo' | 'redo'; label: string | null; at: number } | null; // the last undo, for the status region
}

interface Clock {
  now(): number;
  later(f: () => void, ms: number): unknown;
  cancel(timer: unknown): void;
}

const browser: Clock = {
  now: () => Date.now(),
  later: (f, ms) => setTimeout(f, ms),
  cancel: (t) => clearTimeout(t as ReturnType<typeof setTimeout>),
};

const waits = [500, 1000, 2000, 5000, 10_000, 30_000];

export class Session {
  private base: Document;
  private revision: number;
  private queue: Entry[];
  private undoable: Change[][] = []; // inverses of own edits that were confirmed
  private shown: Document;
  private check: Check | null;
  private preview: Check | null = null;
  private disputes: Dispute[] = [];
  private refusal = '';
  private gone = false;
  private saving: Saving = 'saved';
  private trouble = '';
  private savedAt = 0;
  private stepped: Snapshot['stepped'] = null;
  private draining = false;
  private behind = 0;
  private tries = 0;
  private timer: unknown = null;
  private closed = false;
  private snap: Snapshot | null = null;
  private readonly listeners = new Set<() => void>();
  private readonly live: Latest<Document, Check>;

  constructor(
    readonly id: string,
    start: { draft: Draft; check: Check },
    private readonly server: Transport,
    private readonly outbox: Outbox,
    private readonly clock: Clock = browser,
  ) {
    this.base = clone(start.draft.document);
    this.revision = start.draft.revision;
    this.check = start.check ?? null;
    this.queue = outbox.read();
    this.shown = this.replay();
    this.live = new Latest(
      (d) => this.server.assess(d),
      (check) => {
        this.preview = check;
        this.changed();
      },
    );
    if (this.queue.length > 0) void this.drain();
  }

  subscribe = (f: () => void): (() => void) => {
    this.listeners.add(f);
    return () => this.listeners.delete(f);
  };

  snapshot = (): Snapshot => {
    this.snap ??= {
      document: this.shown,
      revision: this.revision,
      saving: this.saving,
      trouble: this.trouble,
      unsent: this.queue.length,
      unkept: this.outbox.full && this.queue.length > 0,
      disputes: this.disputes,
      refusal: this.refusal,
      gone: this.gone,
      check: this.preview ?? this.check,
      previewing: this.preview !== null,
      stale: this.preview === null && (this.queue.length > 0 || (this.check?.revision ?? -1) < this.revision),
      savedAt: this.savedAt,
      stepped: this.stepped,
    };
    return this.snap;
  };

  close(): void {
    this.closed = true;
    if (this.timer !== null) this.clock.cancel(this.timer);
    this.live.forget();
  }

  // edit shows the changes at once and sends them. It answers false where the
  // document cannot take them: a change over something else than was seen is
  // kept as a dispute.
  edit(label: string, changes: Change[]): boolean {
    if (changes.length === 0) return false;
    try {
      const { clashes } = apply(this.shown, changes);
      if (clashes.length > 0) {
        this.disputes = [...this.disputes, { id: newID(), label, changes, clashes }];
        this.changed();
        return false;
      }
    } catch (e) {
      if (!(e instanceof Refused)) throw e;
      this.refusal = e.message;
      this.changed();
      return false;
    }
    this.put({
      is: 'command',
      command: {
        id: newID(),
        draft: this.id,
        base: this.revision,
        label,
        changes,
        at: new Date(this.clock.now()).toISOString(),
        by: '',
      },
    });
    return true;
  }

  step(which: 'undo' | 'redo'): void {
    this.put({ is: which, id: newID() });
  }

  // adopt sends what a page that is gone has left behind.
  adopt(entries: Entry[]): void {
    if (entries.length === 0) return;
    this.queue.push(...entries);
    this.store();
    void this.drain();
  }

  // type shows what the figures would be with a cell that is still being
  // written; null when it is not any more.
  type(changes: Change[] | null): void {
    if (changes === null) {
      this.live.forget();
      if (this.preview !== null && !this.pending()) {
        this.preview = null;
        this.changed();
      }
      return;
    }
    if (this.saving === 'offline' || this.saving === 'locked') return;
    try {
      const next = changes.length === 0 ? this.shown : apply(this.shown, changes).document;
      this.live.ask(next);
    } catch (e) {
      if (!(e instanceof Refused)) throw e;
    }
  }

  // settle ends a dispute: hers is written over what stands there now, or let
  // go. Changes of the same edit that nobody disputes are made either way.
  settle(id: string, keep: 'mine' | 'theirs'): void {
    const d = this.disputes.find((x) => x.id === id);
    if (!d) return;
    this.disputes = this.disputes.filter((x) => x !== d);
    const over = (ch: Change) =>
      d.clashes.find(
        (c) => c.list === ch.list && (c.row ?? '') === (ch.row ?? '') && (c.field ?? '') === (ch.field ?? ''),
      );
    const changes = d.changes.flatMap((ch): Change[] => {
      const clash = over(ch);
      if (!clash) return [ch];
      return keep === 'mine' && !clash.gone && ch.do === 'set' ? [{ ...ch, from: this.cell(clash) }] : [];
    });
    if (changes.length === 0 || !this.edit(d.label, changes)) this.changed();
  }

  dismiss(): void {
    this.refusal = '';
    this.changed();
  }

  // heard is news of a draft: somebody, or another page, has changed it.
  heard(revision: number): void {
    if (revision <= this.revision) return;
    this.behind = Math.max(this.behind, revision);
    if (!this.draining) void this.drain();
  }

  // again tries at once what has been waiting.
  again(): void {
    if (this.timer !== null) this.clock.cancel(this.timer);
    this.timer = null;
    if (!this.draining && (this.queue.length > 0 || this.saving !== 'saved')) void this.drain();
  }

  // refresh asks what has happened while nobody listened.
  refresh(): void {
    this.behind = Math.max(this.behind, this.revision + 1);
    if (!this.draining) void this.drain();
  }

  private cell(c: Clash): string {
    const d = this.shown;
    const cells = c.list === 'head' ? d.head : d[c.list].find((r) => r.id === c.row)?.cells;
    return cells?.[c.field ?? ''] ?? '';
  }

  private pending(): boolean {
    return this.queue.length > 0 || (this.check?.revision ?? -1) < this.revision;
  }

  private put(e: Entry): void {
    this.queue.push(e);
    this.refusal = '';
    this.live.forget();
    if (this.saving === 'saved') this.saving = 'saving';
    this.store();
    void this.drain();
  }

  private store(): void {
    this.outbox.write(this.queue);
    this.shown = this.replay();
    this.changed();
  }

  // replay puts the edits on their way on top of what is confirmed. One that
  // will clash, or is refused, is left out; the server says so in its turn.
  private replay(): Document {
    let d = this.base;
    const back = this.undoable.map((c) => ({ redo: [] as Change[], undo: c }));
    const forth: Change[][] = [];
    const take = (changes: Change[]): Change[] | null => {
      try {
        const out = apply(d, changes);
        if (out.clashes.length > 0 || out.inverse.length === 0) return null;
        d = out.document;
        return out.inverse;
      } catch (e) {
        if (e instanceof Refused) return null;
        throw e;
      }
    };
    for (const e of this.queue) {
      if (e.is === 'command') {
        const undo = take(e.command.changes);
        if (undo) back.push({ redo: e.command.changes, undo });
        forth.length = 0;
      } else if (e.is === 'undo') {
        const last = back.pop();
        const redo = last && take(last.undo);
        if (redo) forth.push(redo);
      } else {
        const next = forth.pop();
        const undo = next && take(next);
        if (undo) back.push({ redo: next, undo });
      }
    }
    return d;
  }

  private async drain(): Promise<void> {
    if (this.draining || this.closed) return;
    if (this.timer !== null) return; // it waits for its turn to try again
    this.draining = true;
    try {
      for (;;) {
        if (this.behind > this.revision) await this.catchUp();
        const e = this.queue[0];
        if (!e) break;
        if (this.saving === 'saved') this.saving = 'saving';
        await this.deliver(e);
      }
      this.tries = 0;
      if (this.saving !== 'saved') this.savedAt = this.clock.now();
      this.saving = 'saved';
      this.trouble = '';
      this.changed();
    } catch (e) {
      if (!(e instanceof Failure)) throw e;
      this.saving = e.status === 401 ? 'locked' : 'offline';
      this.trouble = e.status >= 500 ? whyOf(e) : '';
      this.preview = null;
      const wait = waits[Math.min(this.tries++, waits.length - 1)] as number;
      this.timer = this.clock.later(() => {
        this.timer = null;
        void this.drain();
      }, wait);
      this.changed();
    } finally {
      this.draining = false;
    }
  }

  private async deliver(e: Entry): Promise<void> {
    let answer: Answer;
    try {
      answer =
        e.is === 'command'
          ? await this.server.send({ ...e.command, base: this.revision })
          : await this.server.step(this.id, e.is, e.id);
    } catch (cause) {
      if (!(cause instanceof Failure) || cause.again) throw cause;
      await this.refused(e, cause);
      return;
    }
    if (answer.command && answer.revision === this.revision + 1) {
      this.take(answer.revision, answer.command, e.is === 'command');
    } else if (answer.revision > this.revision) {
      await this.catchUp(answer.revision);
    }
    if (e.is !== 'command') this.stepped = { which: e.is, label: answer.command?.label ?? null, at: this.clock.now() };
    this.queue.shift();
    if (answer.check && answer.check.revision >= (this.check?.revision ?? -1)) {
      this.check = answer.check;
      if (this.queue.length === 0) this.preview = null;
    }
    this.store();
  }

  private async refused(e: Entry, cause: Failure): Promise<void> {
    if (cause.status === 404) {
      this.gone = true;
      throw cause; // what she wrote is kept
    }
    this.queue.shift();
    this.preview = null;
    if (cause.fault.clashes?.length && e.is === 'command') {
      this.disputes = [
        ...this.disputes,
        { id: e.command.id, label: e.command.label, changes: e.command.changes, clashes: cause.fault.clashes },
      ];
    } else {
      this.refusal = whyOf(cause);
    }
    await this.catchUp(cause.fault.revision).catch((x: unknown) => {
      this.store();
      throw x;
    });
    this.store();
  }

  private take(revision: number, command: Command, own: boolean): void {
    const out = apply(this.base, command.changes);
    if (out.clashes.length > 0) throw new Refused('the page and the server differ');
    this.base = out.document;
    this.revision = revision;
    if (own) this.undoable.push(out.inverse);
    else this.undoable = [];
    if (this.undoable.length > 100) this.undoable.shift();
  }

  // catchUp makes the edits of others. Where they do not fit, something was
  // missed, and the whole draft is read anew.
  private async catchUp(to?: number): Promise<void> {
    const was = this.revision;
    try {
      const { commands } = await this.server.commands(this.id, this.revision);
      for (const c of commands) {
        if (c.revision === this.revision + 1) this.take(c.revision, c.command, false);
        else if (c.revision > this.revision) throw new Refused('an edit is missing');
      }
      if (to !== undefined && this.revision < to) throw new Refused('an edit is missing');
    } catch (e) {
      if (!(e instanceof Refused)) throw e;
      const { draft, check } = await this.server.draft(this.id);
      this.base = clone(draft.document);
      this.revision = draft.revision;
      this.undoable = [];
      this.check = check;
    }
    this.behind = 0;
    if (this.revision === was) return;
    this.store();
    if (this.queue.length === 0 && (this.check?.revision ?? -1) < this.revision) {
      const check = await this.server.check(this.id);
      if (check.revision >= (this.check?.revision ?? -1)) {
        this.check = check;
        this.preview = null;
      }
      this.store();
    }
  }

  private changed(): void {
    this.snap = null;
    for (const f of this.listeners) f();
  }
}
