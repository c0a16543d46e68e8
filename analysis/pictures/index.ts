export { activeContent } from './active-svg.ts';
export type { CameraNotes } from './camera-notes.ts';
export { jpegNotes } from './jpeg-notes.ts';
export { pictureKind, type PictureKind } from './picture-kind.ts';
export { pngNotes } from './png-notes.ts';
