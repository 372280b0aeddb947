import { select } from 'd3-selection';
import { zoom, zoomIdentity } from 'd3-zoom';
import type { D3ZoomEvent, ZoomTransform } from 'd3-zoom';
import type { View } from '../geometry/space.ts';
import { isTouchpad, wheelFactor } from './wheel.ts';

interface Reach {
  /** Whether a press of the mouse or a finger moves the paper rather than what lies on it. */
  readonly movesPaper: (event: MouseEvent | TouchEvent) => boolean;
  /** Scales that the paper can be looked at in [px/m]. */
  readonly limits: { readonly least: number; readonly most: number };
  readonly onview: (view: View) => void;
}

/** Moves and zooms the paper by mouse, wheel, touchpad and fingers; the gestures are those of d3-zoom. */
export class PaperMoves {
  private readonly behaviour = zoom<HTMLElement, unknown>();
  private readonly paper;
  /** A view that came from elsewhere is not handed back: who set it knows it by identity. */
  private showing = false;

  constructor(element: HTMLElement, { movesPaper, limits, onview }: Reach) {
    this.behaviour
      .scaleExtent([limits.least, limits.most])
      .filter((event: MouseEvent | TouchEvent) => event.type === 'wheel' || movesPaper(event))
      .wheelDelta((event) => Math.log2(wheelFactor(event)))
      // the size is asked for at each wheel event; the paper has no edge that would need it
      .extent([
        [0, 0],
        [1, 1],
      ])
      .on('zoom', ({ transform: { x, y, k } }: D3ZoomEvent<HTMLElement, unknown>) => {
        if (!this.showing) onview({ x, y, pixelsPerMetre: k });
      });
    this.paper = select(element).call(this.behaviour).on('dblclick.zoom', null);
    // two fingers on a touchpad and a wheel with Shift move the paper; it comes before what zooms
    element.addEventListener('wheel', (event) => this.slide(event), { capture: true, passive: false });
  }

  /** Takes up a view that came from elsewhere, such as a key. */
  show({ x, y, pixelsPerMetre }: View): void {
    const { __zoom: now } = this.paper.node() as HTMLElement & { __zoom: ZoomTransform };
    if (now.x === x && now.y === y && now.k === pixelsPerMetre) return;
    this.showing = true;
    this.paper.call(this.behaviour.transform, zoomIdentity.translate(x, y).scale(pixelsPerMetre));
    this.showing = false;
  }

  private slide(event: WheelEvent): void {
    if (event.ctrlKey || !(isTouchpad(event) || event.shiftKey)) return;
    event.preventDefault();
    event.stopPropagation();
    const sideways = event.shiftKey && event.deltaX === 0;
    const [dx, dy] = sideways ? [event.deltaY, 0] : [event.deltaX, event.deltaY];
    const { __zoom: now } = this.paper.node() as HTMLElement & { __zoom: ZoomTransform };
    this.paper.call(this.behaviour.translateBy, -dx / now.k, -dy / now.k);
  }
}
