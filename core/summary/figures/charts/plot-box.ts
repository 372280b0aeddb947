/** Where a chart is plotted within its picture [px]. */
export interface PlotBox {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** A picture no smaller than this keeps its plot in view [px]. */
const LEAST = 40;

/** Room for the plot between the margins, where ticks and titles stand. */
export const plotBox = (width: number, height: number, margin: PlotBox): PlotBox => ({
  left: margin.left,
  right: Math.max(margin.left + LEAST, width - margin.right),
  top: margin.top,
  bottom: Math.max(margin.top + LEAST, height - margin.bottom),
});

/** To a tenth of a pixel, as it is written into a drawing. */
export const tenth = (px: number): number => Math.round(px * 10) / 10;
