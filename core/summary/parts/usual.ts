/** Length in which rigid duct is sold where the document says nothing; common practice, no source [m]. */
export const USUAL_STOCK_m = 3;
/** Width of a hacksaw's or a saw blade's cut; common practice, no source [m]. */
export const USUAL_KERF_m = 0.002;
/** Bought on top of what the drawing holds; common practice, no source [-]. */
export const USUAL_SPARE = 0.05;
