import { describe, expect, it } from 'vitest';
import { readValue } from '../../../core/document/read.ts';
import type { ShopDocument } from '../../../core/document/schema.ts';
import { solve } from '../../../core/network/solve.ts';
import { printQuantity } from '../../../core/quantities/print.ts';
import { figure, longFigure, plainFigure } from '../../../core/summary/figures/charts/columns.ts';
import { SECTION_IDS, SECTIONS, summaryHtml } from '../../../core/summary/summary.ts';
import * as s from '../network/shop.ts';
import { EXAMPLES, exampleDocument } from '../upkeep/examples.ts';
import { pageOf, rowsAbout, sectionOf, seen, takeApart } from './page.ts';

const pages = new Map(EXAMPLES.map((name) => [name, pageOf(exampleDocument(name))]));

/** The setting with the least to spare, found by hand from what holds means. */
function governingOf(document: ShopDocument) {
  const solved = solve(document);
  if (!solved.ok) throw new Error('not solved');
  const margins = solved.solution.settings.map((setting) =>
    Math.min(
      ...setting.runs
        .filter((run) => run.massFlow_kgs !== 0)
        .flatMap((run) => [
          ...(run.requiredVelocity_ms ? [run.velocity_ms! / run.requiredVelocity_ms] : []),
          ...(run.requiredFlow_m3s ? [run.flow_m3s / run.requiredFlow_m3s] : []),
        ]),
    ),
  );
  return {
    solution: solved.solution,
    governing: solved.solution.settings[margins.indexOf(Math.min(...margins))]!,
  };
}

