/** Strokes of our own icons, each drawn in a square of 16 by 16. */
export const ICONS = {
  why: 'M6 6.2a2 2 0 1 1 2.9 1.8c-.6.3-.9.7-.9 1.4M8 11.6v.2M8 1.5a6.5 6.5 0 1 0 .01 0',
  add: 'M8 3v10M3 8h10',
  remove: 'M4 4l8 8M12 4l-8 8',
  drawn: 'M2 12l4-8 4 8 4-8',
  back: 'M6 3L2.5 6.5 6 10M3 6.5h6a4 4 0 0 1 0 8H7',
  copy: 'M5.5 5.5h8v8h-8zM3 10.5H2.5v-8h8V3',
  open: 'M4 6l4 4 4-4',
  closed: 'M6 4l4 4-4 4',
  go: 'M3 8h9M8.5 4.5L12 8l-3.5 3.5',
  danger: 'M8 1.5L15 14H1zM8 6v4M8 11.8v.4',
  fault: 'M3.5 3.5l9 9M12.5 3.5l-9 9',
  warning: 'M8 2.5v7M8 12.6v.4',
  advice: 'M8 6.8v5.7M8 3.4v.4M6.3 6.8H8M6 12.5h4',
  caution: 'M2 8l6-6 6 6-6 6zM8 5.5v3M8 10.6v.2',
  missing: 'M8 2a6 6 0 1 0 .01 0M8 2M5 8h6',
} as const;

export type IconName = keyof typeof ICONS;
