import type { Place } from './place.ts';

/** How the picture lies on the stage: turned by so much clockwise, then enlarged, then moved. */
export interface PictureView {
  readonly zoom: number;
  readonly turnRad: number;
  readonly moved: Place;
}

export interface Extent {
  readonly width: number;
  readonly height: number;
}

/** Stage px that one picture px may take at most. */
export const mostZoom = 40;

/** Where a place of the picture stands on the stage. */
export function toStage({ zoom, turnRad, moved }: PictureView, [x, y]: Place): Place {
  const [cos, sin] = [Math.cos(turnRad) * zoom, Math.sin(turnRad) * zoom];
  return [cos * x - sin * y + moved[0], sin * x + cos * y + moved[1]];
}

/** What place of the picture stands at a point of the stage. */
export function toPicture({ zoom, turnRad, moved }: PictureView, [x, y]: Place): Place {
  const [cos, sin] = [Math.cos(turnRad) / zoom, Math.sin(turnRad) / zoom];
  const [dx, dy] = [x - moved[0], y - moved[1]];
  return [cos * dx + sin * dy, cos * dy - sin * dx];
}

/** The view in which the whole picture is seen, in the middle of the stage. */
export function fitView(picture: Extent, stage: Extent, turnRad = 0): PictureView {
  const corners: Place[] = [
    [0, 0],
    [picture.width, 0],
    [picture.width, picture.height],
    [0, picture.height],
  ];
  const turned = corners.map((corner) => toStage({ zoom: 1, turnRad, moved: [0, 0] }, corner));
  const [xs, ys] = [turned.map(([x]) => x), turned.map(([, y]) => y)];
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  const [wide, high] = [Math.max(...xs) - left, Math.max(...ys) - top];
  const zoom = Math.min(stage.width / wide, stage.height / high);
  return {
    zoom,
    turnRad,
    moved: [(stage.width - wide * zoom) / 2 - left * zoom, (stage.height - high * zoom) / 2 - top * zoom],
  };
}

/** The view enlarged by a factor about a point of the stage, which keeps its place of the picture under it. */
export function zoomAbout(view: PictureView, point: Place, factor: number, leastZoom: number): PictureView {
  const held = toPicture(view, point);
  const zoom = Math.min(mostZoom, Math.max(leastZoom, view.zoom * factor));
  return holdAt({ ...view, zoom }, held, point);
}

/** The view turned about the middle of the stage, so that a line of the picture lies level, its first end at the left. */
export function levelView(
  view: PictureView,
  line: readonly [Place, Place] | undefined,
  stage: Extent,
): PictureView {
  const middle: Place = [stage.width / 2, stage.height / 2];
  const turnRad = line ? -Math.atan2(line[1][1] - line[0][1], line[1][0] - line[0][0]) : 0;
  return holdAt({ ...view, turnRad }, toPicture(view, middle), middle);
}

/** The view moved so that a place of the picture stands at a point of the stage. */
export function holdAt(view: PictureView, place: Place, point: Place): PictureView {
  const [x, y] = toStage({ ...view, moved: [0, 0] }, place);
  return { ...view, moved: [point[0] - x, point[1] - y] };
}

/** The view moved no more than needed for a place to stand on the stage, with a margin. */
export function bringOn(view: PictureView, place: Place, stage: Extent, margin = 40): PictureView {
  const [x, y] = toStage(view, place);
  const inside = (at: number, length: number) =>
    Math.min(Math.max(at, margin), Math.max(margin, length - margin));
  return holdAt(view, place, [inside(x, stage.width), inside(y, stage.height)]);
}
