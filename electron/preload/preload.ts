import { contextBridge, ipcRenderer, webUtils } from 'electron/renderer';
import type { Shell } from '../../core/document/shell.ts';
import { SHELL_KEY } from '../channels.ts';
import { makeShell } from './bridge.ts';
import { listenForDrops } from './drop.ts';

contextBridge.exposeInMainWorld(SHELL_KEY, makeShell(ipcRenderer) satisfies Shell);
listenForDrops(window, ipcRenderer, (file: File) => webUtils.getPathForFile(file));
