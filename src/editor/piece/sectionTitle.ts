/** A section's name as a heading: names that a pattern sets in capitals only are set in small letters after the first. */
export function sectionTitle(name: string): string {
  return name !== name.toUpperCase() ? name : name.slice(0, 1) + name.slice(1).toLowerCase();
}
