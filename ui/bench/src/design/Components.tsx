// Every part in every state, with made-up data.
import { useState } from 'react';
import type { Figure } from '../api/types.ts';
import { stripFigure, type Told } from '../sheet/figures.ts';
import { FigureButton } from '../sheet/Strip.tsx';
import { Causes } from '../sheet/Working.tsx';
import { Top } from '../Top.tsx';
import {
  Button,
  Choice,
  Field,
  type Gravity,
  type Kind,
  Mark,
  Note,
  Prose,
  Severity,
  Table,
  Whisker,
} from './parts.tsx';

// This page is for those who build the bench; its few words are not the bench's.
const made = (more: Partial<Figure>): Figure => ({
  id: 'water.activity',
  title: 'Water activity',
  value: 0.3,
  low: 0.28,
  high: 0.34,
  unit: '1',
  state: 'good',
  grade: 'estimated',
  method: 'water.sum',
  sources: [],
  notes: [],
  causes: [
    { name: 'water in the made-up shell', low: -0.02, high: 0.016 },
    { name: 'mixing', low: -0.016, high: 0.011 },
    { name: 'a cause of unknown size', low: null, high: null },
  ],
  ...more,
});
const told: Told = { figures: [], temperature: '25', wrote: '2.0', limits: { 'water.reserve': '0.60' } };
const figures: [string, Figure, boolean, boolean][] = [
  ['at rest', made({}), false, false],
  ['opened', made({}), true, false],
  ['late', made({}), false, true],
  ['out of range', made({ state: 'out-of-range', low: 0.2, high: 0.5 }), false, false],
  [
    'missing',
    made({ value: null, low: null, high: null, state: 'missing', notes: ['needs a density for line 9'] }),
    false,
    false,
  ],
  ['over', made({ id: 'water.reserve', value: -4, low: -5, high: -3.2, unit: 'g/100 g' }), false, false],
  [
    'exact',
    made({ id: 'structure.density', value: 1.08, low: 1.08, high: 1.08, unit: 'g/mL', causes: [] }),
    false,
    false,
  ],
];
const gravities: Gravity[] = ['stop', 'warn', 'cannot-tell', 'advice', 'problem', 'clash'];
const kinds: Kind[] = ['water', 'polyol', 'oil', 'grain', 'other'];

export function Components() {
  const [name, setName] = useState('Oddmarrow hand polish');
  const [kind, setKind] = useState('hand-wash');
  return (
    <div className="page">
      <Top state={<span className="state">parts of the bench, made-up data</span>} />
      <main className="specimens">
        <h1>Parts</h1>
        <section className="part">
          <h2>Type</h2>
          <p className="title-text">Title 46/56</p>
          <h2>Section head 22/32</h2>
          <p className="prose">
            Prose, 16/24, in a measure of 68 characters: an oil-in-polyol gel that turns to milk when it is rinsed,
            figures 0123456789 lining in prose as in tables.
          </p>
          <p>Data 15/24: 21.00 % w/w</p>
          <p className="evidence">evidence word, estimated</p>
          <p className="cap">Caption 13/16</p>
        </section>
        <section className="part">
          <h2>Button</h2>
          <p className="choices">
            <Button>Plain</Button>
            <Button look="main">Main</Button>
            <Button look="quiet">Quiet</Button>
            <Button disabled>Disabled</Button>
            <Button look="quiet" disabled>
              Quiet, disabled
            </Button>
            <Button aria-expanded="true">Expanded</Button>
          </p>
        </section>
        <section className="part">
          <h2>Field</h2>
          <p className="facts">
            <Field label="batch" value="250 g" onDone={() => {}} />
            <Field label="empty" value="" placeholder="100 g" onDone={() => {}} />
            <Field label="wrong" value="some" wrong="Type a number of grams." onDone={() => {}} />
            <Field boxed label="reading" value="0.31" decimal onDone={() => {}} />
            <Choice
              label="kind"
              value={kind}
              options={[
                ['hand-wash', 'hand wash'],
                ['lip', 'lip'],
              ]}
              onDone={setKind}
            />
          </p>
          <Prose label="prose" value={name} onDone={setName} className="prose" />
        </section>
        <section className="part">
          <h2>Slip</h2>
          <div className="slip" id="working">
            <p className="prose">Laid on the page; nothing else is tinted.</p>
          </div>
        </section>
        <section className="part">
          <h2>Severity and note</h2>
          <p className="choices">
            {gravities.map((g) => (
              <Severity key={g} of={g} />
            ))}
          </p>
          {gravities.map((g) => (
            <Note
              key={g}
              gravity={g}
              text="Nobody measured this made-up shell."
              help="dry 10 g of the lot and weigh it again"
            />
          ))}
        </section>
        <section className="part">
          <h2>Mark</h2>
          <p className="choices">
            {kinds.map((k) => (
              <span key={k}>
                <Mark of={k} /> {k}
              </span>
            ))}
          </p>
        </section>
        <section className="part">
          <h2>Whisker</h2>
          <p className="choices">
            <Whisker
              min={0}
              max={1}
              value={0.3}
              low={0.28}
              high={0.34}
              ticks={[
                { at: 0, text: '0' },
                { at: 1, text: '1' },
                { at: 0.6, text: '0.60' },
              ]}
            />
            <Whisker
              min={0}
              max={5}
              value={6}
              low={4}
              high={9}
              ticks={[
                { at: 0, text: '0' },
                { at: 5, text: '5' },
              ]}
            />
          </p>
        </section>
        <section className="part">
          <h2>Figure</h2>
          <ul className="strip n4">
            {figures.map(([label, f, open, late]) => (
              <li key={label}>
                <FigureButton of={stripFigure(f, told)} open={open} late={late} />
                <p className="cap">{label}</p>
              </li>
            ))}
          </ul>
        </section>
        <section className="part">
          <h2>Causes</h2>
          <Causes of={made({})} />
        </section>
        <section className="part">
          <h2>Table</h2>
          <Table
            of={{
              head: ['part', 'g', 'lines'],
              rows: [
                ['glycerol', '2.64', '1'],
                ['shell, dry', '0.30', '9'],
              ],
              foot: ['sum', '2.94', ''],
            }}
            caption="made-up terms"
          />
        </section>
      </main>
    </div>
  );
}
