import { expect, test } from 'vitest';
import { Failure } from '../api/client.ts';
import type { Answer, Check } from '../api/types.ts';
import { apply, type Change, type Command, clone, type Document } from './document.ts';
import { Outbox, type Store } from './outbox.ts';
import { Session, type Transport } from './session.ts';

// A server in miniature: what draft_apply.go and the log do, and a wire that
// can be cut before or after the server has heard.
class Server implements Transport {
  document: Document = {
    head: {},
    lines: [
      { id: 'a', cells: { material: 'Glycerin', percent: '21' } },
      { id: 'b', cells: { material: 'Aqua', percent: '2' } },
    ],
    making: [],
  };
  log: { revision: number; command: Command; inverse: Change[] }[] = [];
  back: number[] = [];
  forth: number[] = [];
  cut: '' | 'before' | 'after' = '';
  heard = 0;

  get revision() {
    return this.log.length;
  }
  check = async (): Promise<Check> => ({
    revision: this.revision,
    problems: [],
    rows: [],
    lines: {},
    strip: [],
    margin: [],
    total: '',
    over: '',
    qs: null,
    answer: '',
    assessment: null,
  });
  draft = async () => ({
    draft: { id: 'd', revision: this.revision, document: clone(this.document) },
    check: await this.check(),
  });
  assess = async () => this.check();
  commands = async (_: string, after: number) =>
    this.wire(() => ({ commands: this.log.slice(after).map(({ revision, command }) => ({ revision, command })) }));
  send = (command: Command) => this.wire(() => this.put(structuredClone(command)));
  step = (_: string, which: 'undo' | 'redo', id: string) =>
    this.wire(() => {
      const [from, to] = which === 'undo' ? [this.back, this.forth] : [this.forth, this.back];
      const at = from.pop();
      if (at === undefined) return this.answer(null);
      const done = this.apply({
        id,
        draft: 'd',
        base: 0,
        label: which,
        changes: (this.log[at] as { inverse: Change[] }).inverse,
      });
      to.push(this.revision - 1);
      return done;
    });

  put(command: Command): Promise<Answer> {
    if (this.log.some((l) => l.command.id === command.id)) return this.answer(command);
    const done = this.apply(command);
    this.back.push(this.revision - 1);
    this.forth = [];
    return done;
  }

  private apply(command: Command): Promise<Answer> {
    const out = apply(this.document, command.changes);
    if (out.clashes.length)
      throw new Failure(409, {
        code: 'conflict',
        message: 'clash',
        help: '',
        clashes: out.clashes,
        revision: this.revision,
      });
    this.document = out.document;
    this.log.push({ revision: this.revision + 1, command, inverse: out.inverse });
    return this.answer(command);
  }

  private async answer(command: Command | null): Promise<Answer> {
    return { revision: this.revision, command, check: await this.check() };
  }

  private async wire<T>(f: () => T | Promise<T>): Promise<T> {
    await Promise.resolve();
    const lost = () => new Failure(0, { code: 'offline', message: '', help: '' });
    if (this.cut === 'before') throw lost();
    this.heard++;
    const out = await f();
    if (this.cut === 'after') throw lost();
    return out;
  }
}

class Memory implements Store {
  map = new Map<string, string>();
  get length() {
    return this.map.size;
  }
  key = (n: number) => [...this.map.keys()][n] ?? null;
  getItem = (k: string) => this.map.get(k) ?? null;
  setItem = (k: string, v: string) => void this.map.set(k, v);
  removeItem = (k: string) => void this.map.delete(k);
}

// Timers run when the test says so.
const clock = () => {
  const due: (() => void)[] = [];
  return {
    now: () => 0,
    later: (f: () => void) => due.push(f),
    cancel: () => {
      due.length = 0;
    },
    tick: () => {
      for (const f of due.splice(0)) f();
    },
  };
};

const set = (row: string, from: string, to: string, field = 'percent'): Change => ({
  do: 'set',
  list: 'lines',
  row,
  field,
  from,
  to,
});
const percent = (s: Session, row = 'a') => s.snapshot().document.lines.find((l) => l.id === row)?.cells.percent;
const rest = async () => {
  for (let i = 0; i < 60; i++) await Promise.resolve();
};

async function opened(server = new Server(), store: Store = new Memory(), page = 'p') {
  const time = clock();
  const s = new Session('d', await server.draft(), server, new Outbox(store, 'd', page), time);
  return { server, store, time, s };
}

