/**
 * The shape of the real thing, as worked out from its stitches: a likeness, not a measurement. Millimetres; x to the right, y
 * up, z to the viewer, as it stands in its rest view about the middle of its bounds. Typed arrays only, so that it can be
 * handed over by a worker.
 */
export interface Solid {
  /** Head (top centre) of each stitch of the piece: its stitch number, and x y z. */
  readonly stitches: Int32Array;
  readonly heads: Float32Array;
  /** Corners that the cells share, x y z each, with unit normals out of the right side. */
  readonly corners: Float32Array;
  readonly normals: Float32Array;
  /** Stitch number of each cell. Foundation chains and rings have none. */
  readonly cells: Int32Array;
  /**
   * Outline of cell c: corners `outline[outlineStart[c]] … outline[outlineStart[c + 1] - 1]`, from bottom left along the bottom
   * (the tops it stands on), then back along its own top from right to left, from `outline[topStart[c]]` on. Seen on the right side,
   * anticlockwise. Neighbours share corners, so that the fabric has no gaps but its real edges.
   */
  readonly outlineStart: Int32Array;
  readonly topStart: Int32Array;
  readonly outline: Int32Array;
  /** Half the height, width and depth of the bounds about the origin, mm. */
  readonly halfMm: readonly [x: number, y: number, z: number];
  /** How far it is turned at first, from its front: about the upright axis, then towards the viewer. Radians. */
  readonly restView: { readonly yawRad: number; readonly pitchRad: number };
  /** Sections that are pieces of their own and left out, by index. */
  readonly leftOut: readonly number[];
}
