import { describe, expect, it } from 'vitest';
import { readFiles } from './project-files.ts';
import { UNWANTED, isRead, unwantedWords } from './word-rules.ts';

describe('the word rule itself', () => {
  it.each(UNWANTED)('refuses %s in any file, in either case, and says where', (word) => {
    const text = `first\nsee ${word.toUpperCase()} there\n`;
    expect(unwantedWords(new Map([['core/a.ts', text]]))).toEqual([`core/a.ts:2 contains "${word}"`]);
    expect(unwantedWords(new Map([['.ci/run', word]]))).toHaveLength(1);
    expect(unwantedWords(new Map([['package-lock.json', word]]))).toEqual([]);
  });

  it('leaves ordinary text alone', () => {
    expect(unwantedWords(new Map([['README.md', 'A workbook for a workshop; work / farm.']]))).toEqual([]);
  });
});

describe('the project', () => {
  const files = readFiles(isRead);

  it('is seen', () => {
    expect([...files.keys()]).toEqual(
      expect.arrayContaining(['package.json', '.gitignore', 'test/rules/words.test.ts']),
    );
  });

  it('contains no such word', () => {
    expect(unwantedWords(files)).toEqual([]);
  });
});