test('an edit is seen at once and confirmed', async () => {
  const { s, server, store } = await opened();
  expect(s.edit('write', [set('a', '21', '22')])).toBe(true);
  expect(percent(s)).toBe('22');
  expect(s.snapshot()).toMatchObject({ saving: 'saving', unsent: 1, stale: true });
  expect(store.length).toBe(1);
  await rest();
  expect(s.snapshot()).toMatchObject({ saving: 'saved', unsent: 0, revision: 1, stale: false });
  expect(store.length).toBe(0);
  expect(server.document).toEqual(s.snapshot().document);
});

test('edits are sent in order, one after the other', async () => {
  const { s, server } = await opened();
  s.edit('1', [set('a', '21', '1')]);
  s.edit('2', [set('a', '1', '2')]);
  s.edit('3', [set('a', '2', '3')]);
  await rest();
  expect(server.log.map((l) => l.command.label)).toEqual(['1', '2', '3']);
  expect(percent(s)).toBe('3');
});

for (const cut of ['before', 'after'] as const) {
  test(`a wire cut ${cut} the server has heard loses nothing and makes nothing twice`, async () => {
    const { s, server, time, store } = await opened();
    server.cut = cut;
    s.edit('1', [set('a', '21', '22')]);
    s.edit('2', [set('b', '2', '3')]);
    s.edit('3', [
      { do: 'insert', list: 'lines', row: 'n', from: '', to: '', after: 'b', cells: { material: 'Kaolin' } },
    ]);
    await rest();
    expect(s.snapshot()).toMatchObject({ saving: 'offline', unsent: 3 });
    expect(percent(s)).toBe('22');
    time.tick();
    await rest();
    expect(s.snapshot().unsent).toBe(3);
    // The page is closed and opened again meanwhile.
    s.close();
    server.cut = '';
    const again = await opened(server, store);
    expect(again.s.snapshot().document.lines.map((l) => l.id)).toEqual(['a', 'b', 'n']);
    await rest();
    expect(again.s.snapshot()).toMatchObject({ saving: 'saved', unsent: 0, refusal: '' });
    expect(server.log).toHaveLength(3);
    expect(server.document).toEqual(again.s.snapshot().document);
  });
}

test('a cell that somebody else has changed shows both values, and either can be kept', async () => {
  for (const keep of ['mine', 'theirs'] as const) {
    const { s, server } = await opened();
    await server.put({ id: 'other', draft: 'd', base: 0, label: 'other', changes: [set('a', '21', '30')] });
    s.edit('two cells', [set('a', '21', '22'), set('b', '2', '4')]);
    await rest();
    const { disputes, saving } = s.snapshot();
    expect(saving).toBe('saved');
    expect(disputes).toHaveLength(1);
    expect(disputes[0]?.clashes[0]).toMatchObject({ seen: '21', now: '30', mine: '22' });
    expect([percent(s), percent(s, 'b')]).toEqual(['30', '2']);
    s.settle(disputes[0]?.id ?? '', keep);
    await rest();
    expect([percent(s), percent(s, 'b')]).toEqual([keep === 'mine' ? '22' : '30', '4']);
    expect(s.snapshot().disputes).toEqual([]);
    expect(server.document).toEqual(s.snapshot().document);
  }
});

test('edits of others to other cells come in between without a word', async () => {
  const { s, server } = await opened();
  await server.put({ id: 'other', draft: 'd', base: 0, label: 'other', changes: [set('b', '2', '9')] });
  s.edit('mine', [set('a', '21', '22')]);
  await rest();
  expect([percent(s), percent(s, 'b')]).toEqual(['22', '9']);
  await server.put({ id: 'later', draft: 'd', base: 0, label: 'later', changes: [set('b', '9', '8')] });
  s.heard(3);
  await rest();
  expect(percent(s, 'b')).toBe('8');
  expect(s.snapshot().check?.revision).toBe(3);
});

test('undo and redo go through the server and are seen at once', async () => {
  const { s, server } = await opened();
  s.edit('1', [set('a', '21', '22')]);
  await rest();
  s.step('undo');
  expect(percent(s)).toBe('21');
  await rest();
  expect(server.document.lines[0]?.cells.percent).toBe('21');
  s.step('redo');
  await rest();
  expect(percent(s)).toBe('22');
  s.edit('2', [set('a', '22', '23')]);
  s.step('undo');
  s.step('redo');
  s.step('undo');
  expect(percent(s)).toBe('22');
  await rest();
  expect(percent(s)).toBe('22');
  expect(s.snapshot()).toMatchObject({ saving: 'saved', unsent: 0 });
  s.step('undo');
  s.step('undo');
  await rest();
  expect(percent(s)).toBe('21');
  expect(s.snapshot().stepped).toMatchObject({ which: 'undo', label: null });
});

