export { moveWithAreas } from './area-run.ts';
export { traceCurve, type CurveCourse, type Polyline } from './curve.ts';
export { fitField, type FieldPoint } from './distance-field.ts';
export { findFold, gridOver, type Fold } from './fold.ts';
export {
  centroid,
  distanceBetween,
  isInRing,
  pointBetween,
  ringArea,
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
  LandmarksCoincide,
  splineDerivatives,
  type ThinPlateSpline,
} from './thin-plate-spline.ts';
export { applyWarp, fitWarp, type Warp } from './warp.ts';
export { pointRun, preparePoints, warpPoints, type PreparedPoints } from './warp-points.ts';
export type { PointRun } from './squared-distances.ts';
export { booksteinCoordinates } from './bookstein.ts';
export { generalSuperimposition, type GeneralSuperimposition, type SizeRule } from './general-procrustes.ts';
export {
  centred,
  preShape,
  shapeDistance,
  superimpose,
  type FitRules,
  type ShapeDistance,
  type Superimposition,
} from './procrustes.ts';
export { applySimilarity, findSimilarity, type Similarity } from './similarity.ts';
export { shapeAtValue, shapeTrend, type ShapeTrend, type ValuedShape } from './shape-trend.ts';
export { shapeTrendOnTree } from './shape-trend-on-tree.ts';
export { shapesAlong, shapesAtNodes } from './shapes-on-tree.ts';
export { distanceToStretch, simplifyLine } from './simplify.ts';
export { fitTemplate, templateShape, type TemplateFit } from './template-fit.ts';
