import { titleOf } from '../../core/document/commands/items.ts';
import { fieldsOf } from '../../core/document/fields.ts';
import type { DocumentProblem } from '../../core/document/problem.ts';
import type { ShopDocument } from '../../core/document/schema.ts';
import type { SettingResult } from '../../core/network/solution.ts';
import type { UnitSystem } from '../../core/quantities/dimensions.ts';
import { placeOf, plainMessage } from './gap-place.ts';
import type { Place } from './gap-place.ts';
import { remedyOf } from './remedies.ts';
import type { Remedy } from './remedies.ts';
import { GRADES } from './severity.ts';
import type { Grade } from './severity.ts';

/** One line of the list. */
export interface Entry {
  /** Stays the same while results change, so that the list does not jump and the focus is kept. */
  readonly key: string;
  readonly grade: Grade;
  /** Id to go to; null for the shop as a whole. */
  readonly where: string | null;
  readonly path: readonly (string | number)[] | null;
  readonly title: string;
  readonly message: string;
  readonly advice: string;
  readonly remedy: Remedy | null;
}

/** Field that a finding is about, where there is one. */
const FIELDS: Readonly<Record<string, readonly (string | number)[]>> = {
  'velocity-low': ['diameter'],
  'velocity-close': ['diameter'],
  'velocity-high': ['diameter'],
  'bend-tight': ['route', 'bend', 'radiusRatio'],
  'suction-over-rating': ['maxSuction'],
  'suction-at-shut-off': ['maxSuction'],
  'face-velocity-high': ['layers', 0, 'area'],
  'filter-full': ['layers', 0, 'load'],
  'inlet-velocity': ['bodyDiameter'],
  're-entrainment': ['bodyDiameter'],
  'cyclone-shape': ['proportions'],
  'leak-blows-dust': ['area'],
};

export interface ListInput {
  readonly document: ShopDocument;
  readonly units: UnitSystem;
  readonly gaps: readonly DocumentProblem[];
  readonly problems: readonly DocumentProblem[];
  readonly result: SettingResult | null;
}

function titles(document: ShopDocument): (id: string) => string {
  const names = new Map([...document.things, ...document.runs].map((part) => [part.id, titleOf(part)]));
  return (id) => {
    const owner = id.includes('.') ? id.slice(0, id.indexOf('.')) : id;
    const name =
      names.get(id) ?? (names.has(owner) ? `${names.get(owner)!}, piece ${id.slice(owner.length + 1)}` : id);
    return name;
  };
}

/** A problem's message with the label of its field before it, which the path called otherwise. */
function withField(document: ShopDocument, place: Place | null, message: string): string {
  const path = place?.path?.join('.');
  if (place === null || path === undefined) return message;
  const label = fieldsOf(document, place.id).find((field) => field.path.join('.') === path)?.label;
  if (label === undefined) return message;
  return message.startsWith('is ') ? `${label} ${message}` : `${label}: ${message}`;
}

/** Everything that the shop has to say now, gravest first: what is missing, what cannot be solved, what was found. */
export function findingsList(input: ListInput): Entry[] {
  const { document, units, gaps, problems, result } = input;
  const title = titles(document);
  const ofProblem =
    (grade: Grade) =>
    (problem: DocumentProblem): Entry => {
      const place = placeOf(problem);
      return {
        key: `${grade} ${problem.path} ${problem.message}`,
        grade,
        where: place?.id ?? null,
        path: place?.path ?? null,
        title: place ? title(place.id) : 'The shop',
        message: withField(document, place, plainMessage(problem)),
        advice: problem.remedy,
        remedy: null,
      };
    };
  if (gaps.length > 0) return gaps.map(ofProblem('missing'));
  if (problems.length > 0) return problems.map(ofProblem('fault'));
  if (result === null) return [];
  const unsolved: Entry[] =
    result.converged ||
    result.reasonText === null ||
    result.findings.some(({ message }) => message.includes(result.reasonText!))
      ? []
      : [
          {
            key: 'unsolved',
            grade: 'fault',
            where: null,
            path: null,
            title: `Setting “${result.name}”`,
            message: result.reasonText,
            advice: '',
            remedy: null,
          },
        ];
  const count = new Map<string, number>();
  const found = result.findings.map((finding): Entry => {
    const base = `${finding.code} ${finding.where}`;
    const nth = count.get(base) ?? 0;
    count.set(base, nth + 1);
    const whole = finding.where === 'shop';
    return {
      key: `${base} ${nth}`,
      grade: finding.severity,
      where: whole ? null : finding.where,
      path: FIELDS[finding.code] ?? null,
      title: whole ? 'The whole shop' : title(finding.where),
      message: finding.message,
      advice: finding.remedy,
      remedy: remedyOf(finding, { document, result, units }),
    };
  });
  return [...unsolved, ...found];
}

/** How many of each grade, gravest first, none left out that is there. */
export function gradeCounts(entries: readonly Entry[]): { readonly grade: Grade; readonly count: number }[] {
  return GRADES.map((grade) => ({
    grade,
    count: entries.filter((entry) => entry.grade === grade).length,
  })).filter(({ count }) => count > 0);
}
