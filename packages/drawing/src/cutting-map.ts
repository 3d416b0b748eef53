import type { Result } from '@lengthwise/planner'
import { alikeSets } from './cloth/alike.ts'
import { paperStyle } from './cloth/style.ts'
import { measureIn } from './measure.ts'
import { beforeLeaves } from './pages/before.ts'
import type { Leaf } from './pages/leaf.ts'
import { bind, FRAME, joined } from './pages/leaf.ts'
import { mapLeaves } from './pages/map.ts'
import { markLeaves } from './pages/marks.ts'
import { orderLeaves } from './pages/order.ts'
import { withPieces } from './pages/pieces.ts'
import { sewingLeaves } from './pages/sewing.ts'
import { slipLeaves } from './pages/slips.ts'
import { keyLeaf, wholeLeaves } from './pages/whole.ts'
import { widthLeaves } from './pages/widths.ts'
import type { MapOptions, Scene } from './scene.ts'
import { oneLine } from './text.ts'

/** Everything that is taken to the table, on paper of the asked size. Throws for a result without a layout. */
export function cuttingMap(result: Result, options: MapOptions): Scene {
  if (result.status !== 'laid') throw new Error('cuttingMap: this plan cannot be cut, so there is no map of it')
  const measure = measureIn(options.unit ?? result.order.measureIn)
  const style = paperStyle(options.large === true)
  const sets = alikeSets(result.cloths)
  const maps = sets.flatMap((set) => mapLeaves(result, set, measure, style))
  // maps that show each cloth from end to end need no smaller picture of it
  const whole = maps.every((map) => map.whole) ? { leaves: [], keyed: false } : wholeLeaves(result, measure, style)
  const shown = new Set(maps.flatMap((map) => map.key?.shown ?? []))
  const missing = new Set(maps.flatMap((map) => map.key?.wanted ?? []).filter((words) => !shown.has(words)))
  const listed = withPieces(beforeLeaves(result, measure, style), result, measure, style)
  const marks = markLeaves(result, measure, style)
  const withMarks = joined(listed, marks)
  // below the list of pieces where there is room, else after the order of cutting
  const early = withMarks.length === listed.length
  const before = early ? withMarks : listed
  const key = whole.keyed || missing.size === 0 ? [] : [keyLeaf(missing, result, measure, style)]
  const first = joined(before, key)
  // a few rows of the key are no page by themselves
  const keyed = first.length === before.length
  const order = joined(orderLeaves(result, sets, measure, style), keyed ? [] : key)
  const cutting = early ? order : joined(order, marks)
  // a list that fills less than half a page leaves room for the next, which goes on over pages anyway
  const last = cutting.length > order.length ? cutting.at(-1) : undefined
  const below = last !== undefined && last.y < FRAME.height / 2 ? last : undefined
  const sewing = sewingLeaves(result, measure, style, below)
  return bound(result, options, [
    ...(keyed ? first : before),
    ...whole.leaves,
    ...maps,
    ...cutting,
    ...widthLeaves(result, measure, style).reduce(joined, sewing),
  ])
}

/** Slips alone. */
export function slips(result: Result, options: MapOptions): Scene {
  const measure = measureIn(options.unit ?? result.order.measureIn)
  return bound(result, options, slipLeaves(result, measure, paperStyle(options.large === true)))
}

function bound(result: Result, options: MapOptions, leaves: readonly Leaf[]): Scene {
  const style = paperStyle(options.large === true)
  return bind(
    leaves,
    { title: oneLine(result.order.title), language: 'en-GB', paper: options.paper, date: result.order.date },
    style,
  )
}
