import type { CutCloth, Placed } from '@lengthwise/planner'
import type { Box, Segment } from '../box.ts'
import { box, boxOf, crosses, meetsAny, outside, padded } from '../box.ts'
import { hatch } from '../hatch.ts'
import { line, text, textBox } from '../ink.ts'
import type { Measure } from '../measure.ts'
import type { Figure, Mark } from '../scene.ts'
import { textWidth, wrap } from '../text.ts'
import { labelsListed } from '../words/list.ts'
import { blockSize, findBox, findSpot } from './block.ts'
import type { DrawnEdge } from './edges.ts'
import { clothEdges, divisionEdges, edgeMark, insideLine, scissors } from './edges.ts'
import type { FlagRoom, Stage } from './flags.ts'
import { placeFlag, placeFlagAside, placeSecondFlag } from './flags.ts'
import type { Named } from './pieces.ts'
import {
  arrowBlock,
  arrowMarks,
  arrowSizes,
  longThinLabel,
  namedPiece,
  namedRemnant,
  numberAlone,
  roomIn,
  sewingMarks,
  textBoxes,
  wholeLabels,
} from './pieces.ts'
import { ruler, rulerLine } from './ruler.ts'
import type { Style } from './style.ts'
import { DASHES, PITCH, WEIGHTS } from './style.ts'
import type { View } from './view.ts'
import { boxOn, xOn, yOn } from './view.ts'

export interface DrawOptions {
  readonly view: View
  readonly measure: Measure
  readonly style: Style
  /** left end of the ruler */
  readonly rulerLeft: number
  /** how far tears and their flags may reach at the right of the cloth */
  readonly rightLimit: number
  /** empty places beside or below the cloth for names of small pieces */
  readonly margins: readonly Box[]
  /** divisions done already, by screen; null: all are drawn as to be done */
  readonly done: number | null
  /** words at the foot of a stretch that goes on elsewhere, the best first */
  readonly goesOn: readonly string[]
}

export interface Drawing {
  readonly marks: readonly Mark[]
  readonly spots: Figure['spots']
  /** what texts cover, margins included */
  readonly texts: readonly Box[]
  /** flags and labels that found no place; empty for a drawing that can be used */
  readonly homeless: readonly string[]
  readonly hatches: ReadonlySet<'waste' | 'remnant' | 'trim'>
  readonly leaders: number
}

