/** What the sheet says before a fan is run; common practice, it defers to local codes. */
export const SAFETY: readonly string[] = [
  'Unplug the fan or take the battery off before any change, and wait until the wheel stands still.',
  'Guard inlet, outlet and wheel, so that no finger, hair or cloth can reach them. Never reach in while it turns.',
  'Stand clear of the plane in which the wheel turns. A home-made wheel may burst: check it in the workbook first, and bring the speed up in steps, from a distance.',
  'Wear eye protection; tie back hair and sleeves. Fix the fan and the box to the bench: they pull and kick.',
  'Test with clean air. Blow no fine dust about: it harms the lungs, and as a cloud it can explode.',
  'Motor, controller and battery get hot. A motor that is cooled by the fan’s own air has none with the inlet blocked: test for seconds, then let it cool. Stop at a smell or a hiss.',
  'Keep water apart from mains and battery: vessel low and tied down, fan and leads high and dry, residual-current protection on mains. Leave mains wiring to a licensed electrician.',
];

export interface TestSteps {
  readonly name: string;
  readonly steps: readonly string[];
}

export const STEPS: readonly TestSteps[] = [
  {
    name: 'Sealed lift (inlet blocked)',
    steps: [
      'Block the inlet with a stiff plate that cannot be sucked in, with a tap for a clear tube. Lead the tube straight down into a vessel of water that is tied down, lower than the fan by more than the lift expected, so that no water reaches the fan.',
      'Mark the water in the tube before starting. Start, wait some seconds until the column stands, mark it again, stop.',
      'Write down the rise, the inside diameters of tube and vessel, speed, volts, amps and throttle.',
    ],
  },
  {
    name: 'Hole plates',
    steps: [
      'Tape a still box (a bin, several times wider than the hole) airtight to the inlet. The plate closes its far side; nothing stands within three hole diameters in front of it.',
      'Read the suction at a tap in the box wall away from the jet: a small hole, square and without burr.',
      'Begin with the smallest hole. For each plate write down suction, speed, volts, amps and throttle. Keep hands and loose things away from the hole.',
    ],
  },
  {
    name: 'Traverse, orifice plate or shaped inlet instead',
    steps: [
      'In a straight duct on the suction side, read velocity pressures at the places below, or the difference over an orifice plate, or the suction in the throat of a cone or bell.',
      'Read the suction at the inlet of the fan as well, and say whether the tap is in a duct (its diameter) or in a still box.',
    ],
  },
];

/** Black on white; nothing is told by colour. */
export const PAGE_STYLE = `body { font: 10.5pt/1.35 sans-serif; color: #000; background: #fff; }
h1 { font-size: 16pt; margin: 0 0 4pt; }
h2 { font-size: 12pt; margin: 10pt 0 3pt; }
ul, ol { margin: 2pt 0; padding-left: 16pt; }
table { border-collapse: collapse; width: 100%; margin: 4pt 0; }
th, td { border: 0.6pt solid #000; padding: 3pt 4pt; text-align: left; height: 14pt; overflow-wrap: anywhere; }
section { break-inside: avoid; }
.safety { border: 1.5pt solid #000; padding: 2pt 8pt 6pt; }
.small { font-size: 9pt; }`;
