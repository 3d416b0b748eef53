import type { Rect } from '@lengthwise/solver'
import type { Line, Part } from './parts.ts'

/**
 * A part cut with shears that no straight line divides from edge to edge (five rectangles round a middle are the
 * smallest). The cuts follow every piece edge; what is left between them is looked through for remnants, the largest first.
 *
 *     ┌──────┬───┐
 *     ├──┬───┤   │
 *     │  │   │   │
 *     │  ├───┴───┤
 *     └──┴───────┘
 */
export function maze(
  placements: readonly { readonly box: Rect; readonly placement: number }[],
  box: Rect,
  keeps: (box: Rect) => boolean,
): Part {
  const taken: Rect[] = placements.map((p) => p.box)
  const kept: Rect[] = []
  for (let free = freeBoxes(taken, box); ; free = freeBoxes(taken, box)) {
    const best = free.filter(keeps).sort(bySize)[0]
    if (!best) break
    kept.push(best)
    taken.push(best)
  }
  const waste: Rect[] = []
  const scrap = [...taken]
  for (let free = freeBoxes(scrap, box); free.length > 0; free = freeBoxes(scrap, box)) {
    const best = free.sort(bySize)[0]!
    waste.push(best)
    scrap.push(best)
  }
  return {
    kind: 'maze',
    box,
    lines: linesAround(taken, box),
    parts: [
      ...placements.map((p): Part => ({ kind: 'piece', box: p.box, placement: p.placement })),
      ...[...kept, ...waste].map((b): Part => ({ kind: 'left-over', box: b })),
    ],
  }
}

const bySize = (a: Rect, b: Rect): number => b.width * b.length - a.width * a.length || a.y - b.y || a.x - b.x

// every largest empty rectangle on the grid of edges
function freeBoxes(taken: readonly Rect[], box: Rect): Rect[] {
  const xs = grid(
    taken.flatMap((r) => [r.x, r.x + r.width]),
    box.x,
    box.x + box.width,
  )
  const ys = grid(
    taken.flatMap((r) => [r.y, r.y + r.length]),
    box.y,
    box.y + box.length,
  )
  const free: Rect[] = []
  const clear = (r: Rect) =>
    taken.every((t) => t.x >= r.x + r.width || t.x + t.width <= r.x || t.y >= r.y + r.length || t.y + t.length <= r.y)
  for (let i = 0; i + 1 < xs.length; i++)
    for (let j = 0; j + 1 < ys.length; j++) {
      let widest = xs.length - 1
      for (let k = j + 1; k < ys.length && widest > i; k++) {
        let reach = i
        while (reach < widest && clear(corner(xs[i]!, ys[j]!, xs[reach + 1]!, ys[k]!))) reach++
        widest = reach
        if (reach > i) free.push(corner(xs[i]!, ys[j]!, xs[reach]!, ys[k]!))
      }
    }
  return free
}

const corner = (x: number, y: number, right: number, end: number): Rect => ({ x, y, width: right - x, length: end - y })

const grid = (values: readonly number[], low: number, high: number): number[] =>
  [...new Set([low, ...values.filter((v) => v > low && v < high), high])].sort((a, b) => a - b)

// piece edges inside the box, those on one line and touching made one
function linesAround(taken: readonly Rect[], box: Rect): Line[] {
  const edges: Line[] = taken.flatMap((r) => [
    { runs: 'across' as const, at: r.y, from: r.x, to: r.x + r.width },
    { runs: 'across' as const, at: r.y + r.length, from: r.x, to: r.x + r.width },
    { runs: 'along' as const, at: r.x, from: r.y, to: r.y + r.length },
    { runs: 'along' as const, at: r.x + r.width, from: r.y, to: r.y + r.length },
  ])
  const within = edges.filter((e) =>
    e.runs === 'across' ? e.at > box.y && e.at < box.y + box.length : e.at > box.x && e.at < box.x + box.width,
  )
  within.sort((a, b) => (a.runs === b.runs ? a.at - b.at || a.from - b.from : a.runs === 'across' ? -1 : 1))
  const lines: Line[] = []
  for (const edge of within) {
    const last = lines.at(-1)
    if (last && last.runs === edge.runs && last.at === edge.at && edge.from <= last.to)
      lines[lines.length - 1] = { ...last, to: Math.max(last.to, edge.to) }
    else lines.push(edge)
  }
  return lines
}