/** Draws one stretch of cloth: edges once by what they are, flags, ruler, labels, arrows, and last what may give way to text. */
export function drawStretch(cloth: CutCloth, options: DrawOptions): Drawing {
  const { view, style, measure } = options
  const by = style.by
  const texts: Box[] = []
  const marks: Mark[] = []
  const homeless: string[] = []
  const add = (more: readonly Mark[], boxes: readonly Box[] = textBoxes(more)): void => {
    marks.push(...more)
    texts.push(...boxes)
  }
  const own = clothEdges(cloth, view, style)
  const divisions = divisionEdges(cloth, view, style)
  const edges = [...own, ...divisions]
  const field = box(
    xOn(view, 0),
    view.top,
    cloth.width * view.perUnit,
    (view.stretch.to - view.stretch.from) * view.perUnit,
  )
  const room: FlagRoom = {
    cloth: field,
    ruler: box(options.rulerLeft, field.y - 10 * by, field.x - options.rulerLeft, field.height + 20 * by),
    beyond: box(
      field.x + field.width,
      field.y - 10 * by,
      options.rightLimit - field.x - field.width,
      field.height + 20 * by,
    ),
  }

  // flags first: without them nobody can follow the order
  const lines = new Map<DrawnEdge, Segment>()
  const clear: Box[] = []
  const leaderBoxes: Box[] = []
  const crowded: DrawnEdge[] = []
  for (const edge of divisions) {
    const flag = placeFlag(edge, room, texts, edges, style, stageOf(edge, options.done))
    if (flag === null) crowded.push(edge)
    else add(flag.marks, [flag.box])
    lines.set(edge, flag?.line ?? edge.segment)
  }
  for (const edge of crowded) {
    const flag = placeFlagAside(edge, room, [...texts, ...leaderBoxes], edges, style, stageOf(edge, options.done))
    if (flag === null) {
      homeless.push(edge.division!.flag)
      continue
    }
    add(flag.marks, [flag.box])
    leaderBoxes.push(...stepping(flag.leader, 1.5 * by))
  }
  const scissorMarks = divisions
    .filter((edge) => edge.division!.how.startsWith('shears'))
    .flatMap((edge) => scissorsAt(edge, view, by))
  const scissorBoxes = scissorMarks.flatMap((m) =>
    m.kind === 'circle'
      ? [box(m.x - m.r, m.y - m.r, 2 * m.r, 2 * m.r)]
      : m.kind === 'line'
        ? [boxOf([m.x1, m.y1, m.x2, m.y2], 0.3)]
        : [],
  )
  marks.push(...scissorMarks)
  add(edgeNames(cloth, options, field, [...texts, ...scissorBoxes]))

  const lineBoxes = edges.map((edge) => boxOf(lines.get(edge) ?? edge.segment, edge.weight + 0.9 * by))
  const insides = own.flatMap((edge) => {
    const inner = insideLine(edge, style)
    return inner === null ? [] : [{ ...inner, edge }]
  })
  const insideBoxes = insides.map((each) => boxOf(each.segment, 0.9 * by))
  const fixed = (): readonly Box[] => [...texts, ...leaderBoxes, ...lineBoxes, ...insideBoxes, ...scissorBoxes]

  // labels, then what is too small for its label
  const named: Named[] = []
  const spots: Figure['spots'][number][] = []
  for (const p of cloth.placed) {
    const on = boxOn(view, p)
    if (on === null) continue
    named.push(namedPiece(p, on, measure))
    spots.push({ kind: 'piece', name: p.label, ...on })
  }
  for (const r of cloth.remnants) {
    const on = boxOn(view, r)
    if (on === null) continue
    named.push(namedRemnant(r, on, measure))
    spots.push({ kind: 'remnant', name: r.name, ...on })
  }
  const small: Named[] = []
  for (const item of named) {
    const label = placeLabel(item, style, fixed())
    if (label === null) small.push(item)
    else add(label)
  }
  let leaders = 0
  const inside = new Set<Named>()
  for (const item of small)
    for (const block of numberAlone(item, style)) {
      const spot = findSpot(block, padded(item.box, -0.5 * by), fixed(), { x: 0.5, y: 0.5 })
      if (spot === null) continue
      add(spot.marks)
      inside.add(item)
      break
    }
  for (const group of alike(small)) {
    const numbered = group.every((item) => inside.has(item))
    const outer = marginLabel(group, options, [...texts, ...lineBoxes, ...scissorBoxes, ...leaderBoxes])
    if (outer === null) {
      if (!numbered) homeless.push(...group.map((item) => item.label))
      continue
    }
    add(outer.marks)
    // with its number inside, one leader for all that are alike is enough
    for (const item of numbered ? group.slice(0, 1) : group) {
      const leader = leaderTo(item, outer.at, [...texts, ...leaderBoxes], by) ?? leaderTo(item, outer.at, texts, by)
      // a number inside says enough where the leader would run far
      if (numbered && (leader === null || leader.long > 45 * by)) continue
      if (leader === null) {
        if (!numbered) homeless.push(item.label)
        continue
      }
      marks.push(...leader.marks)
      clear.push(...leader.boxes)
      leaderBoxes.push(...leader.along)
      leaders += 1
    }
  }

  for (const p of cloth.placed) {
    const on = boxOn(view, p)
    if (on === null) continue
    const arrow = placeArrow(cloth, p, on, style, [...fixed(), ...clear, ...leaderBoxes])
    if (arrow !== null) add(arrow.marks, [arrow.at])
  }
  if (options.done === null)
    for (const edge of divisions) {
      const flag = placeSecondFlag(edge, room, [...texts, ...clear, ...leaderBoxes, ...scissorBoxes], edges, style)
      if (flag !== null) add(flag.marks, [flag.box])
    }
  const scale = ruler(cloth, view, measure, style, [...texts, ...leaderBoxes, ...scissorBoxes])
  add(scale.marks, scale.boxes)
  marks.push(rulerLine(view, style))

  // thin lines and hatches give way to all text
  const kept = [...texts.map((each) => padded(each, 0.8 * by)), ...clear]
  marks.push(...thinLines(cloth, view, style, kept))
  for (const { segment, dash } of insides)
    for (const part of outside(segment, texts)) marks.push(line(part, WEIGHTS.thin * by, dash))
  const hatches = new Set<'waste' | 'remnant' | 'trim'>()
  const clearOfHatch = [...texts.map((each) => padded(each, 1.4 * by)), ...clear, ...insideBoxes]
  for (const [kind, boxes] of [
    ['waste', cloth.waste],
    ['remnant', cloth.remnants],
    ['trim', cloth.trims],
  ] as const)
    for (const each of boxes) {
      const on = boxOn(view, each)
      if (on === null) continue
      hatches.add(kind)
      marks.push(...hatch(kind, on, clearOfHatch, by))
    }

  for (const edge of own) marks.push(edgeMark(edge))
  for (const edge of divisions) {
    marks.push(...divisionMarks(edge, lines.get(edge) ?? edge.segment, texts, style, stageOf(edge, options.done)))
    const [x1, y1, x2, y2] = edge.segment
    spots.push({ kind: 'division', name: edge.division!.flag, ...padded(box(x1, y1, x2 - x1, y2 - y1), by) })
  }
  return { marks, spots, texts, homeless, hatches, leaders }
}

