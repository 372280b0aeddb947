import type { Command } from '../../core/document/commands/command.ts';
import type { PlanPoint } from '../geometry/space.ts';

export type UnderlayInput = NonNullable<Extract<Command, { kind: 'setUnderlay' }>['underlay']>;
export type UnderlayFile =
  { readonly ok: true; readonly underlay: UnderlayInput } | { readonly ok: false; readonly message: string };

/** Longest picture that a document takes, as text. */
const MOST_TEXT = 4_900_000;
/** A picture that is too large is drawn again with this many pixels along its longer side. */
const LONGEST_SIDE_PX = 2400;
const KINDS = /^data:image\/(png|jpeg|webp|gif);base64,/;
/** Width on the plan before it is calibrated [m]. */
const FIRST_WIDTH_M = 8;

function readAsDataUrl(file: Blob): Promise<string> {
  return new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onload = () => resolve(String(reader.result));
    reader.onerror = () => reject(reader.error ?? new Error('the file cannot be read'));
    reader.readAsDataURL(file);
  });
}

/** Reads a picture that the user chose, and makes a plan underlay of it with its corner at a place. */
export async function readUnderlay(file: File, corner: PlanPoint): Promise<UnderlayFile> {
  let bitmap: ImageBitmap;
  try {
    bitmap = await createImageBitmap(file);
  } catch (cause) {
    const why = cause instanceof Error && cause.name !== 'InvalidStateError' ? ` (${cause.message})` : '';
    return {
      ok: false,
      message: `${file.name} is not a picture that can be shown${why}: choose a PNG, JPEG, WebP or GIF`,
    };
  }
  let { width, height } = bitmap;
  let data = await readAsDataUrl(file);
  if (!KINDS.test(data) || data.length > MOST_TEXT) {
    const canvas = document.createElement('canvas');
    const share = Math.min(1, LONGEST_SIDE_PX / Math.max(width, height));
    width = canvas.width = Math.max(1, Math.round(width * share));
    height = canvas.height = Math.max(1, Math.round(height * share));
    canvas.getContext('2d')!.drawImage(bitmap, 0, 0, width, height);
    data = canvas.toDataURL('image/jpeg', 0.8);
  }
  bitmap.close();
  if (data.length > MOST_TEXT) {
    return { ok: false, message: `${file.name} is too large: choose a picture of fewer pixels` };
  }
  return {
    ok: true,
    underlay: {
      name: file.name.slice(0, 200),
      width_px: width,
      height_px: height,
      at: { x: corner.x, y: corner.y },
      metresPerPixel: FIRST_WIDTH_M / width,
      opacity: 0.5,
      data,
    },
  };
}
