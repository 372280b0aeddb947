import fc from 'fast-check';
import { readValue } from '../../core/document/read.ts';
import type { ShopDocument } from '../../core/document/schema.ts';
import type { ShellCall } from '../../core/document/shell-messages.ts';
import { EXAMPLES } from '../../core/examples/index.ts';
import { CALLS, DROP_CHANNEL } from '../../electron/channels.ts';
import { checkRecent } from '../../electron/files/recent.ts';
import { checkRecovery } from '../../electron/files/recovery.ts';
import { setupIpc } from '../../electron/main/ipc.ts';
import { checkWindowState } from '../../electron/main/window-state.ts';
import { answer } from '../../renderer/state/bench-answers.ts';
import { answerPaper } from '../../renderer/state/paper-answers.ts';
import { anything, json, keys, numbers, strings } from './hostile.ts';
import { must } from './target.ts';

// Messages between the page, its workers and the machine, and what lies in files of the program's own.

const SHOPS: readonly ShopDocument[] = Object.values(EXAMPLES).flatMap((file) => {
  const read = readValue(file);
  return read.ok ? [read.document] : [];
});

const shops = fc.oneof(
  { weight: 4, arbitrary: fc.constantFrom(...SHOPS) },
  { weight: 1, arbitrary: anything },
);
const names = fc.oneof(fc.constantFrom('open', 'F1', 'fan-1', 'fan', 'all open', 'router'), strings);
const serial = fc.oneof(fc.nat({ max: 9 }), anything);
/** Short runs of hours: long ones are work, not a fault. */
const hours = fc.oneof(
  fc.constantFrom(1, 8, 40),
  numbers.filter((value) => !(value > 100 && value < 1e7)),
);
const units = fc.oneof(fc.constantFrom('si', 'us'), anything);

const paperWork = fc.oneof(
  fc.record({ of: fc.constant('upkeep'), asked: fc.record({ document: shops, hours }) }),
  fc.record({ of: fc.constant('parts'), asked: fc.record({ document: shops }) }),
  fc.record({ of: fc.constant('compare'), asked: fc.record({ before: shops, after: shops, units }) }),
  fc.record({
    of: fc.constant('summary'),
    asked: fc.record({
      document: shops,
      options: fc.record({
        sections: fc.oneof(
          fc.constant(null),
          fc.array(fc.oneof(fc.constantFrom('parts', 'plan', 'job'), strings), { maxLength: 3 }),
        ),
        date: strings,
        version: fc.constant('0'),
        paper: fc.oneof(fc.constantFrom('a4', 'letter'), anything),
        units,
        hours,
      }),
    }),
  }),
  fc.record({ of: keys, asked: anything }),
);

/** A message as it arrives: what cannot be copied to another thread is never sent. */
const arrives = (message: unknown): boolean => {
  try {
    structuredClone(message);
    return true;
  } catch {
    return false;
  }
};

/** What a worker of the page may be sent. */
export const workerMessages = fc
  .oneof(
    fc.record({
      kind: fc.constantFrom('solve', 'curve'),
      serial,
      patch: fc.oneof(
        fc.constant(null),
        shops.map((shop) => ({ fields: shop, gone: [], items: [] })),
        fc.record({
          fields: fc.oneof(json, fc.constant({})),
          gone: fc.array(keys, { maxLength: 2 }),
          items: fc.array(
            fc.record({
              field: fc.oneof(fc.constantFrom('things', 'runs'), keys),
              index: numbers,
              item: json,
            }),
            { maxLength: 2 },
          ),
        }),
        anything,
      ),
      settings: fc.oneof(fc.array(names, { maxLength: 3 }), anything),
      setting: names,
      fan: fc.option(names),
      speed: numbers,
    }),
    fc.record({
      kind: fc.constantFrom('fan', 'compare', 'sheet'),
      serial,
      document: shops,
      design: names,
      setting: names,
      solvable: fc.oneof(fc.boolean(), anything),
      paper: fc.constantFrom('a4', 'letter'),
    }),
    paperWork.map((work) => ({ kind: 'paper', serial: 1, ...work })),
    anything,
  )
  .filter(arrives);

/** Questions as they reach who answers them: of a kind that is known, about anything. */
export const questions = workerMessages.filter((message) => {
  const kind = (message as { kind?: unknown } | null | undefined)?.kind;
  return typeof kind === 'string';
});

interface WorkerPort {
  onmessage: ((event: { data: unknown }) => void) | null;
  postMessage(message: unknown): void;
}

/** The worker of the page, in this process: it takes `self` for its port. */
let worker: Promise<WorkerPort> | null = null;
async function openWorker(): Promise<WorkerPort> {
  const port: WorkerPort = { onmessage: null, postMessage: () => undefined };
  Object.defineProperty(globalThis, 'self', { value: port, configurable: true, writable: true });
  await import('../../renderer/state/solver.worker.ts');
  return port;
}
export const prepareWorker = (): Promise<WorkerPort> => (worker ??= openWorker());

const KINDS = new Set<unknown>(['solve', 'curve', 'fan', 'compare', 'sheet', 'paper']);