const stageOf = (edge: DrawnEdge, done: number | null): Stage =>
  done === null ? 'later' : edge.division!.n <= done ? 'done' : edge.division!.n === done + 1 ? 'now' : 'later'

function divisionMarks(
  edge: DrawnEdge,
  segment: Segment,
  texts: readonly Box[],
  style: Style,
  stage: Stage,
): readonly Mark[] {
  const by = style.by
  const weight = stage === 'done' ? 0.5 * by : stage === 'now' ? 1.5 * by : edge.weight
  const dash = edge.kind === 'tear' && stage !== 'done' ? DASHES.tear.map((d) => d * by) : undefined
  const parts = outside(segment, texts, 0.6 * by)
  const marks = parts.map((part) => line(part, weight, dash))
  return edge.kind === 'tear' && stage !== 'done' ? [...marks, ...snip(edge, by)] : marks
}

// a small V where the selvedge is snipped: at the end of a tear that lies on the cloth's own edge
function snip(edge: DrawnEdge, by: number): readonly Mark[] {
  const { division, segment } = edge
  if (division!.how !== 'tear') return []
  const [x1, y1] = segment
  if (division!.runs === 'across') {
    if (division!.from !== 0) return []
    const x = x1 + 4 * by
    return [
      line([x, y1 - 1.3 * by, x + 2.2 * by, y1], 0.35 * by),
      line([x, y1 + 1.3 * by, x + 2.2 * by, y1], 0.35 * by),
    ]
  }
  const y = y1 + 0.1 * by
  return [line([x1 - 1.3 * by, y, x1, y + 2.2 * by], 0.35 * by), line([x1 + 1.3 * by, y, x1, y + 2.2 * by], 0.35 * by)]
}

function scissorsAt(edge: DrawnEdge, view: View, by: number): readonly Mark[] {
  const { division, segment } = edge
  const [x1, y1, , y2] = segment
  if (division!.runs === 'across') return scissors(x1 + 3.4 * by, y1, 'right', by)
  // through a hem: at the end where the hem is
  const hemAtEnd =
    division!.how === 'shears-through-hem-then-tear' && division!.to * view.perUnit > 0 && throughFoot(edge)
  if (!hemAtEnd) return scissors(x1, y1 + 1.4 * by, 'down', by)
  return scissors(x1, y2 - 1.4 * by, 'down', by).map((m) => flippedOver(m, y2 - 1.4 * by))
}

const throughFoot = (edge: DrawnEdge): boolean => edge.division!.hand.y > 0

const flippedOver = (m: Mark, y: number): Mark =>
  m.kind === 'line' ? { ...m, y1: 2 * y - m.y1, y2: 2 * y - m.y2 } : m.kind === 'circle' ? { ...m, y: 2 * y - m.y } : m

function placeLabel(item: Named, style: Style, taken: readonly Box[]): readonly Mark[] | null {
  const area = roomIn(item, style)
  const near = taken.filter(
    (b) => b.x < area.x + area.width && b.x + b.width > area.x && b.y < area.y + area.height && b.y + b.height > area.y,
  )
  const all = wholeLabels(item, style)
  // names in full before names cut short
  const cutShort = all.filter((block) => block.lines.some((l) => l.text.endsWith('…')))
  const blocks = [...all.filter((block) => !cutShort.includes(block)), ...cutShort]
  for (const block of blocks) {
    if (block === all[0] && item.kind === 'piece' && item.box.width < 3 * style.number) continue
    if (block.turned && item.kind === 'piece') {
      const thin = placeLongThin(item, style, near, cutShort.includes(block))
      if (thin !== null) return thin
    }
    const spot = findSpot(block, area, near, { x: 0.5, y: item.kind === 'remnant' ? 0.5 : 0.4 })
    if (spot !== null) return spot.marks
  }
  return null
}

