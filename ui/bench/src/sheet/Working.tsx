// biome-ignore-all lint/a11y/useSemanticElements: a box that scrolls is a group, not a set of fields
// How a figure came to be, opened level by level down to the row of a table.
import { useEffect, useState } from 'react';
import { api, type Explained } from '../api/client.ts';
import type { Cause, Figure, Input, Source, Table as TableData, WorkStep } from '../api/types.ts';
import { Button, Table } from '../design/parts.tsx';
import { local, readFigure, significant } from '../format.ts';
import { known, say } from '../words.ts';
import type { StripFigure } from './figures.ts';

// useWorking asks for the working anew when the draft has changed; the old one
// stays until the new one is there.
export function useWorking(
  draft: string,
  figure: string,
  revision: number,
): { step: WorkStep | null | undefined; failed: string } {
  const [step, setStep] = useState<WorkStep | null | undefined>(undefined);
  const [failed, setFailed] = useState('');
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new revision asks again
  useEffect(() => {
    const abort = new AbortController();
    api.check(draft, { working: figure }, abort.signal).then(
      (check) => {
        setFailed('');
        setStep(check.working ?? check.assessment?.figures.find((f) => f.id === figure)?.working ?? null);
      },
      (e: unknown) => !abort.signal.aborted && setFailed(e instanceof Error ? e.message : String(e)),
    );
    return () => abort.abort();
  }, [draft, figure, revision]);
  return { step, failed };
}

export function Working({
  of,
  draft,
  revision,
  fold,
}: {
  of: StripFigure;
  draft: string;
  revision: number;
  fold: () => void;
}) {
  const { step, failed } = useWorking(draft, of.id, revision);
  const f = of.figure;
  return (
    <div className="slip working">
      <header>
        <h2>{of.title}</h2>
        <p className="prose">
          {of.read ? `${of.read.sentence[0]?.toUpperCase()}${of.read.sentence.slice(1)}.` : of.why}
        </p>
        <Button onClick={fold}>
          {say('working.fold')} <kbd>Esc</kbd>
        </Button>
      </header>
      <div className="work-columns">
        <div className="steps">
          {failed && <p className="cap">{say('working.failed', { why: failed })}</p>}
          {!failed && step === undefined && <p className="cap">{say('working.loading')}</p>}
          {step === null && <p className="cap">{say('working.none')}</p>}
          {step && <Steps of={step} top />}
        </div>
        <div className="side">
          <Causes of={f} />
          {f.calculated && <p className="small">{calculated(f)}</p>}
          {known(`reading.${f.id}`) && (
            <>
              <h3>{say('working.reads')}</h3>
              <p className="small">{known(`reading.${f.id}`)}</p>
            </>
          )}
          <Sources of={f.sources} />
        </div>
      </div>
    </div>
  );
}

function calculated(f: Figure): string {
  const was = readFigure({
    ...f,
    value: f.calculated?.value ?? null,
    low: f.calculated?.low ?? null,
    high: f.calculated?.high ?? null,
  });
  return was ? say('working.calculated', { value: was.value, band: was.band }) : '';
}

// Steps shows one level; what lies under it is folded until it is asked for.
export function Steps({ of, top = false }: { of: WorkStep; top?: boolean }) {
  return (
    <>
      {of.text && !of.method && <p className="step-text">{of.text}</p>}
      {of.method && (
        <div className="equation">
          <p className="eq">{pretty(of.text ?? '')}</p>
          {of.numbers && (
            <p className="eqn">
              {say('working.with-numbers')}: {pretty(of.numbers)}
              {of.result != null &&
                ` = ${local(significant(of.result, 4))}${of.unit && of.unit !== '1' ? ` ${of.unit}` : ''}`}
            </p>
          )}
        </div>
      )}
      {of.inputs && of.inputs.length > 0 && <Inputs of={of.inputs} />}
      {of.table && <Table of={of.table} caption={of.title ?? ''} />}
      {(of.steps ?? []).map((s, n) => {
        const key = `${n}/${s.title ?? s.text ?? ''}`;
        const heavy = s.method || (s.steps?.length ?? 0) > 0 || (s.table && (!top || s.table.rows.length > long));
        if (!heavy) {
          return (
            <div className="step" key={key}>
              {s.title && (s.text || s.table) && <h3>{s.title}</h3>}
              <Steps of={s} />
            </div>
          );
        }
        return (
          <details className="step" key={key}>
            <summary>
              {s.title ? say('working.deeper', { title: s.title }) : say('working.deeper-plain')}
              {s.result != null && s.method && (
                <span className="band">
                  {' '}
                  {local(significant(s.result, 3))}
                  {s.unit && s.unit !== '1' ? ` ${s.unit}` : ''}
                </span>
              )}
            </summary>
            <div className="under">
              <Steps of={s} />
            </div>
          </details>
        );
      })}
      {!top && of.sources && of.sources.length > 0 && <Sources of={of.sources} small />}
    </>
  );
}

