import type { ThingKind } from '../../core/document/schema-things.ts';

/** Something that can be put on the plan. */
export interface TrayItem {
  readonly id: string;
  readonly label: string;
  readonly hint: string;
  /** Kind of thing, or a piece that goes on a run. */
  readonly makes:
    | { readonly kind: 'thing'; readonly thing: ThingKind; readonly preset?: string }
    | { readonly kind: 'piece'; readonly piece: 'gate' };
  /** Strokes in a square of 20 by 20. */
  readonly icon: string;
}

export interface TrayGroup {
  readonly label: string;
  readonly items: readonly TrayItem[];
}

const thing = (
  id: string,
  label: string,
  hint: string,
  icon: string,
  kind: ThingKind = id as ThingKind,
  preset?: string,
): TrayItem => ({
  id,
  label,
  hint,
  makes: { kind: 'thing', thing: kind, ...(preset === undefined ? {} : { preset }) },
  icon,
});

/** The tray, in the order of the air. */
export const TRAY: readonly TrayGroup[] = [
  {
    label: 'Where air comes in',
    items: [
      thing(
        'port',
        'Machine port',
        'A machine with the hood where its duct starts',
        'M2 5H13V15H2ZM13 8H18V12H13',
      ),
      thing(
        'sweep',
        'Floor sweep',
        'An open mouth at the floor, or any open end',
        'M3 3V17M3 3L11 8H18M3 17L11 12H18',
        'port',
        'floor-sweep',
      ),
      thing('leak', 'Leak', 'A gap through which air gets in', 'M10 3a7 7 0 1 0 .1 0M6 7L9 9.5L7.5 11L13 14'),
    ],
  },
  {
    label: 'On the way',
    items: [
      {
        id: 'gate',
        label: 'Gate',
        hint: 'Put it on a run; a click opens or shuts it',
        makes: { kind: 'piece', piece: 'gate' },
        icon: 'M2 7H18M2 13H18M8 4H12V16H8ZM10 1V10',
      },
      thing(
        'wye',
        'Wye',
        'Where a branch joins a main; ending a run on another puts one in',
        'M2 8H18M2 13H9L15 13H18M4 18L10 13M8 18L13 13',
      ),
      thing(
        'joint',
        'Joint',
        'Where two runs meet end to end',
        'M2 7H7M2 13H7M13 7H18M13 13H18M7 5H13V15H7Z',
      ),
    ],
  },
  {
    label: 'What catches dust',
    items: [
      thing(
        'cyclone',
        'Cyclone',
        'Throws the chips out of the air',
        'M10 3a7 7 0 1 0 .1 0M10 7a3 3 0 1 0 .1 0M3 10V3H10',
      ),
      thing('bin', 'Drop-out bin', 'Lets the coarse chips fall', 'M10 3a7 7 0 1 0 .1 0M10 4V12'),
      thing('filter', 'Filter', 'Keeps the fine dust', 'M3 3H17V17H3ZM5 14L7 6L9 14L11 6L13 14L15 6'),
    ],
  },
  {
    label: 'What moves air',
    items: [
      thing(
        'fan',
        'Fan',
        'Pulls the air through the shop',
        'M17 4H10a6.5 6.5 0 1 0 6.5 6.5V4M10 8a2.5 2.5 0 1 0 .1 0',
      ),
      thing('exhaust', 'Exhaust', 'Where the air leaves', 'M3 6H9V14H3M11 10H18M11 6L16 4M11 14L16 16'),
      thing(
        'pressure',
        'Given pressure',
        'A place that is held at a pressure you know',
        'M10 3a7 7 0 1 0 .1 0M10 10L14 6',
      ),
    ],
  },
];
