/**
 * What a terminal takes for an order: control characters but tabs and ends of lines, and marks that turn the direction of
 * writing. Names in documents, and of files, may hold them.
 */
const ORDERS = /\r(?!\n)|[\0-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069]/g;

/** Pictures that Unicode has of the first control characters. */
const PICTURES = 0x2400;

const pictureOf = (sign: string): string => {
  const code = sign.charCodeAt(0);
  return code < 0x20 ? String.fromCharCode(PICTURES + code) : '\ufffd';
};

const escapeOf = (sign: string): string => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`;

/** What a text is written for: in JSON, where orders are within texts only, they are escaped; CSV has its own ends of lines. */
export type Written = 'words' | 'json' | 'csv';

/** A text that does nothing but stand there. */
export function printable(text: string, written: Written = 'words'): string {
  const lines = written === 'csv' ? text : text.replaceAll('\r', pictureOf('\r'));
  return lines.replace(ORDERS, written === 'json' ? escapeOf : pictureOf);
}
