/** How a solid is looked at: turned about its upright axis (its front goes to the right for more), then tipped towards the viewer. Radians. */
export interface SolidView {
  readonly yawRad: number;
  readonly pitchRad: number;
}

/** Turns points (x y z each, y up, z to the viewer) into the view: x to the right, y down as on paper, z towards the viewer. */
export function turnPoints(points: Float32Array, { yawRad, pitchRad }: SolidView): Float32Array {
  const [cosYaw, sinYaw] = [Math.cos(yawRad), Math.sin(yawRad)];
  const [cosPitch, sinPitch] = [Math.cos(pitchRad), Math.sin(pitchRad)];
  const seen = new Float32Array(points.length);
  for (let i = 0; i < points.length; i += 3) {
    const x = points[i]!;
    const y = points[i + 1]!;
    const z = points[i + 2]!;
    const near = z * cosYaw - x * sinYaw;
    seen[i] = x * cosYaw + z * sinYaw;
    seen[i + 1] = near * sinPitch - y * cosPitch;
    seen[i + 2] = near * cosPitch + y * sinPitch;
  }
  return seen;
}
