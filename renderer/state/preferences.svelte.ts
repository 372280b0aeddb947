/** What the user likes, kept by the browser and not with the shop. */
export class Preferences {
  dark = $state(
    read('theme', matchMedia('(prefers-color-scheme: dark)').matches ? 'dark' : 'light') === 'dark',
  );
  guide = $state(read('guide', 'shown') === 'shown');
  /** Whether the fields of the selection are shown; a narrow window starts without them. */
  side = $state(read('side', innerWidth < 900 ? 'folded' : 'shown') === 'shown');
  /** Running hours that upkeep looks ahead. */
  hours = $state(hoursOf(read('hours', '')));
  /** Sections of the summary that are left out, by name. */
  leftOut = $state.raw<readonly string[]>(
    read('left-out', '')
      .split(' ')
      .filter((name) => name !== ''),
  );
  /** What is printed on; empty: what goes with the units. */
  paper = $state<'' | 'a4' | 'letter'>(paperOf(read('paper', '')));

  constructor() {
    $effect.root(() => {
      $effect(() => write('theme', this.dark ? 'dark' : 'light'));
      $effect(() => write('guide', this.guide ? 'shown' : 'dismissed'));
      $effect(() => write('side', this.side ? 'shown' : 'folded'));
      $effect(() => write('hours', String(this.hours)));
      $effect(() => write('left-out', this.leftOut.join(' ')));
      $effect(() => write('paper', this.paper));
    });
  }
}

/** Running hours that are looked ahead at first. */
const USUAL_HOURS = 500;

const hoursOf = (text: string): number => (Number(text) > 0 ? Number(text) : USUAL_HOURS);

const paperOf = (text: string) => (text === 'a4' || text === 'letter' ? text : '');

function read(key: string, otherwise: string): string {
  try {
    return localStorage.getItem(`chipdraft-${key}`) ?? otherwise;
  } catch {
    // a browser that keeps nothing still works
    return otherwise;
  }
}

function write(key: string, value: string): void {
  try {
    localStorage.setItem(`chipdraft-${key}`, value);
  } catch {
    return;
  }
}
