// The contract played by the page itself, for building the bench without the
// Go program: `vite --mode mock`. Drafts, commands, undo and clashes are real;
// the figures are those of one made-up formula and do not move.
import type {
  Answer,
  Check,
  Draft,
  DraftInfo,
  Fault,
  LineFound,
  MarginNote,
  Material,
  Problem,
  WorkStep,
} from '../api/types.ts';
import { readPercent } from '../grid/cells.ts';
import { print } from '../grid/decimal.ts';
import { apply, type Change, type Command, clone, type Document, Refused } from '../grid/document.ts';
import { sumsOf } from '../grid/sums.ts';
import sample from './hp01.json' with { type: 'json' };

interface Kept {
  draft: Draft & { changed: string };
  log: { revision: number; command: Command; inverse: Change[] }[];
  undo: Change[][];
  redo: Change[][];
}

interface Shelf extends Pick<Material, 'code' | 'name' | 'inci'> {
  kind: string;
  role: string;
}

const shelf = sample.materials as Shelf[];
const fold = (s: string) => s.toLowerCase().normalize('NFD').replace(/\p{M}/gu, '');

function find(name: string): Shelf | undefined {
  const t = fold(name);
  return (
    shelf.find((m) => fold(m.code) === t) ??
    shelf.find((m) => m.inci.length === 1 && fold(m.inci[0] ?? '') === t) ??
    shelf.find((m) => fold(m.name) === t)
  );
}

export function sampleDocument(): Document {
  return {
    head: { ...sample.head },
    lines: sample.lines.map((l, i) => ({
      id: `line-${i + 1}`,
      cells: { phase: l.phase, material: l.material, percent: l.qs ? 'qs' : l.percent.toFixed(2) },
    })),
    making: [
      { id: 'step-1', cells: { phase: 'A', text: 'Warm A, stir until uniform, cool to 25 °C.', temperature: '60 °C' } },
      {
        id: 'step-2',
        cells: {
          phase: 'B',
          text: 'Sieve kaolin and starch into the oils under strong shear. Dust mask, no ignition, lid on the starch.',
          minutes: '5',
        },
      },
    ],
  };
}

export function checkOf(d: Document, revision: number): Check {
  const sums = sumsOf(d);
  const problems: Problem[] = [];
  const lines: Record<string, LineFound> = {};
  const rows: string[] = [];
  for (const l of d.lines) {
    const name = l.cells.material ?? '';
    const p = readPercent(l.cells.percent ?? '');
    const m = find(name);
    if (name && !m)
      problems.push({
        list: 'lines',
        row: l.id,
        field: 'material',
        text: `Nothing in the library is called “${name}”.`,
        help: 'take one of the names below, or describe it under materials',
      });
    if (p.is === 'unclear')
      problems.push({
        list: 'lines',
        row: l.id,
        field: 'percent',
        text: `“${l.cells.percent}” is no percentage.`,
        help: 'type digits, such as 12.5, or q.s.',
      });
    if (!m) continue;
    const s = sums.lines.get(l.id);
    lines[l.id] = {
      code: m.code,
      name: m.name,
      inci: m.inci,
      function: m.role,
      kind: m.kind,
      percent: s?.percent ? print(s.percent, 2) : '',
      grams: s?.grams ? print(s.grams, 2) : '',
    };
    if (s?.percent) rows.push(l.id);
  }
  const known = rows.length > 0;
  const at = (places: string[]) =>
    places.flatMap((a) => (a.startsWith('lines/') ? (d.lines[Number(a.slice(6)) - 1]?.id ?? []) : []));
  const margin: MarginNote[] = known
    ? sample.findings.map((f) => ({
        rule: f.rule,
        severity: f.severity,
        verdict: f.verdict,
        rows: at(f.at),
        figures: f.at.filter((a) => a.startsWith('figures/')).map((a) => a.slice(8)),
        text: f.text,
        help: f.help,
        needs: f.needs,
      }))
    : [];
  const filling = d.lines.find((l) => sums.lines.get(l.id)?.qs);
  const filled = filling && sums.lines.get(filling.id)?.percent;
  return {
    revision,
    total: print(sums.total, 2),
    over: sums.over ? print(sums.over) : '',
    qs: filling && filled ? { row: filling.id, percent: print(filled) } : null,
    rows,
    answer: known ? sample.answer : '',
    problems,
    lines,
    strip: known ? sample.strip : [],
    assessment: known
      ? (sample.assessment as unknown as Check['assessment'])
      : { figures: [], held: [], composition: [] },
    margin,
    working: null,
    curves: [],
  };
}

