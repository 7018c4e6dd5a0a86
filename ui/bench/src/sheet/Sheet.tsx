// One formula, one sheet.
import { useEffect, useMemo, useState } from 'react';
import { api, type Explained } from '../api/client.ts';
import { Button, Choice, Field, Note, Prose } from '../design/parts.tsx';
import { clockTime } from '../format.ts';
import { readGrams } from '../grid/cells.ts';
import { parse, print, round, sum, trim, zero } from '../grid/decimal.ts';
import type { Session, Snapshot } from '../grid/session.ts';
import { sumsOf } from '../grid/sums.ts';
import { productName, products } from '../products.ts';
import { Top } from '../Top.tsx';
import { say } from '../words.ts';
import { Holds, Making, Others, OwnNotes } from './Below.tsx';
import { dealOf } from './deal.ts';
import type { Told } from './figures.ts';
import { Lines } from './Lines.tsx';
import { ClashNote, setHead } from './Notes.tsx';
import { Status } from './Status.tsx';
import { figuresOf, Strip } from './Strip.tsx';
import { Unknown, useUnknown } from './Unknown.tsx';
import { useSession, useSnapshot } from './useSession.ts';
import { Water } from './Water.tsx';
import { Explanation } from './Working.tsx';

export function Sheet({ id }: { id: string }) {
  const opened = useSession(id);
  if (opened.is === 'open') return <Open key={id} session={opened.session} />;
  return (
    <div className="page">
      <Top />
      <main>
        <p className="prose wait" role="status">
          {opened.is === 'opening'
            ? say('sheet.loading')
            : opened.is === 'missing'
              ? say('sheet.missing')
              : say('sheet.failed', { why: opened.why })}
        </p>
        {opened.is !== 'opening' && (
          <p>
            <a href="#/">{say('sheet.back')}</a>
          </p>
        )}
      </main>
    </div>
  );
}

export function savingText(snap: Snapshot): string {
  const changes = say('state.changes', { n: snap.unsent });
  if (snap.gone) return say('state.gone', { changes });
  switch (snap.saving) {
    case 'offline':
      if (snap.trouble && snap.unsent > 0 && !snap.unkept) return say('state.trouble', { why: snap.trouble, changes });
      return snap.unsent === 0
        ? say('state.offline-none')
        : say(snap.unkept ? 'state.offline-page' : 'state.offline', { changes });
    case 'locked':
      return snap.unsent === 0 ? say('state.locked-none') : say('state.locked', { changes });
    case 'saving':
      return say('state.saving');
  }
  return snap.savedAt ? say('state.saved', { time: clockTime(snap.savedAt) }) : say('state.draft');
}

