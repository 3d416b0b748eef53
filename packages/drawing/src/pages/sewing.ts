import type { Result } from '@lengthwise/planner'
import type { Length } from '@lengthwise/units'
import type { Style } from '../cloth/style.ts'
import { PITCH } from '../cloth/style.ts'
import { text } from '../ink.ts'
import type { Measure } from '../measure.ts'
import { fit, oneLine, unbroken } from '../text.ts'
import { byNumber, capital } from '../words/hands.ts'
import { labelsListed } from '../words/list.ts'
import type { Leaf } from './leaf.ts'
import { BOTTOM, FRAME, leaf, rule, setRuns, tickBox } from './leaf.ts'

/** The sewing order, item by item, with the true length of each seam. */
export function sewingLeaves(result: Result, measure: Measure, style: Style): readonly Leaf[] {
  if (result.sewing.length === 0) return []
  const { small } = style
  const pitch = small * PITCH
  const leaves: Leaf[] = []
  let on = begin()
  let item = ''
  for (const step of result.sewing) {
    const words = unbroken(oneLine(step.text))
    // the words may give it to the millimetre
    const inMillimetres = (Math.round(step.seamLength / 320) * 320) as Length
    const said = [step.seamLength, inMillimetres].some((each) => words.includes(measure.bare(each)))
    const length = step.seamLength > 0 && !said ? ` Seam ${measure.full(step.seamLength)}.` : ''
    const runs = [
      [/[.!?]$/.test(words) ? words : `${words}.`, 500],
      [length, 500],
    ] as const
    const probe = setRuns(runs, 0, 0, FRAME.width - 20, small)
    const head = step.item !== item ? small * 3.4 + pitch * 1.15 : 0
    if (on.y + head + (probe.lines - 1) * pitch > BOTTOM) on = begin()
    if (step.item !== item) {
      item = step.item
      on.y += small * 0.2
      rule(on)
      on.y += small * 2
      const finished = result.finished.find((row) => item.split(', ').includes(row.item))
      const size = finished ? `, finished ${measure.size(finished.width, finished.length)}\u00a0${measure.unit}` : ''
      on.parts.push({
        role: 'heading-2',
        marks: [text(fit(`${nameOf(item)}${size}`, FRAME.width, small, 700), 0, on.y, small, 700)],
      })
      on.y += pitch * 1.15
      const from = numbersOf(result, item)
      if (from !== '') {
        const words = `${/\D/.test(from) ? 'Pieces' : 'Piece'} ${from}.`
        on.parts.push({ role: 'paragraph', marks: [text(fit(words, FRAME.width, small, 500), 0, on.y, small, 500)] })
        on.y += pitch * 1.15
      }
    }
    const set = setRuns(runs, 20, on.y, FRAME.width - 20, small)
    on.parts.push({
      role: 'list-item',
      marks: [tickBox(0, on.y, 4.4), text(`${step.step}`, 16, on.y, small, 700, 'end'), ...set.marks],
    })
    on.y += set.lines * pitch + small * 0.3
  }
  return leaves

  function begin(): Leaf {
    const fresh = leaf(
      'sewing',
      leaves.length === 0 ? 'Sewing order' : 'Sewing order, goes on',
      leaves.length === 0 ? ['The numbers of pieces are those on the map.'] : [],
      style,
    )
    if (leaves.length > 0) fresh.y += small * 1.5
    leaves.push(fresh)
    return fresh
  }
}

/** The numbers on the map of what 'duvet-cover-1, duvet-cover-2' is sewn from, copy by copy while they are few. */
function numbersOf(result: Result, items: string): string {
  const copies = copiesIn(items)
  const sets = copies.length > MOST_SETS ? [copies] : copies.map((copy) => [copy])
  return sets
    .map((set) => byNumber(result.pieces.flatMap((piece) => (set.includes(piece.item) ? piece.label : []))))
    .filter((labels) => labels.length > 0)
    .map(labelsListed)
    .join('; ')
}
const MOST_SETS = 4

function copiesIn(items: string): readonly string[] {
  const run = /^(.*-)(\d+) to .*-(\d+)$/.exec(items)
  if (run === null) return items.split(', ')
  const [first, last] = [Number(run[2]), Number(run[3])]
  return Array.from({ length: last - first + 1 }, (_, i) => `${run[1]}${first + i}`)
}

/** 'Duvet cover 1' from 'duvet-cover-1' */
export const nameOf = (item: string): string => capital(oneLine(item).replace(/-/g, ' '))
