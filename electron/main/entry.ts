import { app, BrowserWindow, dialog, ipcMain, Menu, protocol, screen, session } from 'electron/main';
import * as disk from 'node:fs/promises';
import { startProgram } from './main.ts';

const log = (line: string) => void process.stderr.write(`${line}\n`);

startProgram({
  electron: { app, BrowserWindow, dialog, ipcMain, Menu, protocol, screen, session },
  disk,
  folder: __dirname,
  argv: process.argv,
  workingFolder: process.cwd(),
  platform: process.platform,
  now: Date.now,
  log,
}).catch((error: unknown) => {
  log(
    `Chipdraft could not start: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`,
  );
  app.exit(1);
});
