import { DROP_CHANNEL } from '../channels.ts';
import type { Line } from './bridge.ts';

/** The parts of a drag event that are read; `isTrusted` is false for one that a script made. */
export interface Drag<AnyFile> {
  readonly isTrusted: boolean;
  readonly dataTransfer: {
    readonly types: readonly string[];
    readonly files: ArrayLike<AnyFile>;
    dropEffect: string;
  } | null;
  preventDefault(): void;
}

interface DropTarget<AnyFile> {
  addEventListener(type: 'dragover' | 'drop', listener: (event: Drag<AnyFile>) => void): void;
}

/** A file that the user drags onto the window is opened by the machine, which alone learns where it is. */
export function listenForDrops<AnyFile>(
  target: unknown,
  line: Pick<Line, 'invoke'>,
  pathOf: (file: AnyFile) => string,
): void {
  const page = target as DropTarget<AnyFile>;
  page.addEventListener('dragover', (event) => {
    if (!event.dataTransfer?.types.includes('Files')) return;
    event.preventDefault();
    event.dataTransfer.dropEffect = 'copy';
  });
  page.addEventListener('drop', (event) => {
    const file = event.dataTransfer?.files[0];
    if (file === undefined) return;
    event.preventDefault();
    // A file that a script made has no path.
    const path = event.isTrusted ? pathOf(file) : '';
    if (path !== '') line.invoke(DROP_CHANNEL.channel, path).catch(() => undefined);
  });
}
