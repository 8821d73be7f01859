/** What lies open beside the chart. */
export type OpenSheet =
  | { readonly kind: 'yarns' }
  /** A motif of the pattern, by id. */
  | { readonly kind: 'motif'; readonly motif: string }
  /** A motif from a picture. */
  | { readonly kind: 'picture' }
  /** A placed motif, by the id of its placement. */
  | { readonly kind: 'placing'; readonly placement: string }
  /** What the yarns do in the section shown. */
  | { readonly kind: 'carry' }
  | { readonly kind: 'versions' }
  /** The real thing, to be turned. */
  | { readonly kind: 'solid' };
