/** The place on the page where it is told whether a trait’s change is real. */
export function changeId(trait: string): string {
  return `change-${trait}`;
}

/** The place where a trait is set against size. */
export function sizeId(trait: string): string {
  return `size-${trait}`;
}
