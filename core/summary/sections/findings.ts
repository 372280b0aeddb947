import type { Finding, Severity, Solution } from '../../network/solution.ts';
import type { SummaryFacts } from '../facts.ts';
import { htmlTable } from '../html-table.ts';
import { el, join } from '../markup.ts';
import type { Markup } from '../markup.ts';

const ORDER: readonly Severity[] = ['danger', 'fault', 'warning', 'advice'];
const WORDS: Readonly<Record<Severity, string>> = {
  danger: 'DANGER',
  fault: 'FAULT',
  warning: 'warning',
  advice: 'advice',
  caution: 'caution',
};

/** What every summary says, whatever its sections. */
export const STANDING =
  'Chipdraft helps to design; it certifies nothing. Wood dust can burn and explode and harms the lungs, a fan can crush a bin or throw a broken rotor, plastic duct charges up. Local codes and licensed practice decide.';

/** A finding with the settings in which it shows. */
export interface FoundIn {
  readonly finding: Finding;
  readonly settings: readonly string[];
}

/** Findings of all settings, each once, the gravest first; `cautions` are kept apart. */
export function gathered({ settings }: Solution): { findings: FoundIn[]; cautions: Finding[] } {
  const found = new Map<string, { finding: Finding; settings: string[] }>();
  const cautions = new Map<string, Finding>();
  for (const setting of settings) {
    for (const finding of setting.findings) {
      if (finding.severity === 'caution') {
        cautions.set(finding.code, finding);
        continue;
      }
      const key = `${finding.code} ${finding.where} ${finding.message}`;
      const known = found.get(key);
      if (known) known.settings.push(setting.name);
      else found.set(key, { finding, settings: [setting.name] });
    }
  }
  const rank = ({ finding }: FoundIn) => ORDER.indexOf(finding.severity);
  return {
    findings: [...found.values()].sort((a, b) => rank(a) - rank(b)),
    cautions: [...cautions.values()],
  };
}

/** What does not hold or is doubtful, and what may hurt somebody whatever the figures say. */
export function findingsSection({ solution, nameOf }: SummaryFacts): Markup {
  const { findings, cautions } = gathered(solution);
  const several = solution.settings.length > 1;
  const settingsText = (settings: readonly string[]) =>
    settings.length === solution.settings.length ? 'all' : settings.join(', ');
  return join(
    findings.length === 0
      ? el('p', {}, 'No findings.')
      : htmlTable(
          [
            { head: '' },
            { head: 'where' },
            ...(several ? [{ head: 'setting' }] : []),
            { head: 'what, and what would mend it' },
          ],
          findings.map(({ finding, settings }) => ({
            about: `${finding.code} ${finding.where}`,
            cells: [
              el('b', {}, WORDS[finding.severity]),
              nameOf(finding.where) === finding.where
                ? finding.where
                : `${finding.where}: ${nameOf(finding.where)}`,
              ...(several ? [settingsText(settings)] : []),
              [finding.message, '. ', el('i', {}, `Remedy: ${finding.remedy}.`)],
            ],
          })),
        ),
    el(
      'div',
      { class: 'safety long' },
      el('h3', {}, 'Cautions'),
      el(
        'ul',
        {},
        cautions.map(({ message, remedy }) => el('li', {}, `${message} ${remedy}`)),
        el(
          'li',
          {},
          'A rotor that breaks kills: guard it, and run none faster than its stress allows. Steady supports carry ducts and bins; a full bin is heavy.',
        ),
        el('li', {}, STANDING),
      ),
    ),
  );
}
