/** What a shape stands for; it is a class in the markup and has its colour and stroke in `ink-style.ts`. */
export type InkRole =
  | 'bone'
  | 'socket'
  | 'hole'
  | 'tooth'
  | 'pen'
  | 'soft'
  | 'stipple-light'
  | 'stipple-middle'
  | 'stipple-dark'
  | 'ruling'
  | 'dash'
  | 'dash-thin'
  | 'torn'
  | 'accent'
  | 'accent-ruling'
  | 'accent-rim'
  | 'accent-rim-dashed'
  | 'accent-close'
  | 'limit';

/** One shape of a skull: path data, and the part whose preserved region it is cut to. */
export interface InkShape {
  readonly role: InkRole;
  readonly d: string;
  readonly cutTo?: string;
}

/** One shape of several path data, or none where all are empty. */
export function inkShape(role: InkRole, parts: readonly string[], cutTo?: string): InkShape[] {
  const d = parts.join('');
  return d === '' ? [] : [{ role, d, ...(cutTo === undefined ? {} : { cutTo }) }];
}
