import type { CutCloth } from '@lengthwise/planner'
import type { Box, Segment } from '../box.ts'
import { box, boxOf, padded } from '../box.ts'
import { hatch } from '../hatch.ts'
import { line } from '../ink.ts'
import type { Measure } from '../measure.ts'
import type { Figure, Mark } from '../scene.ts'
import { placeArrow } from './arrow.ts'
import { divisionMarks, scissorsAt } from './division-marks.ts'
import { edgeNames } from './edge-names.ts'
import type { DrawnEdge } from './edges.ts'
import { clothEdges, divisionEdges, edgeMark, insideLine } from './edges.ts'
import type { Flag, FlagRoom, Stage } from './flags.ts'
import { edgeBox, placeFlag, placeFlagAside, placeSecondFlag } from './flags.ts'
import { nameAll } from './naming.ts'
import type { Named, Sign } from './pieces.ts'
import { namedPiece, namedRemnant, textBoxes } from './pieces.ts'
import { Places } from './places.ts'
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
  /** other texts of the page, to be kept clear of */
  readonly taken: readonly Box[]
}

export interface Drawing {
  readonly marks: readonly Mark[]
  readonly spots: Figure['spots']
  /** what texts and leaders cover, margins included */
  readonly texts: readonly Box[]
  /** flags and labels that found no place; empty for a drawing that can be used */
  readonly homeless: readonly string[]
  /** names of pieces that stand outside the cloth for want of room */
  readonly outside: number
  /** some piece or remnant has not even its number inside */
  readonly bare: boolean
  readonly hatches: ReadonlySet<'waste' | 'remnant' | 'trim'>
  readonly signs: ReadonlySet<Sign['kind']>
}

/** What has been set so far, each kind by where it lies. */
export interface Ground {
  readonly marks: Mark[]
  readonly boxes: Box[]
  readonly led: Box[]
  readonly texts: Places
  /** edges, flags with some air, inner lines, scissors */
  readonly lines: Places
  readonly leaders: Places
  /** dots at the ends of leaders, which hatches and thin lines give way to */
  readonly dots: Places
  readonly homeless: string[]
  add(marks: readonly Mark[], boxes?: readonly Box[]): void
  /** a leader, by small boxes along it */
  lead(along: readonly Box[]): void
  /** everything near that a label keeps clear of */
  near(area: Box): readonly Box[]
  /** whether there is nothing of it */
  isFree(area: Box): boolean
}

/** Draws one stretch of cloth: edges once by what they are, flags, ruler, labels, arrows, and last what may give way to text. */
export function drawStretch(cloth: CutCloth, options: DrawOptions): Drawing {
  const { view, style, measure } = options
  const by = style.by
  const ground = groundOf(options)
  const { marks, texts, homeless } = ground
  const own = clothEdges(cloth, view, style)
  const divisions = divisionEdges(cloth, view, style)
  const field = box(
    xOn(view, 0),
    view.top,
    cloth.width * view.perUnit,
    (view.stretch.to - view.stretch.from) * view.perUnit,
  )

  // flags first: without them nobody can follow the order
  const room = flagRoom(field, options)
  const edges = new Places(by)
  edges.add([...own, ...divisions].map((edge) => edgeBox(edge, style)))
  const lines = placeFlags(divisions, room, edges, options, ground)
  const scissorMarks = divisions
    .filter((edge) => edge.division!.how.startsWith('shears'))
    .flatMap((edge) => scissorsAt(edge, view, by))
  const scissors = scissorMarks.flatMap(boxesOf)
  marks.push(...scissorMarks)
  ground.add(edgeNames(cloth, options, field, [...ground.boxes, ...scissors]))

  ground.lines.add([...own, ...divisions].map((edge) => boxOf(lines.get(edge) ?? edge.segment, edge.weight + 0.9 * by)))
  ground.lines.add(scissors)
  const insides = own.flatMap((edge) => {
    const inner = insideLine(edge, style)
    return inner === null ? [] : [inner]
  })
  const insideBoxes = insides.map((each) => boxOf(each.segment, 0.9 * by))
  ground.lines.add(insideBoxes)

  // labels, then what is too small for its label
  const { named, spots } = whatLies(cloth, view, measure, style)
  const { outside, bare } = nameAll(named, options, ground)

  for (const p of cloth.placed) {
    const on = boxOn(view, p)
    if (on === null) continue
    const arrow = placeArrow(cloth, p, on, style, [...ground.near(on), ...ground.dots.near(on)])
    if (arrow !== null) ground.add(arrow.marks, [arrow.at])
  }
  const blocked = new Places(by)
  blocked.add(scissors)
  if (options.done === null)
    for (const edge of divisions) {
      const flag = placeSecondFlag(edge, room, [texts, ground.dots, ground.leaders, blocked], edges, style)
      if (flag !== null) ground.add(flag.marks, [flag.box])
    }
  const scale = ruler(cloth, view, measure, style, [texts, ground.leaders, blocked])
  ground.add(scale.marks, scale.boxes)
  marks.push(rulerLine(view, style))

  // thin lines and hatches give way to all text
  const [kept, clearOfHatch] = [new Places(by), new Places(by)]
  kept.add(ground.boxes.map((each) => padded(each, 0.8 * by)))
  clearOfHatch.add([...ground.boxes.map((each) => padded(each, 1.4 * by)), ...insideBoxes])
  const thin = thinLines(cloth, view, style, [kept, ground.dots])
  marks.push(...thin.marks)
  for (const { segment, dash } of insides)
    for (const part of texts.outside(segment)) marks.push(line(part, WEIGHTS.thin * by, dash))
  const hatches = new Set<'waste' | 'remnant' | 'trim'>()
  for (const [kind, boxes] of [
    ['waste', cloth.waste],
    ['remnant', cloth.remnants],
    ['trim', cloth.trims],
  ] as const)
    for (const each of boxes) {
      const on = boxOn(view, each)
      if (on === null) continue
      hatches.add(kind)
      marks.push(...hatch(kind, on, [...clearOfHatch.near(on), ...ground.dots.near(on)], by))
    }

  for (const edge of own) marks.push(edgeMark(edge))
  for (const edge of divisions) {
    marks.push(...divisionMarks(edge, lines.get(edge) ?? edge.segment, texts, style, stageOf(edge, options.done)))
    const [x1, y1, x2, y2] = edge.segment
    spots.push({ kind: 'division', name: edge.division!.flag, ...padded(box(x1, y1, x2 - x1, y2 - y1), by) })
  }
  return { marks, spots, texts: [...ground.boxes, ...ground.led], homeless, outside, bare, hatches, signs: thin.signs }
}

