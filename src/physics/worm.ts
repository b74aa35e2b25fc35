/**
 * Efficiency of a worm that drives its wheel.
 * Falls to 0 with the lead angle.
 * @param leadAngleRad above 0, below a right angle
 * @param frictionCoefficient at least 0
 * @param pressureAngleRad normal pressure angle
 * @returns 1 without friction
 * @source shigley, chapter 13, worm gearing: force analysis (M8)
 */
export function wormForwardEfficiency(
  leadAngleRad: number,
  frictionCoefficient: number,
  pressureAngleRad: number,
): number {
  const cosine = Math.cos(pressureAngleRad);
  const tangent = Math.tan(leadAngleRad);
  return (cosine - frictionCoefficient * tangent) / (cosine + frictionCoefficient / tangent);
}

/**
 * Efficiency of a wheel that drives its worm; 0 where it just locks, negative beyond.
 * @param leadAngleRad above 0, below a right angle
 * @param frictionCoefficient at least 0
 * @param pressureAngleRad normal pressure angle
 * @returns 1 without friction
 * @source shigley, chapter 13, worm gearing: force analysis with the friction reversed (M8)
 */
export function wormBackwardEfficiency(
  leadAngleRad: number,
  frictionCoefficient: number,
  pressureAngleRad: number,
): number {
  const cosine = Math.cos(pressureAngleRad);
  const tangent = Math.tan(leadAngleRad);
  return (cosine - frictionCoefficient / tangent) / (cosine + frictionCoefficient * tangent);
}