/** Sends a message to the worker: it answers what it can be asked, and is not brought down by what it cannot. */
export async function askWorker(message: unknown): Promise<string> {
  const port = await prepareWorker();
  const answers: unknown[] = [];
  port.postMessage = (answered) => void answers.push(structuredClone(answered));
  port.onmessage!({ data: message });
  const kind = (message as { kind?: unknown } | null | undefined)?.kind;
  const settings = (message as { settings?: unknown } | null | undefined)?.settings;
  // nothing is answered where nothing was asked
  if (!KINDS.has(kind) || (kind === 'solve' && Array.isArray(settings) && settings.length === 0)) {
    await settle();
    return 'not asked';
  }
  for (let i = 0; i < 2000 && answers.length === 0; i++) await settle();
  must(answers.length > 0, `${String(kind)} got no answer`);
  return `answered: ${String((answers.at(-1) as { kind?: unknown }).kind)}`;
}

const settle = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

/** The answering functions themselves, as they are loaded by the worker: whatever comes, one answer goes. */
export async function askDirectly(message: unknown): Promise<string> {
  const answers: unknown[] = [];
  await answerPaper(message as never, (said) => answers.push(said));
  answer(message as never, (said) => answers.push(said));
  await settle();
  must(answers.length > 0, 'no answer');
  return 'answered';
}

const handles = fc.oneof(
  fc.record({ token: fc.oneof(fc.constant('t'), strings), name: strings }),
  fc.record({ token: strings, name: strings, path: strings }),
  anything,
);
const argument = fc.oneof(
  anything,
  handles,
  strings,
  numbers,
  fc.boolean(),
  fc.constantFrom('a4', 'csv', null),
);
const CHANNELS = [...Object.values(CALLS).map(({ channel }) => channel), DROP_CHANNEL.channel];

export const shellMessages = fc.record({
  channel: fc.constantFrom(...CHANNELS),
  given: fc.array(argument, { maxLength: 4 }),
  gives: fc.oneof(anything, fc.record({ ok: fc.boolean(), file: handles, text: strings }), fc.constant(null)),
  own: fc.boolean(),
});

type Listener = (event: unknown, ...given: unknown[]) => unknown;

/** Calls a channel of the desktop as a page would: refused, or answered by exactly what the table allows. */
export async function callShell({
  channel,
  given,
  gives,
  own,
}: {
  channel: string;
  given: readonly unknown[];
  gives: unknown;
  own: boolean;
}): Promise<string> {
  const listeners = new Map<string, Listener>();
  const page = {};
  let reached = false;
  const note = () => ((reached = true), gives);
  setupIpc({ handle: (name: string, listener: Listener) => void listeners.set(name, listener) } as never, {
    handlers: Object.fromEntries(Object.keys(CALLS).map((call) => [call, note])) as never,
    dropped: () => Promise.resolve(void note()),
    isOwnWindow: (sender) => (sender as unknown) === page,
    log: () => undefined,
  });
  const frame = { url: own ? 'app://chipdraft/index.html' : 'https://example.org/', parent: null };
  let answered: unknown;
  try {
    answered = await listeners.get(channel)!({ sender: page, senderFrame: frame }, ...given);
  } catch (cause) {
    must(cause instanceof Error && /refused|failed/.test(cause.message), `thrown: ${String(cause)}`);
    must(own || !reached, 'a stranger reached a handler');
    return 'refused';
  }
  must(own, 'a stranger was answered');
  if (channel === DROP_CHANNEL.channel) return 'dropped';
  const call = (Object.keys(CALLS) as ShellCall[]).find((name) => CALLS[name].channel === channel)!;
  must(CALLS[call].gives.safeParse(answered).success, `${channel} gave what it may not`);
  return 'answered';
}

/** Files of the program's own with something else in them. */
export const keptRecords = fc.oneof(
  anything,
  fc.record({
    text: fc.oneof(strings, json),
    name: fc.oneof(strings, json),
    at: fc.oneof(numbers, json),
    path: fc.oneof(strings, fc.constant('/a/b.json'), json),
  }),
  fc.array(fc.oneof(json, fc.record({ path: fc.oneof(strings, fc.constant('/a.json')), at: numbers })), {
    maxLength: 20,
  }),
  fc.record({
    bounds: fc.oneof(json, fc.record({ x: numbers, y: numbers, width: numbers, height: numbers })),
    maximized: fc.oneof(fc.boolean(), json),
  }),
);

export function checkRecords(raw: unknown): string {
  const recovery = checkRecovery(raw);
  if (recovery !== null)
    must(typeof recovery.text === 'string' && Number.isFinite(recovery.at), 'a crooked recovery');
  const recent = checkRecent(raw);
  must(
    recent === null || recent.every(({ path, at }) => path.startsWith('/') && Number.isFinite(at)),
    'a crooked list',
  );
  const state = checkWindowState(raw);
  must(state === null || Object.values(state.bounds).every(Number.isInteger), 'a crooked window');
  return [recovery && 'recovery', recent && 'list', state && 'window'].find(Boolean) ?? 'refused';
}
