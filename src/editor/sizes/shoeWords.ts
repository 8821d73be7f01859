import { childShoeSize, shoeSize } from '../../engine/craft/shoeSizes.ts';

/** Longest foot that the table of children's sizes has, mm. */
const CHILD_MM = 225;

/** The shoe sizes of a foot, in half sizes: `EU 37½ to 38½`, with those of women and men in the United States; children's feet by their table. */
export function shoeWords(footCm: number): string {
  const mm = footCm * 10;
  const child = mm <= CHILD_MM - 10 ? childShoeSize(mm) : null;
  if (child !== null) return `EU ${child}`;
  const eu = `EU ${half(shoeSize('eu', mm, 10))}–${half(shoeSize('eu', mm, 15))}`;
  const women = half(shoeSize('usWomen', mm));
  const men = half(shoeSize('usMen', mm));
  return `${eu} · US women ${women}, men ${men}`;
}

function half(size: number): string {
  const halves = Math.round(size * 2);
  return `${Math.floor(halves / 2)}${halves % 2 === 0 ? '' : '½'}`;
}
