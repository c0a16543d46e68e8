import { activeContent, jpegNotes, pictureKind, pngNotes } from '../../../analysis/pictures/index.ts';
import { scaledSize } from './scaled-size.ts';

/** Why a file is not opened, as a code that has a message. */
export type Refusal = 'not-a-picture' | 'active-drawing' | 'broken' | 'too-small';

/** What was done to a picture before it was shown, as codes that have messages. */
export type Change = 'turned' | 'position' | 'notes' | 'scaled';

/** A picture as it is measured on: upright, without notes, of a size that a browser can hold. */
export interface PreparedPicture {
  readonly blob: Blob;
  readonly name: string;
  readonly width: number;
  readonly height: number;
  readonly changes: readonly Change[];
  /** Size before it was scaled. */
  readonly was: { readonly width: number; readonly height: number };
}

/** Refusal of a file that cannot be measured on. */
export class PictureRefused extends Error {
  readonly refusal: Refusal;
  readonly found: string;
  constructor(refusal: Refusal, found = '') {
    super(`picture refused: ${refusal}`);
    this.refusal = refusal;
    this.found = found;
  }
}

/** Reads a file on this machine and prepares it. Throws PictureRefused for one that is no picture, or could run script. */
export async function preparePicture(file: File): Promise<PreparedPicture> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  const kind = pictureKind(bytes);
  if (!kind) throw new PictureRefused('not-a-picture');
  if (kind === 'svg') {
    const active = activeContent(new TextDecoder().decode(bytes));
    if (active !== undefined) throw new PictureRefused('active-drawing', active);
    return redraw(new Blob([bytes], { type: 'image/svg+xml' }), file.name, []);
  }
  const source = new Blob([bytes], { type: `image/${kind}` });
  // these are always drawn anew, and with that whatever notes they had are left behind
  if (kind !== 'jpeg' && kind !== 'png') return redraw(source, file.name, []);
  const notes = kind === 'jpeg' ? jpegNotes(bytes) : pngNotes(bytes);
  if (!notes) throw new PictureRefused('broken');
  const turned = notes.orientation !== 1;
  const changes: Change[] = [
    ...(turned ? (['turned'] as const) : []),
    ...(notes.position ? (['position'] as const) : notes.removed ? (['notes'] as const) : []),
  ];
  const { width, height } = notes;
  if (turned || scaledSize(width, height).scaled) return redraw(source, file.name, changes);
  const clean = new Blob([notes.clean], { type: source.type });
  const image = await decode(clean);
  if (image.naturalWidth < 2 || image.naturalHeight < 2) throw new PictureRefused('too-small');
  return {
    blob: clean,
    name: nameFor(file.name, clean.type),
    width,
    height,
    changes,
    was: { width, height },
  };
}

/** The picture drawn anew, upright, with nothing of its file but what is seen. */
async function redraw(source: Blob, name: string, changes: readonly Change[]): Promise<PreparedPicture> {
  const image = await decode(source);
  const was = { width: image.naturalWidth, height: image.naturalHeight };
  if (was.width < 2 || was.height < 2) throw new PictureRefused('too-small');
  const { width, height, scaled } = scaledSize(was.width, was.height);
  const canvas = new OffscreenCanvas(width, height);
  const context = canvas.getContext('2d');
  if (!context) throw new PictureRefused('broken');
  context.imageSmoothingQuality = 'high';
  const type = source.type === 'image/jpeg' ? source.type : 'image/png';
  context.drawImage(image, 0, 0, width, height);
  const blob = await canvas.convertToBlob({ type, quality: 0.95 }).catch(() => {
    throw new PictureRefused('broken');
  });
  return {
    blob,
    name: nameFor(name, type),
    width,
    height,
    changes: scaled ? [...changes, 'scaled'] : changes,
    was,
  };
}

async function decode(blob: Blob): Promise<HTMLImageElement> {
  const address = URL.createObjectURL(blob);
  const image = new Image();
  image.src = address;
  try {
    await image.decode();
    return image;
  } catch {
    throw new PictureRefused('broken');
  } finally {
    URL.revokeObjectURL(address);
  }
}

/** A file name that records take: small plain letters, digits, dots and hyphens, and the ending of what it is. */
function nameFor(name: string, type: string): string {
  const stem = name
    .replace(/\.[^.]*$/, '')
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9.]+/g, '-')
    .replace(/^[-.]+|[-.]+$/g, '');
  return `${stem || 'picture'}.${type === 'image/jpeg' ? 'jpg' : 'png'}`;
}
