export { traceCurve, type CurveCourse, type Polyline } from './curve.ts';
export { fitField, type FieldPoint } from './distance-field.ts';
export { findFold, gridOver, type Fold } from './fold.ts';
export { drawingFrame, toDrawingFrame, type FrameDefinition, type FrameStep } from './frame.ts';
export { mirrorShape } from './mirror.ts';
export {
  centroid,
  distanceBetween,
  isInRing,
  pointBetween,
  ringArea,
  turnBetweenRad,
  type PlanePoint,
  type Shape,
} from './plane.ts';
export { isOnOneLine, spreadOf } from './spread.ts';
export type { DrawingTemplate, PieceKind, TemplatePiece, TemplateStop } from './template.ts';
export {
  applySpline,
  bendingEnergy,
  bendingEnergyMatrix,
  fitSpline,
  splineDerivatives,
  type ThinPlateSpline,
} from './thin-plate-spline.ts';
export { applyWarp, fitWarp, longestStep, type Warp } from './warp.ts';
