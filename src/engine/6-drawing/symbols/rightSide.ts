/** Front or back, of a loop or a post. */
export type Facing = 'front' | 'back';

/**
 * What a loop or post named in a row shows as on the right side, which is what a symbol shows. Sources: a published guide to stitch
 * charts ("on wrong-side rows a symbol drawn front loop is worked into what is then the back loop, and the reverse", the same for
 * post stitches); JIS L 0201:1995 (symbols show the fabric as seen from the right side; they are no working instructions).
 */
export const SEEN_FROM_RIGHT = {
  RS: { front: 'front', back: 'back' },
  WS: { front: 'back', back: 'front' },
} as const satisfies Record<'RS' | 'WS', Record<Facing, Facing>>;
