import ts from 'typescript';

/** A doc comment taken apart: the text before the first tag, and each block tag with its text. */
export interface DocComment {
  readonly summary: string;
  readonly tags: readonly { readonly tag: string; readonly text: string }[];
}

/** Labels of `@remarks`, each on a line of its own, all of them wanted. */
export const LABELS = ['Range', 'Outside', 'Leaves out', 'Limits', 'Basis', 'Source', 'Checked'] as const;

/** The doc comment that stands before a node; null if there is none. */
export function docCommentOf(node: ts.Node): DocComment | null {
  const last = ts.getJSDocCommentsAndTags(node).filter(ts.isJSDoc).at(-1);
  if (last) return parseDocComment(last.getText());
  // The compiler passes over a comment on the same line as the brace before it: `{ /** Length [m]. */ length_m: number }`.
  const text = node.getSourceFile().text;
  const beside = ts.getTrailingCommentRanges(text, node.getFullStart())?.at(-1);
  if (!beside || text.slice(beside.end, node.getStart()).includes('\n')) return null;
  const comment = text.slice(beside.pos, beside.end);
  return comment.startsWith('/**') ? parseDocComment(comment) : null;
}

/** Takes a doc comment apart. A tag begins a line; lines inside a code fence are text whatever they begin with. */
export function parseDocComment(raw: string): DocComment {
  const lines = raw
    .replace(/^\/\*\*/, '')
    .replace(/\*\/$/, '')
    .split('\n')
    .map((line) => line.replace(/^\s*\* ?/, '').trimEnd());
  const parts: { tag: string; text: string }[] = [{ tag: '', text: '' }];
  let fenced = false;
  for (const line of lines) {
    if (line.trim().startsWith('```')) fenced = !fenced;
    const start = fenced ? null : /^\s*@(\w+)\s*(.*)$/.exec(line);
    if (start) parts.push({ tag: start[1]!, text: start[2]! });
    else parts.at(-1)!.text += `\n${line}`;
  }
  const [summary, ...tags] = parts.map(({ tag, text }) => ({ tag, text: text.trim() }));
  return { summary: summary!.text, tags };
}

/** Texts of one tag, in order. */
export const textsOf = (doc: DocComment, tag: string) =>
  doc.tags.filter((part) => part.tag === tag).map(({ text }) => text);

/** Text of each `@param`, by the name that stands first (`input` or `input.field`). */
export function paramTexts(doc: DocComment): Map<string, string> {
  const found = new Map<string, string>();
  for (const text of textsOf(doc, 'param')) {
    const parts = /^(\S+)\s*(?:-\s*)?([\s\S]*)$/.exec(text);
    if (parts) found.set(parts[1]!, parts[2]!);
  }
  return found;
}

/** Text of each label in `@remarks`, continuation lines joined. */
export function labelTexts(doc: DocComment): Map<string, string> {
  const found = new Map<string, string>();
  let label: string | null = null;
  for (const line of textsOf(doc, 'remarks').join('\n').split('\n')) {
    const start = LABELS.find((name) => line.startsWith(`${name}:`));
    if (start) {
      label = start;
      found.set(label, line.slice(label.length + 1).trim());
    } else if (label !== null) found.set(label, `${found.get(label)} ${line.trim()}`.trim());
  }
  return found;
}

/** Unit that a name's ending stands for. */
const UNIT_OF_SUFFIX: Readonly<Record<string, string>> = {
  ...{ m: 'm', m2: 'm2', m3: 'm3', um: 'um', mm: 'mm', s: 's', h: 'h', kg: 'kg', K: 'K', degC: 'degC' },
  ...{
    Pa: 'Pa',
    Pas: 'Pa s',
    Pasm3: 'Pa s/m3',
    Pasm: 'Pa s/m',
    W: 'W',
    J: 'J',
    N: 'N',
    Nm: 'N m',
    A: 'A',
    V: 'V',
    ohm: 'ohm',
  },
  ...{
    ms: 'm/s',
    m3s: 'm3/s',
    kgs: 'kg/s',
    kgm3: 'kg/m3',
    kgm2: 'kg/m2',
    gm2: 'g/m2',
    gm3: 'g/m3',
    kgm: 'kg/m',
  },
  ...{
    rad: 'rad',
    deg: 'deg',
    rpm: 'rpm',
    rads: 'rad/s',
    revs: 'rev/s',
    Hz: 'Hz',
    rpmV: 'rpm/V',
    NmA: 'N m/A',
  },
  ...{
    JkgK: 'J/(kg K)',
    Jkg: 'J/kg',
    kgmol: 'kg/mol',
    JmolK: 'J/(mol K)',
    m2s: 'm2/s',
    perK: '1/K',
    pers: '1/s',
    perm: '1/m',
  },
  ...{
    sPerM: 's/m',
    Pam: 'Pa/m',
    kgm2s: 'kg/(m2 s)',
    Wm2: 'W/m2',
    GPa: 'GPa',
    MPa: 'MPa',
    dB: 'dB',
    kgm2Inertia: 'kg m2',
  },
};

/** What is wrong with the unit of a name in a text; null if nothing is. */
export function unitMiss(name: string, text: string): string | null {
  const brackets = [...text.matchAll(/\[([^[\]]+)\]/g)].map((match) => match[1]!.trim());
  const suffix = name.includes('_') ? name.slice(name.lastIndexOf('_') + 1) : null;
  if (suffix !== null && !Object.hasOwn(UNIT_OF_SUFFIX, suffix))
    return `ends in _${suffix}, which is no known unit`;
  if (brackets.length === 0) return 'has no [unit]';
  if (suffix === null) return null;
  const wanted = UNIT_OF_SUFFIX[suffix]!;
  return brackets.includes(wanted)
    ? null
    : `ends in _${suffix} but its unit is [${brackets.join('], [')}], not [${wanted}]`;
}
