/** Signed areas of the closed parts of path data made of M, m, L, l, h, v and z, in square units; positive runs clockwise as seen. */
export function pathAreas(d: string): number[] {
  const areas: number[] = [];
  let points: number[] = [];
  let x = 0, y = 0, startX = 0, startY = 0;
  for (const [, command, text] of d.matchAll(/([MmLlhvz])([^MmLlhvz]*)/g)) {
    const numbers = (text!.match(/-?\d+/g) ?? []).map(Number);
    if (command === 'z') {
      let sum = 0;
      for (let p = 0; p < points.length; p += 2) {
        const q = (p + 2) % points.length;
        sum += points[p]! * points[q + 1]! - points[q]! * points[p + 1]!;
      }
      areas.push(sum / 2);
      points = [];
      x = startX;
      y = startY;
    } else if (command === 'h' || command === 'v') {
      if (command === 'h') x += numbers[0]!;
      else y += numbers[0]!;
      points.push(x, y);
    } else {
      for (let n = 0; n < numbers.length; n += 2) {
        const relative = command === 'm' || command === 'l';
        x = numbers[n]! + (relative ? x : 0);
        y = numbers[n + 1]! + (relative ? y : 0);
        if (n === 0 && (command === 'M' || command === 'm')) {
          startX = x;
          startY = y;
          points = [];
        }
        points.push(x, y);
      }
    }
  }
  return areas;
}
