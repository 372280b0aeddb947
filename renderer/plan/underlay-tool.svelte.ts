import { planPoint } from '../geometry/space.ts';
import type { PlanPoint } from '../geometry/space.ts';
import type { Scene } from './scene.svelte.ts';

/** The picture under the plan: its panel, its calibration, and the drag that moves it. */
export class UnderlayTool {
  open = $state(false);
  locked = $state(true);
  /** Points clicked for the scale; null while it is not being set. */
  marks = $state.raw<readonly PlanPoint[] | null>(null);
  private drag: { start: PlanPoint; at: PlanPoint; open: boolean } | null = null;

  constructor(private readonly scene: Scene) {}

  close(): void {
    this.open = false;
    this.marks = null;
  }

  /** A press on the plan; whether the picture takes it. */
  press(point: PlanPoint, onPaper: boolean): boolean {
    if (this.marks) {
      this.marks = this.marks.length >= 2 ? [point] : [...this.marks, point];
      return true;
    }
    const picture = this.scene.wb.document.underlay;
    if (!picture || this.locked || !this.open || !onPaper) return false;
    this.drag = { start: point, at: planPoint(picture.at.x.si, picture.at.y.si), open: false };
    return true;
  }

  move(point: PlanPoint): boolean {
    const { drag, scene } = this;
    const picture = scene.wb.document.underlay;
    if (!drag || !picture) return false;
    if (!drag.open) scene.wb.begin('Move picture');
    drag.open = true;
    const at = { x: drag.at.x + point.x - drag.start.x, y: drag.at.y + point.y - drag.start.y };
    scene.run({
      kind: 'setUnderlay',
      underlay: { ...picture, at, metresPerPixel: picture.metresPerPixel.si },
    });
    return true;
  }

  release(): void {
    if (this.drag?.open) this.scene.wb.end();
    this.drag = null;
  }
}
