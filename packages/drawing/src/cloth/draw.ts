import type { CutCloth } from '@lengthwise/planner'
import type { Box, Segment } from '../box.ts'
import { box, boxOf, outside, padded } from '../box.ts'
import { hatch } from '../hatch.ts'
import { line } from '../ink.ts'
import type { Measure } from '../measure.ts'
import type { Figure, Mark } from '../scene.ts'
import { placeArrow } from './arrow.ts'
import { findSpot } from './block.ts'
import { divisionMarks, scissorsAt } from './division-marks.ts'
import { edgeNames } from './edge-names.ts'
import type { DrawnEdge } from './edges.ts'
import { clothEdges, divisionEdges, edgeMark, insideLine } from './edges.ts'
import type { FlagRoom, Stage } from './flags.ts'
import { placeFlag, placeFlagAside, placeSecondFlag } from './flags.ts'
import { placeLabel } from './labels.ts'
import { alike, leaderTo, marginLabel, stepping } from './margin.ts'
import type { Named } from './pieces.ts'
import { namedPiece, namedRemnant, numberAlone, textBoxes } from './pieces.ts'
import { ruler, rulerLine } from './ruler.ts'
import type { Style } from './style.ts'
import { WEIGHTS } from './style.ts'
import { thinLines } from './thin-lines.ts'
import type { View } from './view.ts'
import { boxOn, xOn } from './view.ts'

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
  return { marks, spots, texts, homeless, hatches }
}

const stageOf = (edge: DrawnEdge, done: number | null): Stage =>
  done === null ? 'later' : edge.division!.n <= done ? 'done' : edge.division!.n === done + 1 ? 'now' : 'later'