function placeLongThin(item: Named, style: Style, taken: readonly Box[], mayCut: boolean): readonly Mark[] | null {
  const area = roomIn(item, style)
  const parts = longThinLabel(item, style)
  if (!mayCut && parts.rest.lines.some((l) => l.text.includes('…'))) return null
  const number = findSpot(parts.number, area, taken, { x: 0.5, y: 0 })
  if (number === null) return null
  const below = number.boxes[0]!.y + number.boxes[0]!.height + style.by
  const { height } = blockSize(parts.rest)
  const room = box(area.x, below, area.width, area.y + area.height - below)
  const rest = findSpot(parts.rest, room, taken, { x: 0.5, y: height > room.height * 0.6 ? 0.5 : 0.2 })
  return rest === null ? null : [...number.marks, ...rest.marks]
}

function alike(small: readonly Named[]): readonly (readonly Named[])[] {
  const groups = new Map<string, Named[]>()
  for (const item of small) {
    const key =
      item.kind === 'remnant' ? item.label : `${item.words}|${item.words === '' ? item.whose : ''}|${item.size}`
    groups.set(key, [...(groups.get(key) ?? []), item])
  }
  return [...groups.values()]
}

/** Number, name and size in a margin, as near to the piece as can be. */
function marginLabel(
  group: readonly Named[],
  options: DrawOptions,
  taken: readonly Box[],
): { readonly marks: readonly Mark[]; readonly at: Box } | null {
  const { style } = options
  const { small } = style
  const [first] = group
  const label = labelsListed(group.map((item) => item.label))
  const name = [first!.words, group.length === 1 ? first!.whose : ''].filter((words) => words !== '').join(', ')
  for (const margin of options.margins) {
    const size = textWidth(first!.size, small, 700)
    const labels = wrap(label, margin.width, small, 700)
    const oneRow = `${label}  ${name === '' ? '' : `${name}  `}`
    const fitsOneRow = textWidth(oneRow, small, 700) + size <= margin.width
    const rows: readonly (readonly [string, 500 | 700])[] = fitsOneRow
      ? []
      : [
          ...labels.map((words) => [words, 700] as const),
          ...(name === '' ? [] : wrap(name, margin.width, small, 500).slice(0, 3)).map(
            (words) => [words, 500] as const,
          ),
          [first!.size, 700],
        ]
    if (!fitsOneRow && size > margin.width) continue
    const pitch = small * PITCH
    const wide = fitsOneRow
      ? textWidth(`${label}  `, small, 700) + (name === '' ? 0 : textWidth(`${name}  `, small, 500)) + size
      : Math.max(...rows.map(([words, weight]) => textWidth(words, small, weight)))
    const tall = (fitsOneRow ? 1 : rows.length) * pitch
    const anchor = first!.box
    const preferX = (anchor.x + anchor.width / 2 - margin.x - wide / 2) / Math.max(margin.width - wide, 0.01)
    const preferY = (anchor.y + anchor.height / 2 - margin.y - tall / 2) / Math.max(margin.height - tall, 0.01)
    const clamp = (n: number): number => Math.min(1, Math.max(0, n))
    const at = findBox(
      wide,
      tall,
      margin,
      taken.map((b) =>
        box(b.x - 4 * style.by, b.y - 0.4 * style.by, b.width + 8 * style.by, b.height + 0.8 * style.by),
      ),
      { x: margin.x > anchor.x + anchor.width ? 0 : clamp(preferX), y: clamp(preferY) },
    )
    if (at === null) continue
    const baseline = at.y + small * 1.14
    if (!fitsOneRow) {
      return { at, marks: rows.map(([words, weight], i) => text(words, at.x, baseline + i * pitch, small, weight)) }
    }
    const parts = [
      [`${label}  `, 700],
      ...(name === '' ? [] : [[`${name}  `, 500] as const]),
      [first!.size, 700],
    ] as const
    let x = at.x
    const marks = parts.map(([words, weight]) => {
      const mark = text(words, x, baseline, small, weight)
      x += textWidth(words, small, weight)
      return mark
    })
    return { at, marks }
  }
  return null
}

