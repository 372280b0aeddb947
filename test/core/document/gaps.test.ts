import { describe, expect, it } from 'vitest';
import { readDocument } from '../../../core/document/read.ts';
import { resolveAgain } from '../../../core/document/resolve.ts';
import { findGaps } from '../../../core/document/shape.ts';

const shop = (more: object) =>
  JSON.stringify({
    format: 'chipdraft-shop',
    version: 2,
    name: 'Half drawn',
    air: { kind: 'weather', temperature: '20 degC', humidity: '50 %' },
    things: [],
    runs: [],
    ...more,
  });
const port = { id: 'saw', kind: 'port', hood: { kind: 'entry', entry: 'plain' } };

describe('an incomplete shop', () => {
  it('is refused on the command line and opens for editing with what it lacks', () => {
    const text = shop({ things: [port] });
    const refused = readDocument(text);
    expect(!refused.ok && refused.problems.map((problem) => problem.path)).toEqual(['things[0](saw)']);
    const opened = readDocument(text, { allowIncomplete: true });
    expect(opened.ok && opened.gaps.map((gap) => gap.message)).toEqual([
      'things[0](saw): no run is joined to saw',
    ]);
  });

  it('may be empty', () => {
    const opened = readDocument(shop({}), { allowIncomplete: true });
    expect(opened.ok && opened.gaps.map((gap) => gap.path)).toEqual(['']);
  });

  it('lacks each leg of a wye that no run is joined to', () => {
    const things = [port, { id: 'W', kind: 'wye', angle: '45 deg' }];
    const runs = [{ id: 'R1', from: 'saw', to: 'W.branch', pieces: [] }];
    const opened = readDocument(shop({ things, runs }), { allowIncomplete: true });
    expect(opened.ok && findGaps(opened.document).map((gap) => gap.message)).toEqual([
      'things[1](W): no run is joined to W.main',
      'things[1](W): no run is joined to W.out',
    ]);
  });

  it('cannot measure a drawn run to a thing without a place', () => {
    const route = { corners: [], bend: { style: 'smooth', radiusRatio: 1.5 } };
    const things = [
      port,
      { id: 'out', kind: 'exhaust', outlet: { kind: 'open' }, to: 'room', at: { x: 1, y: 1 } },
    ];
    const runs = [{ id: 'R1', from: 'saw', to: 'out', route, pieces: [] }];
    const opened = readDocument(shop({ things, runs }), { allowIncomplete: true });
    expect(opened.ok && opened.gaps.map((gap) => gap.path)).toEqual(['runs[0](R1).from']);
  });

  it('is still refused where something is broken, and then only for that', () => {
    const runs = [{ id: 'R1', from: 'saw', to: 'nowhere', pieces: [{ kind: 'gate', id: 'saw' }] }];
    const opened = readDocument(shop({ things: [port], runs }), { allowIncomplete: true });
    expect(!opened.ok && opened.problems.map((problem) => problem.path)).toEqual([
      'runs[0](R1).pieces[0](saw)',
      'runs[0](R1).to',
    ]);
  });
});

describe('resolveAgain', () => {
  const text = shop({
    values: [{ name: 'reach', text: '2 m' }],
    things: [
      { ...port, at: { x: 'reach', y: '1 m' } },
      { ...port, id: 'planer', at: { x: 1, y: '2 m' } },
    ],
  });
  const opened = readDocument(text, { allowIncomplete: true });
  if (!opened.ok) throw new Error('the sample does not open');

  it('changes what leans on a named value and nothing else', () => {
    const longer = { ...opened.document, values: [{ name: 'reach', text: '3 m' }] };
    const again = resolveAgain(longer);
    if (!again.ok) throw new Error('refused');
    expect(again.document.things[0]!.at).toMatchObject({ x: { si: 3, text: 'reach' } });
    expect(again.document.things[1]).toBe(longer.things[1]);
    expect(again.document.runs).toBe(longer.runs);
    expect(resolveAgain(opened.document)).toEqual({ ok: true, document: opened.document });
  });

  it('names the fields that a removed value leaves without one', () => {
    const again = resolveAgain({ ...opened.document, values: [] });
    expect(!again.ok && again.problems.map((problem) => problem.path)).toEqual(['things[0](saw).at.x']);
  });
});
