// biome-ignore-all lint/a11y/useSemanticElements: a box that scrolls is a group, not a set of fields
// The few parts everything is made of. None of them opens over the page.
import { type ComponentProps, type ReactNode, useEffect, useId, useLayoutEffect, useRef, useState } from 'react';
import type { Table as TableData } from '../api/types.ts';
import { say } from '../words.ts';

type ButtonProps = ComponentProps<'button'> & { look?: 'plain' | 'quiet' | 'main' };

export function Button({ look = 'plain', className = '', ...rest }: ButtonProps) {
  return <button type="button" className={`button ${look} ${className}`} {...rest} />;
}

// useDraftText keeps what is being typed apart from what is stored, and gives it
// away when the field is left. News from elsewhere does not write over it.
function useDraftText(value: string, done: (text: string) => void) {
  const [text, setText] = useState<string | null>(null);
  const commit = () => {
    if (text !== null && text.trim() !== value) done(text.trim());
    setText(null);
  };
  return { shown: text ?? value, setText, commit };
}

export interface FieldProps {
  label: string;
  hideLabel?: boolean;
  value: string;
  placeholder?: string;
  suffix?: string;
  boxed?: boolean;
  wrong?: string | undefined;
  decimal?: boolean;
  onDone: (text: string) => void;
}

export function Field({ label, hideLabel, value, placeholder, suffix, boxed, wrong, decimal, onDone }: FieldProps) {
  const { shown, setText, commit } = useDraftText(value, onDone);
  const id = useId();
  return (
    <span className={`field${boxed ? ' boxed' : ''}${wrong ? ' wrong' : ''}`}>
      <label htmlFor={id} className={hideLabel ? 'vh' : undefined}>
        {label}
      </label>
      <input
        id={id}
        value={shown}
        placeholder={placeholder}
        size={Math.max(3, (shown || placeholder || '').length)}
        autoComplete="off"
        spellCheck={false}
        inputMode={decimal ? 'decimal' : undefined}
        aria-invalid={wrong ? true : undefined}
        aria-description={wrong}
        onChange={(e) => setText(e.target.value)}
        onBlur={commit}
        onKeyDown={(e) => {
          if (e.key === 'Enter') e.currentTarget.blur();
          if (e.key === 'Escape') {
            setText(null);
            e.stopPropagation();
          }
        }}
      />
      {suffix && <span>{suffix}</span>}
    </span>
  );
}

export function Choice({
  label,
  value,
  options,
  onDone,
}: {
  label: string;
  value: string;
  options: readonly [string, string][];
  onDone: (v: string) => void;
}) {
  const id = useId();
  return (
    <span className={value === '' ? 'field unset' : 'field'}>
      <label htmlFor={id} className="vh">
        {label}
      </label>
      <select id={id} value={value} onChange={(e) => onDone(e.target.value)}>
        {!options.some(([v]) => v === value) && <option value={value}>{value}</option>}
        {options.map(([v, text]) => (
          <option key={v} value={v}>
            {text}
          </option>
        ))}
      </select>
    </span>
  );
}

// grow makes a field as high as its text.
function grow(el: HTMLTextAreaElement | null, _text?: string): void {
  if (!el) return;
  el.style.height = 'auto';
  el.style.height = `${el.scrollHeight + 1}px`;
}

// tie keeps a number and its unit on one line.
export const tie = (text: string): string => text.replace(/(\d) (g|kg|mg|mL|ml|%|°C|µm|h|min)(?![\w])/g, '$1\u00a0$2');