/** A slanted thin line from a dot in the piece to the nearest side of its text, crossing no text. */
function leaderTo(
  item: Named,
  at: Box,
  texts: readonly Box[],
  by: number,
): {
  readonly marks: readonly Mark[]
  readonly boxes: readonly Box[]
  readonly along: readonly Box[]
  readonly long: number
} | null {
  const { box: piece } = item
  const ends: readonly (readonly [number, number])[] = [
    [at.x - 0.8 * by, at.y + at.height * 0.5],
    [at.x + at.width / 2, at.y - 0.4 * by],
    [at.x + at.width / 2, at.y + at.height + 0.2 * by],
    [at.x + at.width * 0.15, at.y - 0.4 * by],
    [at.x + at.width + 0.8 * by, at.y + at.height * 0.5],
  ]
  const starts = [
    [0.8, 0.5],
    [0.75, 0.75],
    [0.75, 0.25],
    [0.5, 0.8],
    [0.5, 0.2],
    [0.25, 0.5],
    [0.5, 0.5],
    [0.92, 0.5],
  ] as const
  const others = texts.filter((each) => each !== at)
  let best: Segment | null = null
  let shortest = Number.POSITIVE_INFINITY
  for (const [fx, fy] of starts)
    for (const [x2, y2] of ends) {
      const segment = [piece.x + piece.width * fx, piece.y + piece.height * fy, x2, y2] as const
      const [dx, dy] = [Math.abs(segment[0] - x2), Math.abs(segment[1] - y2)]
      // slanted, so that it cannot be taken for an edge
      const long = dx + dy + (dx < 1.2 * by || dy < 1.2 * by ? 25 * by : 0)
      const dot = box(segment[0] - 0.8 * by, segment[1] - 0.8 * by, 1.6 * by, 1.6 * by)
      if (long >= shortest || meetsAny(dot, others) || others.some((each) => crosses(segment, each))) continue
      shortest = long
      best = segment
    }
  if (best === null) return null
  const dot: Mark = { kind: 'circle', x: best[0], y: best[1], r: 0.6 * by, weight: 0, fill: 'ink' }
  return {
    marks: [line(best, WEIGHTS.thin * by), dot],
    boxes: [box(best[0] - by, best[1] - by, 2 * by, 2 * by)],
    along: stepping(best, 1.5 * by),
    long: Math.abs(best[2] - best[0]) + Math.abs(best[3] - best[1]),
  }
}

// small boxes that cover a slanted line
function stepping([x1, y1, x2, y2]: Segment, step: number): readonly Box[] {
  const n = Math.max(1, Math.ceil(Math.max(Math.abs(x2 - x1), Math.abs(y2 - y1)) / step))
  const [dx, dy] = [(x2 - x1) / n, (y2 - y1) / n]
  return Array.from({ length: n }, (_, i) =>
    box(Math.min(x1 + i * dx, x1 + (i + 1) * dx), Math.min(y1 + i * dy, y1 + (i + 1) * dy), Math.abs(dx), Math.abs(dy)),
  )
}

function placeArrow(
  cloth: CutCloth,
  p: Placed,
  on: Box,
  style: Style,
  taken: readonly Box[],
): { readonly at: Box; readonly marks: readonly Mark[] } | null {
  const arrow = arrowBlock(cloth, p)
  const area = padded(on, -1.2 * style.by)
  const wide = on.width > 3.4 * style.number
  const around = taken.map((b) => padded(b, 0.6 * style.by))
  const sizes = arrowSizes(on, arrow, style)
  // in a narrow piece below the label and in the middle, else wherever there is room
  const middle = sizes.flatMap((size) => {
    const strip = box(on.x + (on.width - size.width) / 2, area.y, size.width, area.height)
    return wide ? [] : [{ size, room: strip, prefer: { x: 0, y: 0.85 } }]
  })
  const anywhere = sizes.map((size) => ({
    size,
    room: area,
    prefer: wide ? { x: 0.12, y: 0.42 } : { x: 0.5, y: 0.85 },
  }))
  for (const { size, room, prefer } of [...middle, ...anywhere]) {
    const at = findBox(size.width, size.height, room, around, prefer)
    if (at !== null) return { at, marks: arrowMarks(at, arrow, style) }
  }
  return null
}

