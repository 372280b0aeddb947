import type { Severity } from '../../core/network/solution.ts';
import type { IconName } from '../controls/icons.ts';

/** What a finding is sorted under; `missing` is what an incomplete shop lacks. */
export type Grade = Severity | 'missing';

/** How a grade is shown: word, mark and ink together. */
export interface GradeLook {
  readonly one: string;
  readonly many: string;
  readonly icon: IconName;
  readonly ink: string;
}

/** Gravest first. */
export const GRADES: readonly Grade[] = ['danger', 'missing', 'fault', 'warning', 'advice', 'caution'];

export const GRADE_LOOKS: Readonly<Record<Grade, GradeLook>> = {
  danger: { one: 'danger', many: 'dangers', icon: 'danger', ink: '--danger' },
  missing: { one: 'missing', many: 'missing', icon: 'missing', ink: '--accent' },
  fault: { one: 'fault', many: 'faults', icon: 'fault', ink: '--too-slow' },
  warning: { one: 'warning', many: 'warnings', icon: 'warning', ink: '--slim' },
  advice: { one: 'piece of advice', many: 'pieces of advice', icon: 'advice', ink: '--fast' },
  caution: { one: 'caution', many: 'cautions', icon: 'caution', ink: '--ink' },
};

export const countText = (grade: Grade, count: number): string =>
  `${count} ${count === 1 ? GRADE_LOOKS[grade].one : GRADE_LOOKS[grade].many}`;