function Open({ session }: { session: Session }) {
  const snap = useSnapshot(session);
  const { document: doc, check } = snap;
  const [told, setTold] = useState({ text: '', at: 0 });
  const [why, setWhy] = useState<Explained | null>(null);
  const head = (field: string) => doc.head[field] ?? '';
  const set = (field: string) => (to: string) =>
    session.edit(say('edit.head', { field }), [setHead(head(field), field, to)]);

  useEffect(() => {
    document.title = `${[head('code'), head('name') || say('sheet.unnamed')].filter(Boolean).join(' ')} · ${say('app.name')}`;
  });
  useEffect(() => {
    const keys = (e: KeyboardEvent) => {
      if (!(e.ctrlKey || e.metaKey) || e.altKey || e.defaultPrevented) return;
      if ((e.target as HTMLElement).matches('input, textarea, select')) return;
      const k = e.key.toLowerCase();
      if (k === 'z' || k === 'y') {
        e.preventDefault();
        session.step(k === 'y' || e.shiftKey ? 'redo' : 'undo');
      }
    };
    // A page that is closed with edits on their way keeps them; one that cannot
    // keep them asks first.
    const leave = (e: BeforeUnloadEvent) => {
      if (session.snapshot().unkept) e.preventDefault();
    };
    window.addEventListener('keydown', keys);
    window.addEventListener('beforeunload', leave);
    return () => {
      window.removeEventListener('keydown', keys);
      window.removeEventListener('beforeunload', leave);
    };
  }, [session]);

  const wrote = useMemo(() => {
    const sums = sumsOf(doc);
    const water = doc.lines.filter((l) => {
      const found = check?.lines?.[l.id];
      return found?.inci.length === 1 && found.kind === 'water';
    });
    return print(round(sum(water.map((l) => sums.lines.get(l.id)?.percent ?? zero)), 1), 1);
  }, [doc, check]);
  const heldAt = check?.assessment?.conditions?.temperature;
  const toldFigures: Told = useMemo(
    () => ({
      figures: check?.assessment?.figures ?? [],
      temperature: heldAt === undefined ? '25' : print(trim(round(parse(heldAt.toFixed(6)) ?? zero, 1))),
      wrote,
      limits: check?.limits ?? {},
    }),
    [check, heldAt, wrote],
  );
  const figures = useMemo(() => figuresOf(check, toldFigures), [check, toldFigures]);
  const stops = useMemo(
    () =>
      dealOf(
        check?.margin ?? [],
        doc.lines.map((l) => l.id),
      ).stops,
    [check, doc],
  );
  const elsewhere = (check?.problems ?? []).filter((p) => !p.row || p.list === 'making');
  const unknown = useUnknown(doc, check);
  const batch = head('batch');
  const batchWrong = batch !== '' && readGrams(batch) === null;
  const explain = (rule: string) => {
    if (why?.id === rule) {
      setWhy(null);
      return;
    }
    api.explain(rule).then(
      (x) => setWhy({ ...x, id: rule }),
      () => {},
    );
  };

  const waiting = snap.saving === 'offline' || snap.saving === 'locked' || snap.gone;
  return (
    <div className="page">
      <button
        type="button"
        className="skip"
        onClick={() => document.querySelector<HTMLElement>('.lines [tabindex="0"]')?.focus()}
      >
        {say('app.skip')}
      </button>
      <Top
        state={
          <span className={waiting ? 'state waiting' : 'state'} role={waiting ? 'alert' : undefined}>
            {savingText(snap)}
            {waiting && !snap.gone && (
              <>
                {' '}
                <Button onClick={() => session.again()}>{say('state.again')}</Button>
              </>
            )}
          </span>
        }
        commands={
          <>
            <Button look="quiet" onClick={() => session.step('undo')} aria-keyshortcuts="Control+Z">
              {say('app.undo')}
            </Button>
            <Button look="quiet" onClick={() => session.step('redo')} aria-keyshortcuts="Control+Y">
              {say('app.redo')}
            </Button>
            <a href={api.file(session.id)} download>
              {say('sheet.file')}
            </a>
          </>
        }
      />
      <main>
        <div className="title">
          <h1 className="vh">{head('name') || say('sheet.unnamed')}</h1>
          <Prose
            single
            className="title-text"
            label={say('sheet.name')}
            value={head('name')}
            placeholder={say('sheet.unnamed')}
            onDone={set('name')}
          />
        </div>
        <div className="facts">
          <span className="code">
            <Field
              hideLabel
              label={say('sheet.code')}
              value={head('code')}
              placeholder={say('sheet.code-empty')}
              onDone={set('code')}
            />
          </span>
          <Choice
            label={say('sheet.product')}
            value={head('product')}
            options={[['', say('sheet.product-none')], ...products.map((p): [string, string] => [p, productName(p)])]}
            onDone={set('product')}
          />
          <Field
            label={say('sheet.batch')}
            value={batch}
            placeholder={say('sheet.batch-empty')}
            wrong={batchWrong ? say('grid.unclear-grams-help') : undefined}
            onDone={set('batch')}
          />
          <Field
            label={say('sheet.at')}
            value={head('temperature')}
            placeholder={say('sheet.temperature-empty')}
            onDone={set('temperature')}
          />
        </div>
        {check?.answer && <p className="prose answer">{check.answer}</p>}
        {stops.map((s) => (
          <Note key={s.note.rule + s.note.text} gravity="stop" text={`${say('sheet.settle')}: ${s.note.text}`} />
        ))}
        {elsewhere.map((p) => (
          <Note key={p.text} gravity="problem" text={p.text} help={p.help} />
        ))}
        {snap.refusal && (
          <p className="note" role="alert">
            {say('state.refused', { why: snap.refusal })}{' '}
            <Button onClick={() => session.dismiss()}>{say('state.understood')}</Button>
          </p>
        )}
        <Disputes session={session} snap={snap} />
        <Strip snap={snap} check={check} told={toldFigures} draft={session.id} />
        <div id="lines">
          <Lines
            session={session}
            snap={snap}
            check={check}
            tell={(text) => setTold({ text, at: Date.now() })}
            onWhy={explain}
          />
        </div>
        {why && (
          <section className="slip why-slip" aria-live="polite">
            <Explanation of={why} />
            <Button onClick={() => setWhy(null)}>{say('line.fold')}</Button>
          </section>
        )}
        <Unknown session={session} {...unknown} />
        <Status snap={snap} check={check} figures={figures} told={told} />
        <Water draft={session.id} revision={snap.revision} check={check} onWhy={explain} />
        <Holds check={check} />
        <Others check={check} draft={session.id} revision={snap.revision} />
        <Making session={session} doc={doc} />
        <OwnNotes session={session} doc={doc} />
      </main>
      <footer className="foot">{say('app.foot')}</footer>
    </div>
  );
}

// Disputes about cells that the table does not show, and about lines that have
// gone.
function Disputes({ session, snap }: { session: Session; snap: Snapshot }) {
  const here = snap.disputes.flatMap((dispute) =>
    dispute.clashes
      .filter((c) => c.list !== 'lines' || c.gone || !snap.document.lines.some((l) => l.id === c.row))
      .map((clash) => ({ dispute, clash })),
  );
  if (here.length === 0) return null;
  return (
    <section className="slip" aria-label={say('clash.title')}>
      <h2>{say('clash.title')}</h2>
      {here.map(({ dispute, clash }) => (
        <ClashNote
          key={dispute.id + clash.list + clash.row + clash.field}
          session={session}
          dispute={dispute}
          clash={clash}
        />
      ))}
    </section>
  );
}
