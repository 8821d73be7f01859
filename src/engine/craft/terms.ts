/** US or UK words for stitches. */
export type Terms = 'us' | 'uk';
