import fc from 'fast-check';
import { commandRunner, lines } from './arguments.ts';
import { readAny, readText } from './documents.ts';
import { carryOut, edits } from './edits.ts';
import { crookedDocuments, schemaDocuments } from './grammar.ts';
import { anything } from './hostile.ts';
import { mended } from './mended.ts';
import {
  askDirectly,
  askWorker,
  callShell,
  checkRecords,
  keptRecords,
  questions,
  shellMessages,
  workerMessages,
} from './messages.ts';
import { brokenExamples, brokenTexts, otherFigures, textOf } from './mutations.ts';
import { makePapers } from './papers.ts';
import { trials } from './target.ts';
import type { Target } from './target.ts';
import { pastedTables, quantityTexts, valueTables } from './texts.ts';
import { pasteTable, resolveTable, typeQuantity } from './typed.ts';

/** Every door, by the name that the long run takes with --only; `folder` is one that may be written to. */
export function targetsIn(folder: string): Readonly<Record<string, Target>> {
  return {
    'document-schema': {
      says: 'documents by the published schema',
      runs: 50,
      trial: trials(
        fc.oneof(schemaDocuments, schemaDocuments.map(mended), crookedDocuments).map(textOf),
        readText,
      ),
    },
    'document-parts': {
      says: 'example shops with parts changed in any way',
      runs: 40,
      trial: trials(brokenExamples, readText),
    },
    'document-text': {
      says: 'texts of example shops with bytes turned, cut out and put in',
      runs: 60,
      trial: trials(brokenTexts, readText),
    },
    'document-value': {
      says: 'values that were never text',
      runs: 80,
      trial: trials(
        fc.oneof(
          anything,
          crookedDocuments,
          otherFigures.map((text): unknown => JSON.parse(text)),
        ),
        readAny,
      ),
    },
    solve: {
      says: 'example shops with other figures, solved',
      runs: 40,
      trial: trials(otherFigures, readText),
    },
    paper: {
      says: 'the same: curve, chances, hours, parts, fans and paper',
      runs: 3,
      longest_ms: 10_000,
      trial: trials(otherFigures, makePapers),
    },
    quantity: {
      says: 'texts typed into fields',
      runs: 300,
      trial: trials(quantityTexts, typeQuantity),
    },
    values: { says: 'tables of named values', runs: 60, trial: trials(valueTables, resolveTable) },
    table: { says: 'pasted tables', runs: 100, trial: trials(pastedTables, pasteTable) },
    commands: {
      says: 'thirty commands on example shops',
      runs: 12,
      longest_ms: 5000,
      trial: trials(edits, carryOut),
    },
    cli: {
      says: 'the command line',
      runs: 25,
      longest_ms: 5000,
      trial: trials(lines, commandRunner(folder)),
    },
    worker: {
      says: "messages to the page's worker",
      runs: 10,
      longest_ms: 5000,
      trial: trials(workerMessages, askWorker),
    },
    answers: {
      says: 'questions about fans and paper',
      runs: 20,
      longest_ms: 5000,
      trial: trials(questions, askDirectly),
    },
    shell: { says: 'messages to the machine', runs: 200, trial: trials(shellMessages, callShell) },
    records: { says: 'files that the program keeps', runs: 200, trial: trials(keptRecords, checkRecords) },
  };
}