// Prose is a field of several lines that looks like the text it holds.
export function Prose({
  label,
  value,
  placeholder,
  className = '',
  single,
  onDone,
}: {
  label: string;
  value: string;
  placeholder?: string;
  className?: string;
  single?: boolean;
  onDone: (text: string) => void;
}) {
  const { shown, setText, commit } = useDraftText(value, onDone);
  const box = useRef<HTMLTextAreaElement>(null);
  useLayoutEffect(() => grow(box.current, shown), [shown]);
  useEffect(() => {
    // Once the face has arrived, or the width changes, lines break elsewhere.
    const again = () => grow(box.current);
    document.fonts?.ready.then(again).catch(() => {});
    window.addEventListener('resize', again);
    return () => window.removeEventListener('resize', again);
  }, []);
  return (
    <textarea
      ref={box}
      rows={1}
      className={`plain-field ${className}`}
      aria-label={label}
      value={shown}
      placeholder={placeholder}
      spellCheck
      onChange={(e) => setText(single ? e.target.value.replace(/\s*\n\s*/g, ' ') : e.target.value)}
      onBlur={commit}
      onKeyDown={(e) => {
        if (single && e.key === 'Enter') {
          e.preventDefault();
          e.currentTarget.blur();
        }
        if (e.key === 'Escape') {
          setText(null);
          e.stopPropagation();
        }
      }}
    />
  );
}

export type Gravity = 'stop' | 'warn' | 'advice' | 'cannot-tell' | 'problem' | 'clash';

// Severity is a word and a shape, so that it is told without colour.
export function Severity({ of }: { of: Gravity }) {
  return (
    <span className={`sv ${of}`}>
      <svg viewBox="0 0 12 12" width="12" height="12" aria-hidden="true">
        {of === 'stop' && <rect x="1.5" y="1.5" width="9" height="9" fill="currentColor" />}
        {of === 'warn' && <path d="M6 1.2 11 10.5H1Z" fill="currentColor" />}
        {of === 'advice' && <circle cx="6" cy="6" r="4.3" fill="none" stroke="currentColor" strokeWidth="1.5" />}
        {of === 'cannot-tell' && (
          <path d="M6 1 11 6 6 11 1 6ZM6 1V11" fill="none" stroke="currentColor" strokeWidth="1.4" />
        )}
        {of === 'cannot-tell' && <path d="M6 1 1 6 6 11Z" fill="currentColor" />}
        {of === 'problem' && (
          <path d="M.5 8 3 4.5 5.5 8 8 4.5 11.5 8" fill="none" stroke="currentColor" strokeWidth="1.5" />
        )}
        {of === 'clash' && <path d="M2 2 10 10M10 2 2 10" fill="none" stroke="currentColor" strokeWidth="1.5" />}
      </svg>
      {say(`severity.${of}`)}
    </span>
  );
}

export function Note({
  gravity,
  text,
  help,
  needs,
  children,
  id,
}: {
  gravity: Gravity;
  text: string;
  help?: string | undefined;
  needs?: string | undefined;
  children?: ReactNode;
  id?: string;
}) {
  return (
    <p className="note" id={id}>
      <Severity of={gravity} /> {tie(sentence(text))}
      {help && <span className="help"> {tie(sentence(help))}</span>}
      {needs && <span className="help"> {say('margin.needs', { needs: needs.replace(/\.$/, '') })}</span>}
      {children}
    </p>
  );
}

// sentence makes a text that starts small and ends open into one.
export function sentence(s: string): string {
  const t = s.trim().replace(/[.:]+$/, '');
  return t === '' ? '' : `${t[0]?.toUpperCase()}${t.slice(1)}${/[?!]$/.test(t) ? '' : '.'}`;
}

export type Kind = 'water' | 'polyol' | 'oil' | 'grain' | 'other';

export const isKind = (k: string | undefined): k is Kind =>
  k === 'water' || k === 'polyol' || k === 'oil' || k === 'grain' || k === 'other';

// Mark is what a raw material is mostly made of: a shape, and a hue beside it.
export function Mark({ of }: { of: Kind }) {
  return (
    <svg className="mk" viewBox="0 0 10 10" width="10" height="10" aria-hidden="true">
      {of === 'water' && (
        <path
          d="M5 .8C6.6 3.2 8.2 4.8 8.2 6.6a3.2 3.2 0 0 1-6.4 0C1.8 4.8 3.4 3.2 5 .8Z"
          fill="none"
          stroke="var(--water)"
          strokeWidth="1.5"
        />
      )}
      {of === 'polyol' && <circle cx="5" cy="5" r="3.4" fill="none" stroke="var(--polyol)" strokeWidth="2" />}
      {of === 'oil' && <circle cx="5" cy="5" r="4" fill="var(--oil)" />}
      {of === 'grain' && (
        <g fill="var(--grain)">
          <circle cx="2.6" cy="2.6" r="1.5" />
          <circle cx="7.4" cy="2.6" r="1.5" />
          <circle cx="2.6" cy="7.4" r="1.5" />
          <circle cx="7.4" cy="7.4" r="1.5" />
        </g>
      )}
      {of === 'other' && <path d="M1 5H9" stroke="var(--other)" strokeWidth="2" />}
    </svg>
  );
}