// folds, seams to come, corner squares, places of buttons and ties, and the lines of the print's repeat
function thinLines(cloth: CutCloth, view: View, style: Style, clear: readonly Box[]): readonly Mark[] {
  const by = style.by
  const marks: Mark[] = []
  for (const p of cloth.placed) {
    const on = boxOn(view, p)
    if (on === null) continue
    const top = yOn(view, p.y)
    for (const each of sewingMarks(p, view.perUnit, by))
      for (const [x1, y1, x2, y2] of each.segments) {
        const moved = clippedTo([on.x + x1, top + y1, on.x + x2, top + y2], on)
        if (moved === null) continue
        for (const part of outside(moved, clear))
          marks.push(line(part, WEIGHTS.thin * by, each.kind === 'fold' ? DASHES.fold.map((d) => d * by) : undefined))
      }
  }
  const phased = cloth.placed.find((p) => p.phase !== null)
  if (cloth.repeat > 0) {
    const first = phased ? (((phased.y - phased.phase!) % cloth.repeat) + cloth.repeat) % cloth.repeat : 0
    for (let y = first; y <= view.stretch.to; y += cloth.repeat) {
      if (y < view.stretch.from) continue
      const at = yOn(view, y)
      for (const part of outside([xOn(view, 0), at, xOn(view, cloth.width), at], clear))
        marks.push(
          line(
            part,
            WEIGHTS.thin * by,
            DASHES.repeat.map((d) => d * by),
          ),
        )
    }
  }
  return marks
}

function clippedTo([x1, y1, x2, y2]: Segment, b: Box): Segment | null {
  if (x1 === x2) {
    const [from, to] = [Math.max(Math.min(y1, y2), b.y), Math.min(Math.max(y1, y2), b.y + b.height)]
    return to > from ? [x1, from, x2, to] : null
  }
  return y1 >= b.y - 1e-6 && y1 <= b.y + b.height + 1e-6 ? [x1, y1, x2, y2] : null
}

// what the ends and sides of the cloth are
function edgeNames(cloth: CutCloth, options: DrawOptions, field: Box, taken: readonly Box[]): readonly Mark[] {
  const { view, style, measure } = options
  const { small } = style
  const marks: Extract<Mark, { kind: 'text' }>[] = []
  const put = (
    words: string,
    y: number,
    ...places: readonly (readonly [number, 'start' | 'middle' | 'end'])[]
  ): void => {
    for (const [x, anchor] of places) {
      const mark = text(words, x, y, small, 500, anchor)
      const own = padded(textBox(mark), 0.5 * style.by)
      if (meetsAny(own, [...taken, ...marks.map(textBox)])) continue
      marks.push(mark)
      return
    }
  }
  const above = field.y - 2.2 * style.by - small * 0.32
  const below = field.y + field.height + small * 1.36 + 0.6 * style.by
  const middle = field.x + field.width / 2
  const right = field.x + field.width
  const atStart = view.stretch.from === 0
  const atEnd = view.stretch.to === cloth.length
  const ends = cloth.from === 'bolt' ? ['Cut end', 'Bolt end'] : ['Head end', 'Foot end']
  const endName = (edge: CutCloth['edges']['start'], plain: string, hem: string): string =>
    edge.kind === 'hem' ? `${hem}, kept, ${measure.bare(edge.depth)} deep` : plain
  const from = view.stretch.fromFlag
  const beginning = atStart
    ? endName(cloth.edges.start, ends[0]!, 'Head hem')
    : from
      ? `From ${from}${atEnd ? ` to the ${ends[1]!.toLowerCase()}` : ''}`
      : 'Goes on from before'
  put(beginning, above, [middle, 'middle'], [field.x, 'start'], [field.x + field.width * 0.3, 'middle'], [right, 'end'])
  if (cloth.edges.left.kind === 'selvedge') put('Selvedge', above, [field.x, 'start'])
  if (cloth.edges.right.kind === 'selvedge') put('Selvedge', above, [right, 'end'])
  const ending = atEnd
    ? endName(cloth.edges.end, ends[1]!, 'Foot hem')
    : (options.goesOn.find((words) => textWidth(words, small, 500) <= options.rightLimit - field.x) ??
      options.goesOn.at(-1) ??
      '')
  if (ending !== '') put(ending, below, [field.x, 'start'], [middle, 'middle'], [right, 'end'])
  return marks
}