describe.each(EXAMPLES)('the summary of %s', (name) => {
  const document = exampleDocument(name);
  const html = pages.get(name)!;
  const { solution, governing } = governingOf(document);
  const rows = rowsAbout(sectionOf(html, 'ledger'));

  it('is a page of whole tags with every section under its heading, in order', () => {
    const { tags } = takeApart(html);
    const headings = [...html.matchAll(/<h2>(.*?)<\/h2>/g)].map((match) => seen(match[1]!));
    expect(headings).toEqual(SECTION_IDS.map((id) => SECTIONS[id].title));
    expect(tags.filter(({ name: tag, end }) => tag === 'h1' && !end)).toHaveLength(1);
    for (const id of SECTION_IDS) expect(seen(sectionOf(html, id)).length).toBeGreaterThan(40);
  });

  it('is whole in itself: no script, nothing fetched, a policy that allows neither', () => {
    const { tags } = takeApart(html);
    const names = new Set(tags.map((tag) => tag.name));
    for (const tag of ['script', 'img', 'link', 'iframe', 'object', 'use', 'image', 'a', 'form']) {
      expect(names).not.toContain(tag);
    }
    const policy = tags.find(({ attributes }) => attributes.get('http-equiv') === 'Content-Security-Policy');
    expect(policy?.attributes.get('content')).toContain('default-src &#39;none&#39;');
    const attributes = tags.flatMap((tag) => [...tag.attributes]);
    expect(attributes.filter(([key]) => /^(on|src|href|style$)/.test(key))).toEqual([]);
    expect(html.match(/url\((?!#)|@import|javascript:/g)).toBeNull();
    expect(
      [...html.matchAll(/https?:[^"\s<]*/g)].every(([url]) => url === 'http://www.w3.org/2000/svg'),
    ).toBe(true);
    // what an url names is there, once
    const ids = attributes.filter(([key]) => key === 'id').map(([, value]) => value);
    expect(new Set(ids).size).toBe(ids.length);
    for (const [, id] of html.matchAll(/url\(#([^)]*)\)/g)) expect(ids).toContain(id);
  });

  it('is black on white: greys alone, in style and pictures', () => {
    const colours = [...html.matchAll(/#[0-9a-fA-F]{3,8}\b(?=[;" ])/g)].map(([colour]) => colour);
    expect(colours.length).toBeGreaterThan(50);
    for (const colour of colours) expect(colour).toMatch(/^#([0-9a-f])\1\1$|^#([0-9a-f]{2})\2\2$/);
    expect(html).not.toMatch(/\b(rgb|rgba|hsl|hwb|lab|lch|oklch|color-mix|color)\(/);
    for (const { attributes } of takeApart(html).tags) {
      for (const key of ['fill', 'stroke']) {
        const paint = attributes.get(key);
        if (paint !== undefined) expect(paint).toMatch(/^(none|#[0-9a-f]{3}|url\(#[\w-]+\))$/);
      }
    }
  });

  it('prints by its own rules: paper, page numbers, heads that come again, rows that stay whole', () => {
    expect(html).toContain('size: A4;');
    expect(pageOf(document, { paper: 'letter', sections: ['job'] })).toContain('size: letter;');
    expect(html).toMatch(/@bottom-right \{[^}]*counter\(page\)[^}]*counter\(pages\)/);
    expect(html).toMatch(/thead \{ display: table-header-group; \}/);
    expect(html).toMatch(/tr \{ break-inside: avoid; \}/);
    for (const [table] of html.matchAll(/<table(?! class="(?:pairs|title))[^>]*>.*?<\/table>/gs)) {
      expect(table).toMatch(/^<table[^>]*><thead><tr><th/);
    }
  });

  it('names document, date and version, and who drew and checked it', () => {
    const head = html.slice(html.indexOf('<header>'), html.indexOf('</header>'));
    for (const text of [document.name, '2026-03-04', 'Chipdraft 9.8.7', 'drawn by', 'checked by']) {
      expect(seen(head)).toContain(text);
    }
    expect(pageOf(document)).toBe(html);
  });

  it('prints in its ledger every piece of the setting with the least to spare, as the Solution has it', () => {
    const { units } = document;
    let count = 0;
    for (const run of governing.runs.filter(({ massFlow_kgs }) => massFlow_kgs !== 0)) {
      const head = rows.get(`run ${run.id}`)![0]!;
      expect(head).toContain(printQuantity(run.flow_m3s, 'flow', units));
      expect(head).toContain(`loss ${printQuantity(run.lossTotal_Pa, 'pressure', units)}`);
      if (run.holds !== null) expect(head).toMatch(run.holds ? /: HOLDS/ : /: DOES NOT HOLD/);
      for (const piece of run.pieces) {
        expect(rows.get(`piece ${piece.id}`)!.slice(2)).toEqual([
          figure(piece.diameter_m, 'length', units),
          longFigure(piece.length_m, units),
          figure(piece.velocity_ms, 'velocity', units),
          figure(piece.velocityPressure_Pa, 'pressure', units),
          plainFigure(piece.coefficient, 3),
          plainFigure(piece.frictionFactor, 4),
          figure(piece.loss_Pa, 'pressure', units),
          figure(piece.staticPressureAfter_Pa, 'pressure', units),
        ]);
        count++;
      }
    }
    expect(count).toBeGreaterThan(8);
  });

  it('prints every setting, fan and device as the Solution has it', () => {
    const { units } = document;
    const table = rowsAbout(sectionOf(html, 'settings'));
    solution.settings.forEach((setting, i) => {
      for (const run of setting.runs) {
        const cells = table.get(`run ${run.id}`);
        if (!cells) {
          expect(run.requiredVelocity_ms ?? run.requiredFlow_m3s).toBeNull();
        } else if (run.massFlow_kgs === 0) expect(cells[i + 1]).toBe('shut');
        else expect(cells[i + 1]!.startsWith(figure(run.velocity_ms, 'velocity', units))).toBe(true);
      }
    });
    const fan = governing.fans[0]!;
    const fanRows = rowsAbout(sectionOf(html, 'fan'));
    expect(fanRows.get(`${fan.id} flow`)![1]).toBe(printQuantity(fan.flow_m3s, 'flow', units));
    expect(fanRows.get(`${fan.id} fan static pressure`)![1]).toBe(
      printQuantity(fan.staticPressure_Pa, 'pressure', units),
    );
    const devices = seen(sectionOf(html, 'devices'));
    for (const device of governing.devices) {
      expect(devices).toContain(printQuantity(device.loss_Pa, 'pressure', units));
      for (const loss of Object.values(device.lossByModel_Pa ?? {})) {
        expect(devices).toContain(printQuantity(loss, 'pressure', units));
      }
    }
  });

  it('says every finding, and names every source of the Solution', () => {
    const findings = seen(sectionOf(html, 'findings'));
    const sources = seen(sectionOf(html, 'sources'));
    for (const setting of solution.settings) {
      for (const { message, remedy } of setting.findings) {
        expect(findings).toContain(message);
        expect(findings).toContain(remedy);
      }
      for (const { source } of [...setting.runs.flatMap(({ pieces }) => pieces), ...setting.devices]) {
        if (source !== null) expect(sources).toContain(source);
      }
    }
    expect(findings).toContain('certifies nothing');
    expect(findings).toContain('licensed');
  });
});

describe('sections', () => {
  const document = exampleDocument('one-router');
  const ask = (sections: readonly string[]) =>
    summaryHtml(document, { sections, date: '', version: '1', paper: 'a4', units: 'si' });

  it('come as chosen, in the order of the page, and the caution stands whatever is chosen', () => {
    const html = pageOf(document, { sections: ['parts', 'plan'] });
    expect([...html.matchAll(/<section id="section-(\w+)"/g)].map((m) => m[1])).toEqual(['plan', 'parts']);
    expect(html).toContain('certifies nothing');
  });

  it.each([[['moon']], [['plan', 'moon', 'sun']], [[]], [['constructor']], [['']]])(
    'refuses %j and names those there are',
    (sections) => {
      const { html, problems } = ask(sections);
      expect(html).toBe('');
      expect(problems).toHaveLength(1);
      for (const id of SECTION_IDS) expect(problems[0]!.remedy).toContain(id);
      for (const name of sections.filter((one) => one !== 'plan')) {
        expect(problems[0]!.message).toContain(`"${name}"`);
      }
    },
  );

  it('follow other units and hours when asked', () => {
    const us = pageOf(document, { units: 'us', sections: ['ledger', 'findings', 'upkeep'], hours: 80 });
    expect(us).toContain('fpm');
    expect(seen(us)).not.toMatch(/\d (m\/s|m3\/h|kPa|Pa)\b/);
    expect(seen(sectionOf(us, 'upkeep'))).toContain('80 h');
  });
});

describe('shops that lack things', () => {
  const shop = (change: (raw: Record<string, unknown> & { things: s.Part[]; runs: s.Part[] }) => void) => {
    const raw = {
      format: 'chipdraft-shop',
      version: 2,
      name: 'Bare shop',
      units: 'si',
      air: s.HAND_AIR,
      options: { compressible: false },
      things: [s.port('saw'), s.STEADY_FAN, s.exhaust()] as s.Part[],
      runs: [
        s.run('R1', 'saw', 'fan', [s.straight(2), s.gate('G1')]),
        s.run('R2', 'fan', 'out', [s.straight(1)]),
      ] as s.Part[],
      settings: [] as unknown[],
    };
    change(raw);
    const read = readValue(raw);
    if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join());
    return read.document;
  };

  it('without places, dust, separator, motor: every section says so in words', () => {
    const html = pageOf(shop(() => undefined));
    takeApart(html);
    const says = (id: string) => seen(sectionOf(html, id));
    expect(says('plan')).toContain('No thing has a place');
    expect(says('devices')).toContain('no separator and no filter');
    expect(says('motor')).toContain('never run a home-made rotor without a guard');
    expect(seen(html)).toContain('Nothing is asked of any run');
  });

  it('without a solution: it is said first, and what can be told stays', () => {
    const html = pageOf(shop((raw) => (raw.settings = [{ name: 'all shut', gates: { G1: 0 } }])));
    takeApart(html);
    expect(seen(html)).toMatch(/no solution/i);
    expect(seen(sectionOf(html, 'parts'))).toContain('Gate');
  });

  it('with something that cannot be: the problem, and no page', () => {
    const broken = shop((raw) => (raw.runs[0]!.material = 'cheese'));
    const { html, problems } = summaryHtml(broken, { date: '', version: '1', paper: 'a4', units: 'si' });
    expect(html).toBe('');
    expect(problems[0]!.message).toContain('cheese');
  });
});