export interface WhiskerProps {
  min: number;
  max: number;
  value: number;
  low: number;
  high: number;
  ticks: readonly { at: number; text: string }[];
}

const wide = 196;
const inset = 6;
const axis = 8;

// Whisker is a value with its band on an axis that never moves, so that a
// change is seen as a move. It repeats what stands beside it in figures.
export function Whisker({ min, max, value, low, high, ticks }: WhiskerProps) {
  const at = (v: number) => inset + Math.max(0, Math.min(1, (v - min) / (max - min))) * (wide - 2 * inset);
  const taken: [number, number][] = [];
  const named = ticks.map((t) => {
    const half = 3.2 * t.text.length;
    const middle = Math.max(half, Math.min(wide - half, at(t.at)));
    const free = taken.every(([a, b]) => middle - half > b + 4 || middle + half < a - 4);
    if (free) taken.push([middle - half, middle + half]);
    return { ...t, x: at(t.at), middle, free };
  });
  const [l, m, h] = [at(low), at(value), at(high)];
  return (
    <svg className="whisker" viewBox={`0 0 ${wide} 28`} width={wide} height="28" aria-hidden="true">
      <path d={`M${inset} ${axis}H${wide - inset}`} stroke="var(--rule)" />
      {named.map((t) => (
        <g key={`${t.at}${t.text}`}>
          <path d={`M${t.x} ${axis - 4}V${axis + 4}`} stroke="var(--rule)" />
          {t.free && (
            <text x={t.middle} y="26" textAnchor="middle">
              {t.text}
            </text>
          )}
        </g>
      ))}
      <g className="walk" style={{ transform: `translateX(${m}px)` }}>
        <path
          d={`M${l - m} ${axis}H${h - m}M${l - m} ${axis - 4}V${axis + 4}M${h - m} ${axis - 4}V${axis + 4}`}
          stroke="var(--ink)"
          strokeWidth="2"
          fill="none"
        />
        <circle cx="0" cy={axis} r="3.5" fill="var(--ink)" />
      </g>
    </svg>
  );
}

const numeric = /^[\s−+\-–±<>≤≥≈()×·\d.,e%]*\d[\s−+\-–±<>≤≥≈()×·\d.,e%]*(g|mol|mL)?$/;

// Table shows a table of terms; a column of numbers stands to the right.
export function Table({ of, caption }: { of: TableData; caption?: string }) {
  const right = of.head.map(
    (_, i) =>
      of.rows.length > 0 &&
      of.rows.every((r) => (r[i] ?? '') === '' || numeric.test(r[i] ?? '')) &&
      of.rows.some((r) => r[i]),
  );
  const side = (i: number) => (right[i] ? 'r' : undefined);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard
    <div className="scroll" tabIndex={0} role="group" aria-label={caption ?? of.head.join(', ')}>
      <table className="table">
        {caption && <caption className="vh">{caption}</caption>}
        <thead>
          <tr>
            {of.head.map((h, i) => (
              <th key={key(h, i)} scope="col" className={side(i)}>
                {h}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {of.rows.map((r, n) => (
            <tr key={key(r.join('|'), n)}>
              {r.map((c, i) => (
                <td key={key(c, i)} className={side(i)}>
                  {c}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
        {of.foot && of.foot.length > 0 && (
          <tfoot>
            <tr>
              {of.foot.map((c, i) => (
                <td key={key(c, i)} className={side(i)}>
                  {c}
                </td>
              ))}
            </tr>
          </tfoot>
        )}
      </table>
    </div>
  );
}

// Rows of a table have no ids; their place in it has to do.
const key = (text: string, n: number): string => `${n}/${text}`;
