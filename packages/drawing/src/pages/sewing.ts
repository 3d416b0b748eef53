import type { Placed, Result } from '@lengthwise/planner'
import type { Length } from '@lengthwise/units'
import type { Style } from '../cloth/style.ts'
import { PITCH } from '../cloth/style.ts'
import { text } from '../ink.ts'
import type { Measure } from '../measure.ts'
import { fit, oneLine, unbroken, wrap } from '../text.ts'
import { byNumber, capital } from '../words/hands.ts'
import { labelsListed } from '../words/list.ts'
import type { Leaf } from './leaf.ts'
import { BOTTOM, FRAME, leaf, rule, section, setRuns, tickBox } from './leaf.ts'

/** The sewing order, item by item, with the true length of each seam, on pages of its own or beginning below what stands on one. */
export function sewingLeaves(result: Result, measure: Measure, style: Style, below?: Leaf): readonly Leaf[] {
  if (result.sewing.length === 0) return []
  const { small } = style
  const pitch = small * PITCH
  const leaves: Leaf[] = []
  let on = begin()
  let item = ''
  for (const step of result.sewing) {
    const words = unbroken(oneLine(step.text))
    // the words may give it to the millimetre, or for one of several that are alike
    const inMillimetres = (Math.round(step.seamLength / 320) * 320) as Length
    const said = [step.seamLength, inMillimetres].some((each) => words.includes(measure.bare(each)))
    const saidOfEach = /\u00a0(?:cm|mm|in)(?: long)? each\b/.test(words)
    const length = step.seamLength > 0 && !said && !saidOfEach ? ` Seam ${measure.full(step.seamLength)}.` : ''
    const runs = [
      [/[.!?]$/.test(words) ? words : `${words}.`, 500],
      [length, 500],
    ] as const
    const probe = setRuns(runs, 0, 0, FRAME.width - 20, small)
    const heading = step.item === item ? [] : headingOf(result, step.item, measure, small)
    const head = heading.length === 0 ? 0 : small * 2.2 + pitch * 1.15 * heading.length
    if (on.y + head + (probe.lines - 1) * pitch > BOTTOM) on = begin()
    if (step.item !== item) {
      item = step.item
      on.y += small * 0.2
      rule(on)
      on.y += small * 2
      for (const [i, words] of heading.entries()) {
        const [role, weight] = i === 0 ? (['heading-2', 700] as const) : (['paragraph', 500] as const)
        on.parts.push({ role, marks: [text(words, 0, on.y, small, weight)] })
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
  return below === undefined ? leaves : leaves.slice(1)

  function begin(): Leaf {
    if (below !== undefined && leaves.length === 0) {
      section(below, TITLE, [LEAD], style)
      leaves.push(below)
      return below
    }
    const fresh = leaf(
      'sewing',
      leaves.length === 0 ? TITLE : `${TITLE}, goes on`,
      leaves.length === 0 ? [LEAD] : [],
      style,
    )
    if (leaves.length > 0) fresh.y += small * 1.5
    leaves.push(fresh)
    return fresh
  }
}

const TITLE = 'Sewing order'
const LEAD = 'The numbers of pieces are those on the map.'

/** Name and finished size, the pieces by their numbers, and what is to be known of them. */
function headingOf(result: Result, item: string, measure: Measure, small: number): readonly string[] {
  const copies = copiesIn(item)
  const finished = result.finished.find((row) => copies.includes(row.item))
  const size = finished ? `, finished ${finishedWords(finished, measure)}` : ''
  const placed = result.cloths.flatMap((cloth) => cloth.placed)
  const own = result.pieces.filter((piece) => copies.includes(piece.item)).map((piece) => piece.piece)
  const from = numbersOf(result, item)
  return [
    fit(`${nameOf(item)}${size}`, FRAME.width, small, 700),
    ...[
      from === '' ? '' : `${/\D/.test(from) ? 'Pieces' : 'Piece'} ${from}.`,
      keptHems(
        placed.filter((p) => own.includes(p.piece)),
        measure,
      ),
    ].flatMap((words) => wrap(words, FRAME.width, small, 500).filter((line) => line !== '')),
  ]
}

/** '50 × 75 cm, with its flange 60 × 85 cm' */
function finishedWords({ width, length: long, form }: Result['finished'][number], measure: Measure): string {
  const size = (wide: number, tall: number): string =>
    `${measure.size(wide as Length, tall as Length)}\u00a0${measure.unit}`
  const flat = size(width, long)
  switch (form?.kind) {
    case undefined:
      return flat
    case 'flange':
      return `${flat}, with its flange ${size(width + 2 * form.size, long + 2 * form.size)}`
    case 'drop':
      return `${flat}, drop ${measure.full(form.size)}`
    case 'depth':
      return `${flat}, ${measure.full(form.size)} deep`
    case 'diameter':
      return `${measure.full(form.size)} across and ${measure.full(long)} long`
  }
}

/** How deep the hems are that the pieces keep: 'Kept hems: 10 cm on 7 and 8, 2.5 cm on 9 and 10.' */
function keptHems(placed: readonly Placed[], measure: Measure): string {
  const byDepth = new Map<Length, string[]>()
  for (const { label, edges } of placed)
    for (const depth of new Set(Object.values(edges).flatMap((edge) => (edge.kind === 'kept-hem' ? edge.depth : []))))
      byDepth.set(depth, [...(byDepth.get(depth) ?? []), label])
  const words = [...byDepth].map(([depth, labels]) => `${measure.full(depth)} on ${labelsListed(byNumber(labels))}`)
  return words.length === 0 ? '' : `Kept hems: ${words.join('; ')}.`
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