export class Mock {
  readonly drafts = new Map<string, Kept>();
  readonly listeners = new Set<(data: string) => void>();
  down = false;

  constructor() {
    this.put('hp-01-sample', sampleDocument());
    this.put('empty-sample', { head: { name: 'An empty sheet' }, lines: [], making: [] });
  }

  put(id: string, document: Document): Kept {
    const kept: Kept = {
      draft: { id, revision: 0, document: clone(document), changed: new Date().toISOString() },
      log: [],
      undo: [],
      redo: [],
    };
    this.drafts.set(id, kept);
    return kept;
  }

  // answer plays one request; a Fault comes with its status.
  answer(method: string, url: URL, body: unknown): [number, unknown] {
    const path = url.pathname
      .replace(/^\/api/, '')
      .split('/')
      .map(decodeURIComponent);
    const [, what, id, sub] = path;
    const fault = (status: number, code: string, message: string, more: Partial<Fault> = {}): [number, Fault] => [
      status,
      { code, message, help: '', ...more },
    ];
    if (what === 'materials') {
      const t = fold(url.searchParams.get('text') ?? '');
      const words = (m: Shelf) => [m.name, m.code, ...m.inci].map(fold);
      const hits = shelf
        .filter((m) => words(m).some((w) => w.includes(t)))
        .sort(
          (a, b) => Number(!words(a).some((w) => w.startsWith(t))) - Number(!words(b).some((w) => w.startsWith(t))),
        );
      return [
        200,
        {
          materials: hits.slice(0, Number(url.searchParams.get('most') ?? 20)).map(
            (m): Material => ({
              code: m.code,
              name: m.name,
              inci: m.inci,
              role: [m.role],
              origin: 'embedded',
              form: '',
            }),
          ),
        },
      ];
    }
    if (what === 'assess') return [200, checkOf((body as { document: Document }).document, 0)];
    if (what === 'explain')
      return [
        200,
        {
          title: `${id}${sub ? `/${sub}` : ''}`,
          kind: 'made up',
          sections: [{ head: 'Why', text: 'What the program says about this stands here. row glycerol: 4.49, 0.273' }],
        },
      ];
    if (what !== 'drafts') return fault(404, 'not-found', 'no such address');
    if (!id) {
      if (method === 'POST') {
        const b = body as { id: string; document?: Document };
        return [201, { draft: this.put(b.id, b.document ?? { head: {}, lines: [], making: [] }).draft }];
      }
      const t = fold(url.searchParams.get('text') ?? '');
      const info = ({ draft: d }: Kept): DraftInfo => ({
        id: d.id,
        code: d.document.head.code ?? '',
        name: d.document.head.name ?? '',
        product: d.document.head.product ?? '',
        revision: d.revision,
        changed: d.changed,
      });
      return [
        200,
        {
          drafts: [...this.drafts.values()]
            .map(info)
            .filter((d) => fold(`${d.code} ${d.name} ${d.product}`).includes(t)),
        },
      ];
    }
    const kept = this.drafts.get(id);
    if (!kept) return fault(404, 'not-found', 'no such draft');
    const check = () => checkOf(kept.draft.document, kept.draft.revision);
    if (!sub) return [200, { draft: kept.draft, check: check() }];
    if (sub === 'check') {
      const c = check();
      const of = url.searchParams.get('working');
      if (of)
        c.working =
          (sample.assessment.figures.find((f) => f.id === of) as { working?: WorkStep } | undefined)?.working ?? null;
      if (url.searchParams.get('curves') && c.rows.length > 0) c.curves = sample.curves;
      return [200, c];
    }
    if (sub === 'commands' && method === 'GET') {
      const after = Number(url.searchParams.get('after') ?? 0);
      return [
        200,
        {
          commands: kept.log.filter((l) => l.revision > after).map(({ revision, command }) => ({ revision, command })),
        },
      ];
    }
    if (sub === 'commands') {
      const command = { ...(body as Command), draft: id };
      if (kept.log.some((l) => l.command.id === command.id))
        return [200, { revision: kept.draft.revision, again: true, command, check: check() } satisfies Answer];
      return this.make(kept, command, check, (inverse) => {
        kept.undo.push(inverse);
        kept.redo = [];
      });
    }
    if (sub === 'undo' || sub === 'redo') {
      const [from, to] = sub === 'undo' ? [kept.undo, kept.redo] : [kept.redo, kept.undo];
      const changes = from.pop();
      if (!changes) return [200, { revision: kept.draft.revision, command: null, check: check() } satisfies Answer];
      return this.make(
        kept,
        { id: (body as { id: string }).id, draft: id, base: 0, label: 'an edit', changes },
        check,
        (inverse) => to.push(inverse),
      );
    }
    return fault(404, 'not-found', 'no such address');
  }