test('an edit the server refuses is taken back and said', async () => {
  const { s, server } = await opened();
  server.send = async () => {
    throw new Failure(400, { code: 'invalid', message: 'a cell holds too much', help: 'write less' });
  };
  s.edit('1', [set('a', '21', '22')]);
  await rest();
  expect(percent(s)).toBe('21');
  expect(s.snapshot()).toMatchObject({ unsent: 0, refusal: 'a cell holds too much. Write less' });
});

test('an edit no document could take is refused here', async () => {
  const { s } = await opened();
  expect(s.edit('x', [set('a', '21', '22', 'colour')])).toBe(false);
  expect(s.snapshot().refusal).toContain('colour');
  expect(s.edit('nothing', [])).toBe(false);
});

test('a draft that was discarded keeps what was written', async () => {
  const { s, server } = await opened();
  server.send = async () => {
    throw new Failure(404, { code: 'not-found', message: 'no such draft', help: '' });
  };
  s.edit('1', [set('a', '21', '22')]);
  await rest();
  expect(s.snapshot()).toMatchObject({ gone: true, unsent: 1 });
});

test('without the cookie the page waits and says so', async () => {
  const { s, server, time } = await opened();
  const send = server.send;
  server.send = async () => {
    throw new Failure(401, { code: 'unauthorized', message: '', help: '' });
  };
  s.edit('1', [set('a', '21', '22')]);
  await rest();
  expect(s.snapshot().saving).toBe('locked');
  server.send = send;
  time.tick();
  await rest();
  expect(s.snapshot()).toMatchObject({ saving: 'saved', unsent: 0 });
});

test('an edit that the server cannot keep waits, with the reason', async () => {
  const { s, server, time } = await opened();
  const send = server.send;
  server.send = async () => {
    throw new Failure(500, { code: 'internal', message: 'there is no room on the disk', help: 'make room' });
  };
  s.edit('1', [set('a', '21', '22')]);
  await rest();
  expect(s.snapshot()).toMatchObject({
    saving: 'offline',
    unsent: 1,
    trouble: 'there is no room on the disk. Make room',
  });
  server.send = send;
  time.tick();
  await rest();
  expect(s.snapshot()).toMatchObject({ saving: 'saved', unsent: 0, trouble: '' });
});

test('each page keeps its own edits; those of a page that is gone are taken over', async () => {
  const store = new Memory();
  const { s, server } = await opened(new Server(), store, 'one');
  server.cut = 'before';
  s.edit('1', [set('a', '21', '22')]);
  await rest();
  s.close();
  server.cut = '';
  const box = new Outbox(store, 'd', 'two');
  const two = await opened(server, store, 'two');
  expect(two.s.snapshot().unsent).toBe(0);
  expect(box.others()).toEqual(['one']);
  two.s.adopt(box.take('one'));
  await rest();
  expect(percent(two.s)).toBe('22');
  expect(box.others()).toEqual([]);
});

test('a store that is full or spoilt stops nobody', async () => {
  const store = new Memory();
  store.setItem('levigate/unsent/d/p', '{spoilt');
  store.setItem = () => {
    throw new Error('quota');
  };
  const { s } = await opened(new Server(), store);
  s.edit('1', [set('a', '21', '22')]);
  expect(s.snapshot().unkept).toBe(true);
  await rest();
  expect(s.snapshot()).toMatchObject({ saving: 'saved', unkept: false });
});

test('a preview shows while a cell is written, and only the newest', async () => {
  const { s, server } = await opened();
  const asked: (string | undefined)[] = [];
  let n = 0;
  server.assess = async (d?: Document) => {
    asked.push(d?.lines[0]?.cells.percent);
    return { ...(await server.check()), answer: `preview ${++n}` };
  };
  for (const t of ['2', '22', '22.', '22.5']) s.type([set('a', '21', t)]);
  await rest();
  expect(asked).toEqual(['2', '22.5']);
  expect(s.snapshot().check?.answer).toBe('preview 2');
  expect(percent(s)).toBe('21');
  s.type(null);
  expect(s.snapshot().check?.answer).toBe('');
});

test('a change made over something else than was seen is asked about before it is sent', async () => {
  const { s, server } = await opened();
  expect(s.edit('write', [set('a', '20', '22')])).toBe(false); // 21 stands there
  await rest();
  const { disputes } = s.snapshot();
  expect(disputes[0]?.clashes[0]).toMatchObject({ seen: '20', now: '21', mine: '22' });
  expect([percent(s), server.log.length]).toEqual(['21', 0]);
  s.settle(disputes[0]?.id ?? '', 'mine');
  await rest();
  expect([percent(s), s.snapshot().disputes]).toEqual(['22', []]);
  expect(server.document).toEqual(s.snapshot().document);
});
