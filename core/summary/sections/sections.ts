import type { SummaryFacts } from '../facts.ts';
import type { Markup } from '../markup.ts';
import { chanceSection } from './chance.ts';
import { devicesSection } from './devices.ts';
import { fanSection } from './fan.ts';
import { findingsSection } from './findings.ts';
import { jobSection } from './job.ts';
import { ledgerSection } from './ledger.ts';
import { motorSection } from './motor.ts';
import { partsSection } from './parts.ts';
import { planSection } from './plan.ts';
import { settingsSection } from './settings.ts';
import { sourcesSection } from './sources.ts';
import { staircaseSection } from './staircase.ts';
import { upkeepSection } from './upkeep.ts';

export interface SectionRow {
  readonly title: string;
  readonly of: (facts: SummaryFacts) => Markup;
}

/** Sections of a summary in their order, by the names with which they are asked for. */
export const SECTIONS = {
  job: { title: 'The job and what it takes for granted', of: jobSection },
  plan: { title: 'Plan', of: planSection },
  ledger: { title: 'Losses, piece by piece', of: ledgerSection },
  settings: { title: 'All settings', of: settingsSection },
  staircase: { title: 'Pressure staircase', of: staircaseSection },
  fan: { title: 'Fan and system', of: fanSection },
  devices: { title: 'Separator and filter', of: devicesSection },
  motor: { title: 'Motor and rotor', of: motorSection },
  parts: { title: 'Parts to buy, and how to cut them', of: partsSection },
  upkeep: { title: 'Upkeep', of: upkeepSection },
  chance: { title: 'Does it hold?', of: chanceSection },
  findings: { title: 'Findings and cautions', of: findingsSection },
  sources: { title: 'Where the figures come from', of: sourcesSection },
} as const satisfies Record<string, SectionRow>;

export type SectionId = keyof typeof SECTIONS;
export const SECTION_IDS = Object.keys(SECTIONS) as readonly SectionId[];
