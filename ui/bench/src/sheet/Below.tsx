// What the sheet goes on with: what it holds, what it declares, the other
// figures, making, notes.
import { useState } from 'react';
import type { Check } from '../api/types.ts';
import { Button, Field, Prose, Table } from '../design/parts.tsx';
import { evidence, local, readFigure, shown } from '../format.ts';
import type { Change, Document, Row } from '../grid/document.ts';
import { newID } from '../grid/ids.ts';
import type { Session } from '../grid/session.ts';
import { say } from '../words.ts';
import { linesText } from './deal.ts';
import { setHead } from './Notes.tsx';
import { Causes, Sources, Steps, useWorking } from './Working.tsx';

function ranged(v: number | null, low: number | null, high: number | null, unit: string): [string, string] {
  if (v === null) return ['–', ''];
  const s = shown(v, low ?? v, high ?? v, unit);
  return [local(s.value), low === null || high === null || low === high ? '' : `${local(s.low)}–${local(s.high)}`];
}

export function Holds({ check }: { check: Check | null }) {
  const a = check?.assessment;
  if (!a || a.composition.length === 0) return null;
  // Water that not every line could be asked for is no amount of water.
  const partly = a.figures.some((f) => f.id === 'water.total' && f.value === null);
  return (
    <section className="part two" aria-label={say('holds.title')}>
      <div>
        <h2>{say('holds.title')}</h2>
        <p className="cap">{say('holds.cap')}</p>
        <Table
          caption={say('holds.title')}
          of={{
            head: [say('holds.part'), say('holds.grams'), say('holds.between'), say('holds.lines')],
            rows: a.held.map((h) => [
              h.name,
              ...ranged(partly && h.kind === 'water' ? null : h.grams, h.low, h.high, 'g/100 g'),
              linesText(h.from),
            ]),
          }}
        />
      </div>
      <div>
        <h2>{say('declares.title')}</h2>
        <p className="cap">{say('declares.cap')}</p>
        <Table
          caption={say('declares.title')}
          of={{
            head: [say('grid.inci'), '%', say('holds.between'), say('holds.lines')],
            rows: a.composition.map((c) => [c.inci, ...ranged(c.percent, c.low, c.high, '%'), linesText(c.from)]),
          }}
        />
      </div>
    </section>
  );
}

export function Others({ check, draft, revision }: { check: Check | null; draft: string; revision: number }) {
  const [open, setOpen] = useState<string | null>(null);
  const others = (check?.assessment?.figures ?? []).filter((f) => !check?.strip.includes(f.id) && readFigure(f));
  if (others.length === 0) return null;
  return (
    <section className="part" aria-labelledby="others-head">
      <h2 id="others-head">{say('others.title')}</h2>
      <ul className="others">
        {others.map((f) => {
          const r = readFigure(f);
          return (
            <li key={f.id}>
              <button
                type="button"
                className="other"
                aria-expanded={open === f.id}
                onClick={() => setOpen(open === f.id ? null : f.id)}
              >
                <span className="fl">{f.title}</span>{' '}
                <span className="v">
                  {r?.value} {r?.unit}
                </span>{' '}
                <span className="band">{r?.band}</span> <em className="evidence">{evidence(f)}</em>
              </button>
              {open === f.id && <OtherWorking draft={draft} id={f.id} revision={revision} check={check as Check} />}
            </li>
          );
        })}
      </ul>
    </section>
  );
}

function OtherWorking({ draft, id, revision, check }: { draft: string; id: string; revision: number; check: Check }) {
  const { step, failed } = useWorking(draft, id, revision);
  const f = check.assessment?.figures.find((x) => x.id === id);
  return (
    <div className="slip working">
      <div className="work-columns">
        <div className="steps">
          {failed ? (
            <p className="cap">{say('working.failed', { why: failed })}</p>
          ) : step === undefined ? (
            <p className="cap">{say('working.loading')}</p>
          ) : (
            step && <Steps of={step} top />
          )}
        </div>
        {f && (
          <div className="side">
            <Causes of={f} />
            <Sources of={f.sources} />
          </div>
        )}
      </div>
    </div>
  );
}

export function Making({ session, doc }: { session: Session; doc: Document }) {
  const steps = doc.making;
  const set = (row: Row, field: string, to: string) =>
    session.edit(say('edit.step'), [
      { do: 'set', list: 'making', row: row.id, field, from: row.cells[field] ?? '', to },
    ]);
  const change = (label: string, ch: Partial<Change> & Pick<Change, 'do' | 'row'>) =>
    session.edit(label, [{ list: 'making', from: '', to: '', ...ch } as Change]);
  return (
    <section className="part side-head" aria-labelledby="making-head">
      <h2 id="making-head">{say('making.title')}</h2>
      <div>
        {steps.length === 0 && <p className="prose quiet">{say('making.none')}</p>}
        <ol className="making">
          {steps.map((row, i) => {
            const n = i + 1;
            return (
              <li key={row.id}>
                <span className="no">{n}</span>
                <div>
                  <Prose
                    label={say('making.text', { n })}
                    value={row.cells.text ?? ''}
                    placeholder={say('making.step', { n })}
                    onDone={(t) => set(row, 'text', t)}
                    className="prose"
                  />
                  <p className="facts">
                    <Field
                      label={say('making.phase')}
                      value={row.cells.phase ?? ''}
                      placeholder="–"
                      onDone={(t) => set(row, 'phase', t)}
                    />
                    <Field
                      label={say('making.temperature')}
                      value={row.cells.temperature ?? ''}
                      placeholder="–"
                      onDone={(t) => set(row, 'temperature', t)}
                    />
                    <Field
                      label={say('making.minutes')}
                      value={row.cells.minutes ?? ''}
                      placeholder="–"
                      decimal
                      onDone={(t) => set(row, 'minutes', t)}
                    />
                    <span className="choices">
                      <Button
                        look="quiet"
                        aria-label={say('making.up', { n })}
                        disabled={i === 0}
                        onClick={() =>
                          change(say('edit.step-move'), { do: 'move', row: row.id, after: steps[i - 2]?.id ?? '' })
                        }
                      >
                        {say('making.up-short')}
                      </Button>
                      <Button
                        look="quiet"
                        aria-label={say('making.down', { n })}
                        disabled={i === steps.length - 1}
                        onClick={() =>
                          change(say('edit.step-move'), { do: 'move', row: row.id, after: steps[i + 1]?.id ?? '' })
                        }
                      >
                        {say('making.down-short')}
                      </Button>
                      <Button
                        look="quiet"
                        aria-label={say('making.remove', { n })}
                        onClick={() => change(say('edit.step-remove'), { do: 'remove', row: row.id })}
                      >
                        {say('making.remove-short')}
                      </Button>
                    </span>
                  </p>
                </div>
              </li>
            );
          })}
        </ol>
        <Button
          onClick={() =>
            change(say('edit.step-add'), { do: 'insert', row: newID(), after: steps.at(-1)?.id ?? '', cells: {} })
          }
        >
          {say('making.add')}
        </Button>
      </div>
    </section>
  );
}

export function OwnNotes({ session, doc }: { session: Session; doc: Document }) {
  const notes = doc.head.notes ?? '';
  return (
    <section className="part side-head" aria-labelledby="notes-head">
      <h2 id="notes-head">{say('notes.title')}</h2>
      <Prose
        className="prose"
        label={say('notes.title')}
        value={notes}
        placeholder={say('notes.empty')}
        onDone={(t) => session.edit(say('edit.head', { field: 'notes' }), [setHead(notes, 'notes', t)])}
      />
    </section>
  );
}
