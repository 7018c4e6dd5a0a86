// The few figures at the head of a sheet. Each opens its working under the
// strip; typing goes on below.
import { Fragment, useEffect, useRef, useState } from 'react';
import type { Check } from '../api/types.ts';
import { Whisker } from '../design/parts.tsx';
import type { Snapshot } from '../grid/session.ts';
import { say } from '../words.ts';
import { type StripFigure, stripFigure, type Told } from './figures.ts';
import { Working } from './Working.tsx';

export function figuresOf(check: Check | null, told: Told): StripFigure[] {
  return (check?.strip ?? []).flatMap((id) => {
    const f = check?.assessment?.figures.find((x) => x.id === id);
    return f ? [stripFigure(f, told)] : [];
  });
}

// useLate turns true when something takes longer than a person waits.
export function useLate(waiting: boolean, ms = 400): boolean {
  const [late, setLate] = useState(false);
  useEffect(() => {
    if (!waiting) {
      setLate(false);
      return;
    }
    const t = setTimeout(() => setLate(true), ms);
    return () => clearTimeout(t);
  }, [waiting, ms]);
  return late;
}

export function FigureButton({
  of,
  open,
  late,
  id,
  onPress,
}: {
  of: StripFigure;
  open: boolean;
  late: boolean;
  id?: string;
  onPress?: () => void;
}) {
  return (
    <button
      type="button"
      id={id}
      className={`figure${late ? ' late' : ''}`}
      aria-expanded={open}
      aria-controls={open ? 'working' : undefined}
      aria-label={of.spoken}
      onClick={onPress}
    >
      <span className="fl">{of.title}</span>
      {of.read ? (
        <>
          <span className="fv">
            {of.read.value}
            {of.read.unit && <span className="fu">{of.read.unit.replace(/\/100 g$/, '')}</span>}
          </span>
          <span className="fw">{of.axis && <Whisker {...of.axis} />}</span>
          <span className="fb">
            <span>{of.read.band}</span> <em className="evidence">{late ? say('strip.working') : of.evidence}</em>
          </span>
          <span className="fs">{of.note}</span>
        </>
      ) : (
        <>
          <span className="fv">–</span>
          <span className="fs why">{of.why}</span>
        </>
      )}
    </button>
  );
}

export function Strip({
  snap,
  check,
  told,
  draft,
}: {
  snap: Snapshot;
  check: Check | null;
  told: Told;
  draft: string;
}) {
  const [open, setOpen] = useState<string | null>(null);
  const back = useRef<string | null>(null);
  const figures = figuresOf(check, told);
  const late = useLate(snap.stale && snap.saving === 'saving');
  const shown = figures.find((f) => f.id === open);
  const buttonID = (id: string) => `figure-${id.replaceAll('.', '-')}`;
  const fold = () => {
    back.current = open;
    setOpen(null);
  };
  useEffect(() => {
    if (open === null && back.current) {
      document.getElementById(buttonID(back.current))?.focus();
      back.current = null;
    }
  });
  if (figures.length === 0) return <p className="prose wait">{say('strip.wait')}</p>;
  return (
    <section className="figures" aria-label={say('strip.name')} onKeyDown={(e) => e.key === 'Escape' && open && fold()}>
      <ul className={`strip n${Math.min(figures.length, 5)}`}>
        {figures.map((f, i) => (
          <Fragment key={f.id}>
            <li className={`at-${i + 1}${f.id === open ? ' on' : ''}`}>
              <FigureButton
                of={f}
                open={f.id === open}
                late={late}
                id={buttonID(f.id)}
                onPress={() => setOpen(f.id === open ? null : f.id)}
              />
            </li>
            {/* Behind its own figure, so that it unfolds under the row it stands in. */}
            {shown === f && (
              <li className="unfolded" id="working">
                <Working key={f.id} of={f} draft={draft} revision={snap.revision} fold={fold} />
              </li>
            )}
          </Fragment>
        ))}
      </ul>
    </section>
  );
}
