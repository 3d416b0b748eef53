/** Hatches as lines and points clipped to a rectangle, on one lattice for the whole drawing; as on the printed map. */
export interface Area {
  readonly x: number
  readonly y: number
  readonly w: number
  readonly h: number
}

/** Waste: lines at 45 degrees. */
export function obliqueLines({ x, y, w, h }: Area, step: number): string {
  let path = ''
  // the line u + v = c crosses the rectangle for c between its two corners
  for (let c = Math.ceil((x + y) / step) * step; c < x + y + w + h; c += step) {
    const u1 = Math.max(x, c - y - h)
    const u2 = Math.min(x + w, c - y)
    if (u2 > u1) path += `M${round(u1)} ${round(c - u1)}L${round(u2)} ${round(c - u2)}`
  }
  return path
}

/** Trim: a fine square grid. */
export function gridLines({ x, y, w, h }: Area, step: number): string {
  let path = ''
  for (let u = Math.ceil(x / step) * step; u < x + w; u += step) path += `M${round(u)} ${round(y)}v${round(h)}`
  for (let v = Math.ceil(y / step) * step; v < y + h; v += step) path += `M${round(x)} ${round(v)}h${round(w)}`
  return path
}

/** A remnant: round points, drawn as lines without length. */
export function points({ x, y, w, h }: Area, step: number): string {
  let path = ''
  for (let u = Math.ceil((x + 2) / step) * step; u < x + w - 1; u += step)
    for (let v = Math.ceil((y + 2) / step) * step; v < y + h - 1; v += step) path += `M${round(u)} ${round(v)}h0`
  return path
}

const round = (n: number): number => Math.round(n * 100) / 100