function groundOf({ style, taken }: DrawOptions): Ground {
  const [texts, lines, leaders, dots] = Array.from({ length: 4 }, () => new Places(style.by)) as [
    Places,
    Places,
    Places,
    Places,
  ]
  texts.add(taken)
  const [marks, boxes, led]: [Mark[], Box[], Box[]] = [[], [], []]
  return {
    marks,
    boxes,
    led,
    texts,
    lines,
    leaders,
    dots,
    homeless: [],
    add(more, covered = textBoxes(more)) {
      marks.push(...more)
      boxes.push(...covered)
      texts.add(covered)
    },
    lead(along) {
      leaders.add(along)
      led.push(...along)
    },
    near: (area) => [texts, lines, leaders].flatMap((places) => places.near(area)),
    isFree: (area) => !texts.meets(area) && !lines.meets(area) && !leaders.meets(area),
  }
}

function flagRoom(field: Box, { view, rulerLeft, rightLimit, style: { by } }: DrawOptions): FlagRoom {
  const right = field.x + field.width
  const [y, tall] = [field.y - 10 * by, field.height + 20 * by]
  return {
    perUnit: view.perUnit,
    cloth: field,
    ruler: box(rulerLeft, y, field.x - rulerLeft, tall),
    beyond: box(right, y, rightLimit - right, tall),
  }
}

/** Sets a flag on every division; answers the lines that go on under their flags. */
function placeFlags(
  divisions: readonly DrawnEdge[],
  room: FlagRoom,
  edges: Places,
  { style, done }: DrawOptions,
  ground: Ground,
): ReadonlyMap<DrawnEdge, Segment> {
  const lines = new Map<DrawnEdge, Segment>()
  const crowded: DrawnEdge[] = []
  const set = (flag: Flag): void => {
    ground.add(flag.marks, [flag.box])
    ground.lines.add([padded(flag.box, 0.9 * style.by)])
  }
  for (const edge of divisions) {
    const flag = placeFlag(edge, room, ground.texts, edges, style, stageOf(edge, done))
    if (flag === null) crowded.push(edge)
    else set(flag)
    lines.set(edge, flag?.line ?? edge.segment)
  }
  for (const edge of crowded) {
    const taken = [ground.texts, ground.leaders]
    const aside = (uncrossed: readonly Places[]) =>
      placeFlagAside(edge, room, taken, uncrossed, edges, style, stageOf(edge, done))
    // a leader crosses another only where it must
    const flag = aside(taken) ?? aside([ground.texts])
    if (flag === null) ground.homeless.push(edge.division!.flag)
    else {
      set(flag)
      ground.lead(flag.along)
    }
  }
  return lines
}

/** Pieces and remnants of the stretch, those with a name to write, and where each lies. */
function whatLies(
  cloth: CutCloth,
  view: View,
  measure: Measure,
  { by }: Style,
): { readonly named: readonly Named[]; readonly spots: Figure['spots'][number][] } {
  const named: Named[] = []
  const spots: Figure['spots'][number][] = []
  // what shows only its edge has its name where the rest of it lies
  const isEdge = (on: Box, length: number): boolean => on.height < 12 * by && on.height < (length * view.perUnit) / 2
  for (const p of cloth.placed) {
    const on = boxOn(view, p)
    if (on === null) continue
    if (!isEdge(on, p.length)) named.push(namedPiece(p, on, measure, cloth.cloth.print.way === 'one-way'))
    spots.push({ kind: 'piece', name: p.label, ...on })
  }
  for (const r of cloth.remnants) {
    const on = boxOn(view, r)
    if (on === null) continue
    if (!isEdge(on, r.length)) named.push(namedRemnant(r, on, measure))
    spots.push({ kind: 'remnant', name: r.name, ...on })
  }
  return { named, spots }
}

const boxesOf = (m: Mark): readonly Box[] =>
  m.kind === 'circle'
    ? [box(m.x - m.r, m.y - m.r, 2 * m.r, 2 * m.r)]
    : m.kind === 'line'
      ? [boxOf([m.x1, m.y1, m.x2, m.y2], 0.3)]
      : []

const stageOf = (edge: DrawnEdge, done: number | null): Stage =>
  done === null ? 'later' : edge.division!.n <= done ? 'done' : edge.division!.n === done + 1 ? 'now' : 'later'
