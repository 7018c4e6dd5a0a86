// All formulas: find one, begin one, open one.
import { useEffect, useRef, useState } from 'react';
import { api, whyOf } from '../api/client.ts';
import { browserWires, listen } from '../api/events.ts';
import type { DraftInfo } from '../api/types.ts';
import { Button } from '../design/parts.tsx';
import { when } from '../format.ts';
import { emptyDocument } from '../grid/document.ts';
import { newID } from '../grid/ids.ts';
import { productName } from '../products.ts';
import { Top } from '../Top.tsx';
import { say } from '../words.ts';

export function List() {
  const [text, setText] = useState('');
  const [drafts, setDrafts] = useState<DraftInfo[] | null>(null);
  const [failed, setFailed] = useState('');
  const [news, setNews] = useState(0);
  const box = useRef<HTMLInputElement>(null);

  useEffect(() => {
    document.title = `${say('list.title')} · ${say('app.name')}`;
    let t: ReturnType<typeof setTimeout> | undefined;
    const stop = listen(browserWires(), () => {
      clearTimeout(t);
      t = setTimeout(() => setNews((n) => n + 1), 300);
    });
    return () => {
      clearTimeout(t);
      stop();
    };
  }, []);

  // biome-ignore lint/correctness/useExhaustiveDependencies: news asks again
  useEffect(() => {
    const abort = new AbortController();
    api.drafts(text.trim(), 200, abort.signal).then(
      (a) => {
        setDrafts(a.drafts);
        setFailed('');
      },
      (e: unknown) => !abort.signal.aborted && setFailed(whyOf(e)),
    );
    return () => abort.abort();
  }, [text, news]);

  const begin = async () => {
    const id = newID();
    try {
      await api.create(id, emptyDocument());
      location.hash = `#/f/${id}`;
    } catch (e) {
      setFailed(whyOf(e));
    }
  };

  return (
    <div className="page">
      <Top />
      <main>
        <div className="list-head">
          <h1>{say('list.title')}</h1>
          <Button look="main" onClick={begin}>
            {say('list.new')}
          </Button>
        </div>
        <p className="search">
          <label className="field boxed">
            {say('list.search')}{' '}
            <input
              ref={box}
              type="search"
              value={text}
              placeholder={say('list.hint')}
              autoComplete="off"
              spellCheck={false}
              onChange={(e) => setText(e.target.value)}
            />
          </label>
          <span className="cap" role="status">
            {drafts === null ? (failed ? '' : say('list.loading')) : say('list.count', { n: drafts.length })}
          </span>
        </p>
        {failed && (
          <p className="note" role="alert">
            {say('list.failed', { why: failed })}{' '}
            <Button onClick={() => setNews(news + 1)}>{say('state.again')}</Button>
          </p>
        )}
        {drafts && drafts.length === 0 && (
          <p className="prose wait">{text.trim() ? say('list.none', { text: text.trim() }) : say('list.empty')}</p>
        )}
        {drafts && drafts.length > 0 && (
          <table className="list">
            <thead>
              <tr>
                <th scope="col">{say('list.code')}</th>
                <th scope="col">{say('list.name')}</th>
                <th scope="col" className="product">
                  {say('list.product')}
                </th>
                <th scope="col" className="r">
                  {say('list.changed')}
                </th>
              </tr>
            </thead>
            <tbody>
              {drafts.map((d) => (
                <tr key={d.id}>
                  <td className="code">{d.code}</td>
                  <td>
                    <a className="name" href={`#/f/${encodeURIComponent(d.id)}`}>
                      {d.name || say('list.unnamed')}
                    </a>
                  </td>
                  <td className="product">{productName(d.product)}</td>
                  <td className="r">{when(d.changed)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        )}
      </main>
      <footer className="foot">{say('app.foot')}</footer>
    </div>
  );
}
