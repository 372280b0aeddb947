/** What the sections of a summary are called, in their order. */
export const SECTION_TITLES = {
  job: 'The job and what it takes for granted',
  plan: 'Plan',
  ledger: 'Losses, piece by piece',
  settings: 'All settings',
  staircase: 'Pressure staircase',
  fan: 'Fan and system',
  devices: 'Separator and filter',
  motor: 'Motor and rotor',
  parts: 'Parts to buy, and how to cut them',
  upkeep: 'Upkeep',
  chance: 'Does it hold?',
  findings: 'Findings and cautions',
  sources: 'Where the figures come from',
} as const;

export type SectionId = keyof typeof SECTION_TITLES;
export const SECTION_IDS = Object.keys(SECTION_TITLES) as readonly SectionId[];
