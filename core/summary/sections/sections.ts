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
import { SECTION_TITLES } from './titles.ts';
import type { SectionId } from './titles.ts';
import { upkeepSection } from './upkeep.ts';

export interface SectionRow {
  readonly title: string;
  readonly of: (facts: SummaryFacts) => Markup;
}

/** Sections of a summary in their order, by the names with which they are asked for. */
export const SECTIONS = {
  job: { title: SECTION_TITLES.job, of: jobSection },
  plan: { title: SECTION_TITLES.plan, of: planSection },
  ledger: { title: SECTION_TITLES.ledger, of: ledgerSection },
  settings: { title: SECTION_TITLES.settings, of: settingsSection },
  staircase: { title: SECTION_TITLES.staircase, of: staircaseSection },
  fan: { title: SECTION_TITLES.fan, of: fanSection },
  devices: { title: SECTION_TITLES.devices, of: devicesSection },
  motor: { title: SECTION_TITLES.motor, of: motorSection },
  parts: { title: SECTION_TITLES.parts, of: partsSection },
  upkeep: { title: SECTION_TITLES.upkeep, of: upkeepSection },
  chance: { title: SECTION_TITLES.chance, of: chanceSection },
  findings: { title: SECTION_TITLES.findings, of: findingsSection },
  sources: { title: SECTION_TITLES.sources, of: sourcesSection },
} as const satisfies Record<SectionId, SectionRow>;