// A table longer than this is folded until it is asked for.
const long = 12;

const pretty = (text: string): string => text.replaceAll(' * ', ' × ').replaceAll(' - ', ' − ');

function Inputs({ of }: { of: readonly Input[] }) {
  const [row, setRow] = useState<string | null>(null);
  return (
    <>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard */}
      <div className="scroll" tabIndex={0} role="group" aria-label={say('working.symbol')}>
        <table className="table inputs">
          <thead>
            <tr>
              <th scope="col">{say('working.symbol')}</th>
              <th scope="col">{say('working.means')}</th>
              <th scope="col" className="r">
                {say('working.value')}
              </th>
              <th scope="col">{say('working.evidence')}</th>
              <th scope="col">{say('working.from')}</th>
            </tr>
          </thead>
          <tbody>
            {of.map((i) => (
              <tr key={i.symbol + i.from}>
                <th scope="row">
                  <i>{i.symbol}</i>
                </th>
                <td>{i.means}</td>
                <td className="r">
                  {i.value === null ? '–' : local(significant(i.value, 4))}
                  {i.unit !== '1' && i.unit !== '' ? ` ${i.unit}` : ''}
                </td>
                <td>
                  <em className="evidence">{i.grade}</em>
                </td>
                <td>
                  {i.from}
                  {tableOf(i.from) && (
                    <>
                      {' '}
                      <Button aria-expanded={row === i.from} onClick={() => setRow(row === i.from ? null : i.from)}>
                        {say('working.row')}
                      </Button>
                    </>
                  )}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {row && <SourceRow of={row} />}
    </>
  );
}

// tableOf finds the table in "isotherms/solutes, row glycerol".
export function tableOf(from: string): { table: string; row: string } | null {
  const m = /^([a-z0-9-]+\/[a-z0-9/-]+),? row (.+)$/i.exec(from);
  return m ? { table: m[1] as string, row: m[2] as string } : null;
}

function SourceRow({ of }: { of: string }) {
  const at = tableOf(of);
  const table = at?.table;
  const [told, setTold] = useState<Explained | string | null>(null);
  useEffect(() => {
    if (table === undefined) return;
    let gone = false;
    api.explain(table).then(
      (x) => !gone && setTold(x),
      (e: unknown) => !gone && setTold(e instanceof Error ? e.message : String(e)),
    );
    return () => {
      gone = true;
    };
  }, [table]);
  if (told === null) return <p className="cap">{say('working.loading')}</p>;
  if (typeof told === 'string') return <p className="cap">{say('working.failed', { why: told })}</p>;
  return <Explanation of={told} mark={at?.row ?? ''} />;
}

// Explanation shows what the program says about a method, rule or table; with a
// mark, of a table only the rows that carry it.
export function Explanation({ of, mark = '' }: { of: Explained; mark?: string }) {
  const marked = (text: string) => mark !== '' && text.toLowerCase().includes(mark.toLowerCase());
  return (
    <div className="explained">
      <h3>{of.title}</h3>
      {of.sections.map((s) => {
        const table = s.table && (mark === '' ? s.table : rowOf(s.table, mark));
        return (
          <div key={`${s.head}/${s.text}`}>
            {s.head && <h4>{s.head}</h4>}
            {(s.text ?? '')
              .split('\n')
              .filter((l) => l.trim() !== '')
              .map((l) => (
                <p key={l} className={marked(l) ? 'small here' : 'small'}>
                  {l.trim()}
                </p>
              ))}
            {s.items && s.items.length > 0 && (
              <ul className="sources">
                {s.items.map((x) => (
                  <li key={x} className={marked(x) ? 'here' : undefined}>
                    {x}
                  </li>
                ))}
              </ul>
            )}
            {table && <Table of={table} caption={s.head || of.title} />}
          </div>
        );
      })}
    </div>
  );
}

// rowOf turns the row that carries a name into a list of what stands in it; a
// row that only mentions the name will do where none is called so.
export function rowOf(t: TableData, name: string): TableData {
  const like = (c: string | undefined) => (c ?? '').toLowerCase() === name.toLowerCase();
  const row = t.rows.find((r) => like(r[0])) ?? t.rows.find((r) => r.some(like));
  if (!row) return t;
  return {
    head: [t.head[0] ?? '', row[0] ?? ''],
    rows: t.head.flatMap((h, i) => (i > 0 && row[i] ? [[h, row[i]]] : [])),
  };
}

const most = 8;

// The causes of a band as bars about the figure, the largest first.
export function Causes({ of }: { of: Figure }) {
  const size = (c: Cause) => Math.max(Math.abs(c.low ?? 0), Math.abs(c.high ?? 0));
  const stated = of.causes
    .filter((c) => c.low !== null && c.high !== null && size(c) > 0)
    .sort((a, b) => size(b) - size(a));
  const unstated = of.causes.filter((c) => c.low === null || c.high === null);
  if (stated.length + unstated.length === 0) return null;
  const widest = Math.max(...stated.map(size), 0);
  const digits = (v: number) => {
    const n = Math.max(0, Math.min(4, 1 - Math.floor(Math.log10(widest || 1))));
    return (v > 0 ? '+' : '') + local(v.toFixed(n));
  };
  const x = (v: number) => 45 + (v / (widest || 1)) * 42;
  const shown = stated.slice(0, most);
  return (
    <>
      <h3>{say('working.band')}</h3>
      <table className="table causes">
        <thead className="vh">
          <tr>
            <th scope="col">{say('working.cause')}</th>
            <td />
            <th scope="col">{say('working.low')}</th>
            <th scope="col">{say('working.high')}</th>
          </tr>
        </thead>
        <tbody>
          {shown.map((c) => {
            const [a, b] = [Math.min(c.low ?? 0, c.high ?? 0, 0), Math.max(c.low ?? 0, c.high ?? 0, 0)];
            return (
              <tr key={c.name}>
                <td>{c.name}</td>
                <td className="bar">
                  <svg viewBox="0 0 90 16" width="90" height="16" aria-hidden="true">
                    <path d="M45 1V15" stroke="var(--rule)" />
                    <rect x={x(a)} y="6" width={Math.max(1, x(b) - x(a))} height="4" fill="var(--ink)" />
                  </svg>
                </td>
                <td className="r">{digits(c.low ?? 0)}</td>
                <td className="r">{digits(c.high ?? 0)}</td>
              </tr>
            );
          })}
          {unstated.map((c) => (
            <tr key={c.name}>
              <td>{c.name}</td>
              <td colSpan={3} className="r">
                <em className="evidence">{say('working.not-stated')}</em>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="cap">
        {stated.length > most && `${say('working.more-causes', { n: stated.length - most })}. `}
        {say('working.band-how')}
      </p>
    </>
  );
}

export function Sources({ of, small }: { of: readonly Source[]; small?: boolean }) {
  const once = of.filter((s, i) => of.findIndex((x) => x.key === s.key && x.at === s.at) === i);
  if (once.length === 0) return null;
  return (
    <>
      {small ? <h4>{say('working.sources')}</h4> : <h3>{say('working.sources')}</h3>}
      <ul className="sources">
        {once.map((s) => (
          <li key={s.key + s.at}>
            {s.text || s.key}
            {s.at && `, ${s.at}`}
          </li>
        ))}
      </ul>
    </>
  );
}
