import type { Posture, Request } from '../src/index.ts'
import { END, LEFT, RIGHT, START } from '../src/index.ts'

/**
 * The shortest guillotine layout by trying everything at explicit positions: every cut of every rectangle at every whole
 * place, every share of the pieces between the halves, every place of a piece in the rectangle that is its own, every phase of
 * every tied group. Shares no idea with the solver's methods. Null when nothing up to `most` works.
 */
export function naiveLength(request: Request, most: number): number | null {
  const { field } = request
  const pieces = request.demands.flatMap((d) => Array.from({ length: d.count }, () => d))
  const repeats = new Map<string, number>()
  for (const d of request.demands) if (d.tie) repeats.set(d.tie.group, d.tie.absolute ? 1 : d.tie.repeat)
  for (let limit = 0; limit <= (field.length ?? most); limit++) {
    const phases = new Map<string, number>()
    const groups = [...repeats.keys()]
    const tryPhases = (g: number): boolean => {
      const group = groups[g]
      if (group !== undefined) {
        for (let phase = 0; phase < repeats.get(group)!; phase++) {
          phases.set(group, phase)
          if (tryPhases(g + 1)) return true
        }
        return false
      }
      const known = new Map<string, boolean>()
      const lies = (d: (typeof pieces)[number], p: Posture, x: number, y: number): boolean => {
        const last = field.length ?? Number.POSITIVE_INFINITY
        const { zones } = field
        const right = x + p.width
        const end = y + p.length
        if (p.flush & LEFT ? x !== 0 : x < zones.left) return false
        if (p.flush & RIGHT ? right !== field.width : right > field.width - zones.right) return false
        if (p.flush & START ? y !== 0 : y < zones.start) return false
        if (p.flush & END ? end !== last : end > last - zones.end) return false
        if (end > limit) return false
        for (const f of field.flaws)
          if (x < f.x + f.width && f.x < right && y < f.y + f.length && f.y < end) return false
        if (!d.tie) return true
        return ((y - d.tie.offset - phases.get(d.tie.group)!) % d.tie.repeat) % d.tie.repeat === 0
      }
      const works = (x: number, y: number, w: number, l: number, set: number): boolean => {
        if (set === 0) return true
        const key = `${x},${y},${w},${l},${set}`
        const before = known.get(key)
        if (before !== undefined) return before
        const answer = search(x, y, w, l, set)
        known.set(key, answer)
        return answer
      }
      const search = (x: number, y: number, w: number, l: number, set: number): boolean => {
        if ((set & (set - 1)) === 0) {
          const d = pieces[31 - Math.clz32(set)]!
          for (const p of d.postures)
            for (let px = x; px + p.width <= x + w; px++)
              for (let py = y; py + p.length <= y + l; py++) if (lies(d, p, px, py)) return true
          return false
        }
        let area = 0
        for (const [i, d] of pieces.entries())
          if (set & (1 << i)) area += Math.min(...d.postures.map((p) => p.width * p.length))
        if (area > w * l) return false
        for (let part = (set - 1) & set; part > 0; part = (part - 1) & set) {
          for (let at = 1; at < w; at++)
            if (works(x, y, at, l, part) && works(x + at, y, w - at, l, set ^ part)) return true
          for (let at = 1; at < l; at++)
            if (works(x, y, w, at, part) && works(x, y + at, w, l - at, set ^ part)) return true
        }
        return false
      }
      return works(0, 0, field.width, field.length ?? limit, (1 << pieces.length) - 1)
    }
    if (tryPhases(0)) return limit
  }
  return null
}
