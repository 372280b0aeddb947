import type { IpcMain, IpcMainInvokeEvent } from 'electron';
import { readMessage } from '../../core/document/shell-messages.ts';
import type { ShellCall } from '../../core/document/shell-messages.ts';
import { CALLS, DROP_CHANNEL } from '../channels.ts';
import type { Gives, Takes } from '../channels.ts';
import { refusal } from '../files/file-failure.ts';
import { isOwnAddress } from './protocol.ts';

/** One function for each call of the shell. */
export type Handlers = {
  readonly [Call in ShellCall]: (...given: Takes<Call>) => Gives<Call> | Promise<Gives<Call>>;
};

export interface IpcOptions {
  readonly handlers: Handlers;
  /** A file that was dropped on the window. */
  readonly dropped: (path: string) => Promise<void>;
  /** Whether a message's sender is the program's own window. */
  readonly isOwnWindow: (sender: IpcMainInvokeEvent['sender']) => boolean;
  /** Where refusals and faults are written. */
  readonly log: (line: string) => void;
}

/** Calls whose callers expect a failure as a value. */
const TELLS_FAILURE: ReadonlySet<ShellCall> = new Set<ShellCall>([
  'open',
  'openRecent',
  'save',
  'saveCopy',
  'savePdf',
  'printPage',
]);

/** Answers the channels of the table, each with its sender, arguments and result checked, and no other. */
export function setupIpc(ipcMain: Pick<IpcMain, 'handle'>, options: IpcOptions): void {
  for (const call of Object.keys(CALLS) as ShellCall[]) {
    ipcMain.handle(CALLS[call].channel, (event, ...given: unknown[]) => {
      checkSender(event, CALLS[call].channel, options);
      return answer(call, given, options);
    });
  }
  ipcMain.handle(DROP_CHANNEL.channel, async (event, ...given: unknown[]) => {
    checkSender(event, DROP_CHANNEL.channel, options);
    const taken = readMessage<[string]>(DROP_CHANNEL.takes, given);
    if (taken === null) throw refuse(DROP_CHANNEL.channel, 'its arguments', options);
    await options.dropped(...taken.data);
  });
}

async function answer<Call extends ShellCall>(call: Call, given: unknown[], options: IpcOptions) {
  const { channel, takes, gives } = CALLS[call];
  const taken = readMessage<unknown>(takes, given);
  if (taken === null) throw refuse(channel, 'its arguments', options);
  try {
    const handler = options.handlers[call] as (...args: unknown[]) => unknown;
    // Read by the table once more: what leaves is plain, and holds nothing but what the table names.
    return gives.parse(await handler(...(taken.data as unknown[])));
  } catch (error) {
    options.log(
      `${channel} failed: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`,
    );
    if (!TELLS_FAILURE.has(call)) throw new Error(`${channel} failed`, { cause: error });
    return refusal(
      'not-possible-here',
      'the program could not do that',
      'try again; if it stays so, restart it',
    );
  }
}

function checkSender(event: IpcMainInvokeEvent, channel: string, options: IpcOptions): void {
  const frame = event.senderFrame;
  const own =
    frame !== null && frame.parent === null && isOwnAddress(frame.url) && options.isOwnWindow(event.sender);
  if (!own) throw refuse(channel, 'its sender', options);
}

function refuse(channel: string, what: string, { log }: IpcOptions): Error {
  const message = `${channel} refused for ${what}`;
  log(message);
  return new Error(message);
}
