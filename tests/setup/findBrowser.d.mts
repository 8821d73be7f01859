export const BROWSER_FLAGS: readonly string[];
export function findBrowser(options?: { install?: boolean }): { path: string | null } | null;