  private make(kept: Kept, command: Command, check: () => Check, then: (inverse: Change[]) => void): [number, unknown] {
    try {
      const out = apply(kept.draft.document, command.changes);
      if (out.clashes.length > 0)
        return [
          409,
          {
            code: 'conflict',
            message: 'a cell holds something else by now',
            help: '',
            clashes: out.clashes,
            revision: kept.draft.revision,
          },
        ];
      kept.draft = {
        ...kept.draft,
        document: out.document,
        revision: kept.draft.revision + 1,
        changed: new Date().toISOString(),
      };
      kept.log.push({ revision: kept.draft.revision, command, inverse: out.inverse });
      then(out.inverse);
      for (const l of this.listeners)
        l(JSON.stringify({ id: command.draft, revision: kept.draft.revision, command: command.id }));
      return [200, { revision: kept.draft.revision, again: false, command, check: check() }];
    } catch (e) {
      if (!(e instanceof Refused)) throw e;
      return [400, { code: 'invalid', message: e.message, help: '' }];
    }
  }
}

// install puts the mock in the place of the server. window.mock lets a test cut
// the wire, or write from elsewhere.
export function install(): Mock {
  const mock = new Mock();
  const real = window.fetch.bind(window);
  window.fetch = async (input, init) => {
    const url = new URL(input instanceof Request ? input.url : String(input), location.href);
    if (!url.pathname.startsWith('/api/')) return real(input, init);
    await new Promise((r) => setTimeout(r, 8));
    if (mock.down) throw new TypeError('the wire is cut');
    const [status, body] = mock.answer(
      init?.method ?? 'GET',
      url,
      init?.body ? JSON.parse(String(init.body)) : undefined,
    );
    return new Response(JSON.stringify(body), { status, headers: { 'Content-Type': 'application/json' } });
  };
  window.EventSource = class {
    constructor() {
      setTimeout(() => this.on.get('open')?.({}), 0);
      mock.listeners.add((data) => this.on.get('draft')?.({ data }));
    }
    on = new Map<string, (e: unknown) => void>();
    addEventListener(type: string, f: (e: unknown) => void) {
      this.on.set(type, f);
    }
    close() {}
  } as unknown as typeof EventSource;
  (window as unknown as { mock: Mock }).mock = mock;
  return mock;
}
