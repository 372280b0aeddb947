import { chmodSync, existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { runCommand } from '../../../core/cli.ts';
import { findBrowser } from '../../../core/cli/chromium.ts';
import { partsCsv } from '../../../core/summary/parts/parts-csv.ts';
import { partsList } from '../../../core/summary/parts/parts-list.ts';
import { SECTION_IDS } from '../../../core/summary/summary.ts';
import { upkeep } from '../../../core/upkeep/upkeep.ts';
import { VERSION } from '../../../core/version.ts';
import { book, file, folder, good } from '../book.ts';
import { exampleDocument } from '../upkeep/examples.ts';

const SHOP = 'core/examples/one-router.json';
const at = (name: string) => join(folder, name);
const environment = { ...process.env };
afterEach(() => {
  process.env = { ...environment };
});

describe('parts', () => {
  it('prints what to buy, as CSV and JSON too', () => {
    const list = partsList(exampleDocument('one-router'));
    expect(book(['parts', SHOP, '--csv']).out).toBe(partsCsv(list));
    expect(JSON.parse(book(['parts', SHOP, '--json']).out)).toEqual(JSON.parse(JSON.stringify(list)));
    const { out } = book(['parts', SHOP]);
    for (const { label } of list.rows) expect(out).toContain(label);
    expect(out).toContain('CUTTING PLAN');
    expect(book(['parts', SHOP, '--units', 'us']).out).toContain('9.84 ft');
    expect(book(['parts', SHOP, '--csv', '--json']).code).toBe(1);
  });
});

describe('upkeep', () => {
  it('follows the hours that are asked for', () => {
    const outcome = upkeep(exampleDocument('one-router'), 120);
    if (!outcome.ok) throw new Error('no upkeep');
    expect(JSON.parse(book(['upkeep', SHOP, '--hours', '120', '--json']).out)).toEqual(
      JSON.parse(JSON.stringify(outcome.result)),
    );
    const { out } = book(['upkeep', SHOP, '--hours', '120']);
    for (const word of outcome.result.sentences.flatMap((sentence) => sentence.split(' '))) {
      expect(out).toContain(word);
    }
    expect(out).toContain('120 running hours');
  });

  it.each([[[]], [['--hours', '0']], [['--hours=-3']], [['--hours', 'ten']], [['--hours', '1e9']]])(
    'refuses %j',
    (more) => {
      const outcome = book(['upkeep', SHOP, ...more]);
      expect(outcome.code).toBe(1);
      expect(outcome.err).toContain('--hours');
    },
  );
});

describe('compare', () => {
  it('takes two files, no more and no fewer', () => {
    const other = file({ ...good(), name: 'Other shop' }, 'other.json');
    const { out } = book(['compare', SHOP, other]);
    expect(out).toContain('Other shop');
    const data = JSON.parse(book(['compare', SHOP, other, '--json']).out) as { before: string };
    expect(data.before).toBe('Tern Street: one router');
    expect(book(['compare', SHOP]).err).toContain('second');
    expect(book(['compare', SHOP, SHOP, SHOP]).code).toBe(1);
    expect(book(['compare', SHOP, at('nowhere.json')]).code).toBe(2);
  });
});

describe('summary', () => {
  it('writes a page and a parts list, whole, and says so', () => {
    const page = at('summary.html');
    const outcome = runCommand(['summary', SHOP, '--out', page, '--date', '2026-03-04']);
    expect(outcome).toEqual({ out: `wrote ${page}: summary for A4\n`, err: '', code: 0 });
    const html = readFileSync(page, 'utf8');
    expect(html).toContain('2026-03-04');
    expect(html).toContain(`Chipdraft ${VERSION}`);
    const list = at('parts.csv');
    expect(runCommand(['summary', SHOP, '--out', list]).code).toBe(0);
    expect(readFileSync(list, 'utf8')).toBe(partsCsv(partsList(exampleDocument('one-router'))));
    // nothing half done is left beside them
    expect(readdirSync(folder).filter((name) => name.endsWith('.tmp'))).toEqual([]);
  });

  it('takes sections, paper, units and hours', () => {
    const page = at('part.html');
    const ask = ['--sections', 'upkeep, plan', '--paper', 'letter', '--units', 'us', '--hours', '80'];
    expect(runCommand(['summary', SHOP, '--out', page, ...ask]).out).toContain('Letter');
    const html = readFileSync(page, 'utf8');
    expect([...html.matchAll(/<section id="section-(\w+)"/g)].map((match) => match[1])).toEqual([
      'plan',
      'upkeep',
    ]);
    expect(html).toContain('size: letter;');
    expect(html).toContain('80 h');
  });

  it.each([
    [['--out', 'x.docx'], '.docx'],
    [[], '--out'],
    [['--out', 'x.html', '--sections', 'plan,moon'], '"moon"'],
    [['--out', 'x.html', '--sections', ''], '""'],
    [['--out', 'x.csv', '--sections', 'plan'], '--sections'],
    [['--out', 'x.html', '--paper', 'a3'], 'a4 or letter'],
    [['--out', 'x.html', '--date', 'yesterday'], 'YYYY-MM-DD'],
    [['--out', 'x.html', '--date', '2026-02-30'], '2026-02-30'],
    [['--out', 'x.html', '--hours', '-1'], 'hours'],
  ])('refuses %j', (more, says) => {
    const outcome = book(['summary', SHOP, ...more]);
    expect(outcome.code).toBe(1);
    expect(outcome.err).toContain(says);
    expect(existsSync('x.html') || existsSync('x.csv')).toBe(false);
  });

  it('lists the sections there are where one is not', () => {
    const { err } = book(['summary', SHOP, '--out', at('y.html'), '--sections', 'moon']);
    for (const id of SECTION_IDS) expect(err).toContain(id);
  });

  it('says why a file cannot be written, what would mend it, and leaves what was there', () => {
    const says = (path: string) => {
      const outcome = book(['summary', SHOP, '--out', path, '--sections', 'job']);
      expect(outcome.code).toBe(1);
      expect(outcome.err).toContain('remedy:');
      return outcome.err;
    };
    expect(says(at('no/such/folder/x.html'))).toContain('its folder is not there');
    writeFileSync(at('plain'), 'text');
    expect(says(at('plain/x.html'))).toContain('its folder is not a folder');
    mkdirSync(at('taken.html'));
    expect(says(at('taken.html'))).toContain('it is a folder');
    mkdirSync(at('locked'));
    chmodSync(at('locked'), 0o555);
    // root may write anywhere, so that this says something to others alone
    if (process.getuid?.() !== 0) expect(says(at('locked/x.html'))).toContain('you may not write there');
  });

  it('says so where there is no browser to make a PDF with, or the one named is none', () => {
    process.env = { PATH: folder, CHROME_PATH: at('no-browser') };
    const outcome = book(['summary', SHOP, '--out', at('x.pdf'), '--sections', 'job']);
    expect(outcome.code).toBe(1);
    expect(outcome.err).toContain('CHROME_PATH');
    // a program that makes no PDF
    process.env = { PATH: folder, CHROME_PATH: '/bin/false' };
    const none = book(['summary', SHOP, '--out', at('x.pdf'), '--sections', 'job']);
    expect(none.code).toBe(1);
    expect(none.err).toContain('made no PDF');
    expect(existsSync(at('x.pdf'))).toBe(false);
  });

  it.skipIf(findBrowser().program === null)(
    'makes a PDF with the installed Chromium, on the paper asked for',
    () => {
      const sizes = { a4: ['594', '841'], letter: ['612', '792'] } as const;
      for (const [paper, [wide, high]] of Object.entries(sizes)) {
        const pdf = at(`${paper}.pdf`);
        const outcome = runCommand(['summary', SHOP, '--out', pdf, '--paper', paper]);
        expect(outcome).toMatchObject({ err: '', code: 0 });
        const text = readFileSync(pdf, 'latin1');
        expect(text.startsWith('%PDF-')).toBe(true);
        const boxes = [...text.matchAll(/\/MediaBox \[0 0 (\d+)[.\d]* (\d+)[.\d]*\]/g)];
        expect(boxes.length).toBeGreaterThan(4);
        for (const box of boxes) expect(box.slice(1, 3)).toEqual([wide, high]);
      }
    },
    60_000,
  );
});

describe('the browser', () => {
  const machine = (env: Record<string, string>, ...programs: string[]) => ({
    env,
    isProgram: (path: string) => programs.includes(path),
  });

  it('is the one that is named, else one on the path, else where it usually lies', () => {
    const all = ['/own/browser', '/a/chromium', '/b/google-chrome', '/usr/bin/chromium'];
    expect(findBrowser(machine({ CHROME_PATH: '/own/browser', PATH: '/a:/b' }, ...all)).program).toBe(
      '/own/browser',
    );
    expect(findBrowser(machine({ PATH: '/b:/a' }, ...all)).program).toBe('/b/google-chrome');
    expect(findBrowser(machine({ PATH: '' }, ...all)).program).toBe('/usr/bin/chromium');
    expect(findBrowser(machine({}, '/usr/bin/chromium')).program).toBe('/usr/bin/chromium');
  });

  it('is not found where there is none, with what to do', () => {
    const found = findBrowser(machine({ PATH: '/a' }));
    expect(found.program).toBeNull();
    if (found.program === null) expect(found.remedy).toContain('.html');
    const named = findBrowser(machine({ CHROME_PATH: '/gone', PATH: '/a' }, '/a/chromium'));
    if (named.program === null) expect(named.why).toContain('/gone');
    expect(named.program).toBeNull();
  });
});

it('the version is that of the package', () => {
  const { version } = JSON.parse(readFileSync('package.json', 'utf8')) as { version: string };
  expect(VERSION).toBe(version);
});
