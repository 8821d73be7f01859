/** What the ledger's columns tell: stitches made and left, or what the yarns do. */
export type LedgerView = 'numbers' | 'yarns';

/** What the maker looks at in the ledger; it stays while sheets come and go. */
class LedgerShows {
  view = $state.raw<LedgerView>('numbers');
}

export const ledgerShows = new LedgerShows();
