import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { runCommand } from '../../core/cli.ts';

/** A fenced block of a page: its language, its lines, and the line of the page on which it starts. */
export interface Block {
  readonly language: string;
  readonly lines: readonly string[];
  readonly at: number;
}

/** A command that a page shows, and what the page says it prints. */
export interface Shown {
  readonly command: string;
  readonly printed: readonly string[];
  readonly at: number;
}

/** A line that stands for any number of lines left out. */
const GAP = '...';

/** Fenced blocks of a page, in order. */
export function blocksOf(page: string): Block[] {
  const blocks: { language: string; lines: string[]; at: number }[] = [];
  let open: (typeof blocks)[number] | null = null;
  page.split('\n').forEach((line, i) => {
    if (!line.startsWith('```')) open?.lines.push(line);
    else if (open === null) blocks.push((open = { language: line.slice(3), lines: [], at: i + 1 }));
    else open = null;
  });
  return blocks;
}

/** Documents that a page asks to be saved: a line that ends in "as `name.json`:" and the block after it. */
export function documentsOf(page: string): Map<string, string> {
  const lines = page.split('\n');
  const named = blocksOf(page).flatMap(({ language, lines: text, at }) => {
    const name = /as `([\w-]+\.json)`:$/.exec(
      lines
        .slice(0, at - 1)
        .filter(Boolean)
        .at(-1) ?? '',
    );
    return language === 'json' && name ? [[name[1]!, text.join('\n')] as const] : [];
  });
  return new Map(named);
}

/** Commands of the `console` blocks, each with the lines that follow it. */
export function shownIn(page: string): Shown[] {
  return blocksOf(page)
    .filter(({ language }) => language === 'console')
    .flatMap(({ lines, at }) => {
      const starts = lines.flatMap((line, i) => (line.startsWith('$ ') ? [i] : []));
      return starts.map((start, n) => ({
        command: lines[start]!.slice(2),
        printed: lines.slice(start + 1, starts[n + 1] ?? lines.length),
        at: at + start + 1,
      }));
    });
}

/** Whether the shown lines are the real ones: whole, but for gaps, between which each stretch stands unbroken, in order. */
export function isExcerpt(shown: readonly string[], real: readonly string[]): boolean {
  const stretches: string[][] = [[]];
  for (const line of shown) {
    if (line.trim() === GAP) stretches.push([]);
    else stretches.at(-1)!.push(line);
  }
  const standsAt = (stretch: readonly string[], at: number) =>
    stretch.every((line, i) => real[at + i]?.trimEnd() === line.trimEnd());
  let from = 0;
  for (const [n, stretch] of stretches.entries()) {
    const first = n === 0;
    const last = n === stretches.length - 1;
    let at = last && !first ? Math.max(from, real.length - stretch.length) : from;
    while (!first && !last && at <= real.length && !standsAt(stretch, at)) at++;
    if (!standsAt(stretch, at)) return false;
    from = at + stretch.length;
  }
  return from === real.length;
}

const withoutEnd = (text: string) => (text === '' ? [] : text.replace(/\n$/, '').split('\n'));

/**
 * Plays the commands of a page one after the other in a folder of its own that holds the page's documents, and gives
 * what each really prints. Knows `npm run -s book -- ...`, `sed 's/a/b/' from > to` with plain text, and `echo $?`;
 * commands that it does not know come back as null.
 */
export function play(page: string): { readonly shown: Shown; readonly real: readonly string[] | null }[] {
  const folder = mkdtempSync(join(tmpdir(), 'readme-'));
  const documents = documentsOf(page);
  let code = 0;
  const run = (command: string): string[] | null => {
    const book = /^npm run -s book -- (.*)$/.exec(command);
    const sed = /^sed 's\/([^/]*)\/([^/]*)\/' (\S+) > (\S+)$/.exec(command);
    if (command === 'echo $?') return [String(code)];
    if (sed) {
      const [, from, to, source, target] = sed as unknown as [string, string, string, string, string];
      const text = documents.get(source);
      if (text === undefined || !text.includes(from)) return null;
      documents.set(target, text.replace(from, to));
      return [];
    }
    if (!book) return null;
    const words = [...book[1]!.matchAll(/"([^"]*)"|(\S+)/g)].map((word) => word[1] ?? word[2]!);
    const args = words.map((word, i) => {
      // what a command writes goes into the folder too
      if (words[i - 1] === '--out') return join(folder, word);
      const text = documents.get(word);
      if (text === undefined) return word;
      writeFileSync(join(folder, word), text);
      return join(folder, word);
    });
    const outcome = runCommand(args);
    code = outcome.code;
    return [outcome.out, outcome.err].flatMap((text) => withoutEnd(text.replaceAll(`${folder}/`, '')));
  };
  try {
    return shownIn(page).map((shown) => ({ shown, real: run(shown.command) }));
  } finally {
    rmSync(folder, { recursive: true });
  }
}
