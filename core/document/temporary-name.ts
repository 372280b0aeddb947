/** Who writes a temporary file: a short word for the machine, and the number of the process there. */
export interface Writer {
  readonly host: string;
  readonly pid: number;
}

const NAME = /^\.chipdraft-save-(?:([0-9a-f]{8})-(\d{1,10})-)?[0-9a-f]{16}\.tmp$/;

/** Name of a temporary file beside the one that is saved; `random` is 16 hexadecimal digits. */
export const temporaryName = ({ host, pid }: Writer, random: string): string =>
  `.chipdraft-save-${host}-${pid}-${random}.tmp`;

/** Who wrote a temporary file: null where the name is another file's, `unknown` where it does not say. */
export function writerOf(name: string): Writer | 'unknown' | null {
  const found = NAME.exec(name);
  if (found === null) return null;
  const [, host, pid] = found;
  return host === undefined || pid === undefined ? 'unknown' : { host, pid: Number(pid) };
}
