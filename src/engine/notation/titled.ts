/** A name in capitals throughout, as written patterns have it, in small letters with the first one large. */
export function titled(name: string): string {
  return name.length > 1 && name === name.toUpperCase() ? name.charAt(0) + name.slice(1).toLowerCase() : name;
}
