/**
 * Fills one rectangle with pieces by guillotine divisions, as fully as a bounded search finds: a beam search over prefixes of the
 * cut tree.
 *
 * After F. Fontan and L. Libralesso, "An anytime tree search algorithm for two-dimensional two- and three-staged guillotine packing
 * problems" (2020), widened step by step by the caller. It differs in that any number of stages is allowed: a node is a stack of
 * open rooms, and a branch sets a block of equal pieces down in the room on top, then divides the rest of that room edge to edge.
 *
 *     rows first            columns first
 *     +-----------+         +------+----+
 *     |   above   |         | above|    |
 *     +------+----+         +------+ R  |
 *     |block | R  |         |block |    |
 *     +------+----+         +------+----+
 *
 * The smallest room is filled first, so that waste shows early. Nodes with equally many pieces compete; the guide is waste, what
 * the open rooms may be expected to waste, less a share of the area placed, which sets large pieces down first and leaves the small
 * ones for the gaps. Without the second, nodes that put waste off by dividing would push out those that avoid it.
 * Cost: pieces × beam width × kinds. Nothing is proved.
 */
import type { Control, Rect } from '../model.ts'
import type { Random } from './random.ts'
import type { Part } from './tree.ts'
import { rect, splitOf } from './tree.ts'
import type { Shape, Trial } from './trial.ts'
import { seat } from './trial.ts'

export interface FillOptions {
  /** nodes kept among those with equally many pieces */
  readonly beam: number
  /** area that may stay empty; a node above it is dropped */
  readonly budget: number
  /** how much of one unit of waste a unit of placed area outweighs, in the guide */
  readonly greed: number
  readonly meter: Meter
  readonly random: Random
  /** per cent by which the guide may misjudge the worth of each kind in this run; 0: not at all */
  readonly noise?: number
}

/** `steps` is counted down by one for each block tried; a search ends at 0, or when told to stop. */
export interface Meter {
  steps: number
  readonly stop: () => boolean
}

/** The steps of a control, and its stop, asked once in a while: it may cost much more than a step. */
export function meterOf(control: Control): Meter {
  const { stop } = control
  if (stop === undefined) return { steps: control.effort, stop: () => false }
  let stopped = false
  let asked = 0
  let last = control.effort
  const meter: Meter = {
    steps: control.effort,
    stop: () => {
      asked++
      if (stopped || (asked < 64 && last - meter.steps < POLL_STEPS)) return stopped
      asked = 0
      last = meter.steps
      stopped = stop()
      return stopped
    },
  }
  return meter
}

/** Steps between two questions whether to stop: a few milliseconds. */
const POLL_STEPS = 10_000

export interface Filled {
  readonly part: Part
  /** area of the pieces in it */
  readonly area: number
  /** their dues */
  readonly due: number
  /** pieces used of each kind */
  readonly used: readonly number[]
}

interface Room extends Rect {
  /** area that this room and those below it may be expected to waste */
  readonly idle: number
  readonly next: Room | null
  readonly hash: number
}

interface Node {
  readonly choice: Choice | null
  /** pieces left, by slot of the kinds in use */
  readonly left: readonly number[]
  room: Room | null
  waste: number
  readonly area: number
  readonly due: number
  readonly worth: number
  readonly count: number
  readonly hash: number
}

/** A block of `across` × `along` equal pieces with its first corner at x, y. */
interface Choice {
  /** the lower, the better */
  readonly score: number
  readonly node: Node
  readonly room: Room
  readonly option: Option
  readonly x: number
  readonly y: number
  readonly across: number
  readonly along: number
  readonly rows: boolean
}

/** A shape in use, with the slot of its kind. */
interface Option {
  readonly shape: Shape
  readonly slot: number
  readonly width: number
  readonly length: number
  readonly area: number
  readonly due: number
  /** its due as the guide sees it */
  readonly worth: number
  readonly key: number
}

/** What one run of the search shares. */
interface Run {
  readonly trial: Trial
  readonly options: readonly Option[]
  readonly levels: (Level | undefined)[]
  readonly beam: number
  readonly budget: number
  readonly greed: number
  /** mean area of the pieces to be placed; 0 where sides, zones, phases or flaws bind: there waste comes of them most */
  readonly mean: number
  readonly meter: Meter
}

/** Fills `room` from `available` (pieces of each kind). The best filling found; an empty one when nothing fits. */
export function fill(trial: Trial, room: Rect, available: readonly number[], settings: FillOptions): Filled {
  const slots: number[] = []
  for (let kind = 0; kind < available.length; kind++) if (available[kind]! > 0) slots.push(kind)
  const left = slots.map((kind) => available[kind]!)
  const total = left.reduce((sum, each) => sum + each, 0)
  const run: Run = {
    trial,
    options: optionsOf(trial, slots, room, settings.random, settings.noise ?? 0),
    levels: new Array(total + 1),
    beam: settings.beam,
    budget: settings.budget,
    greed: settings.greed,
    mean: !trial.plain
      ? 0
      : left.reduce((sum, each, slot) => sum + each * trial.areas[slots[slot]!]!, 0) / Math.max(1, total),
    meter: settings.meter,
  }
  const root: Node = {
    choice: null,
    left,
    room: roomOn(run, null, room),
    waste: 0,
    area: 0,
    due: 0,
    worth: 0,
    count: 0,
    hash: 0,
  }
  settle(run, root)
  const best = searched(run, root, total)
  const used = available.map(() => 0)
  for (const [slot, kind] of slots.entries()) used[kind] = left[slot]! - best.left[slot]!
  return { part: treeOf(room, best), area: best.area, due: best.due, used }
}

function optionsOf(trial: Trial, slots: readonly number[], room: Rect, random: Random, noise: number): Option[] {
  const slotOf: number[] = new Array(trial.counts.length).fill(-1)
  for (const [slot, kind] of slots.entries()) slotOf[kind] = slot
  const keys = slots.map(() => random.below(0x40000000) * 4 + 1)
  const options: Option[] = []
  for (const shape of trial.shapes) {
    const slot = slotOf[shape.kind]!
    if (slot < 0 || shape.width > room.width || shape.length > room.length) continue
    const area = trial.areas[shape.kind]!
    // only few places touch the start or the end: what needs them goes first
    const due = trial.dues[shape.kind]!
    const worth = ((trial.rare[shape.kind] ? 1000 : 1) * due * (100 + random.below(noise + 1) - noise / 2)) / 100
    options.push({ shape, slot, width: shape.width, length: shape.length, area, due, worth, key: keys[slot]! })
  }
  return options
}

function searched(run: Run, root: Node, total: number): Node {
  const { levels, meter } = run
  let best = root
  expand(run, root)
  const seen = new Set<number>()
  for (let level = 1; level <= total; level++) {
    const waiting = levels[level]
    levels[level] = undefined
    if (waiting === undefined) continue
    seen.clear()
    let kept = 0
    for (const candidate of waiting.inOrder()) {
      if (meter.steps <= 0 || meter.stop()) return best
      const node = grown(run, candidate)
      settle(run, node)
      if (node.waste > run.budget) continue
      const key = (node.hash >>> 0) * 2097152 + ((node.room?.hash ?? 0) & 2097151)
      if (seen.has(key)) continue
      seen.add(key)
      if (node.due > best.due) best = node
      if (node.count === total) return node
      expand(run, node)
      kept++
      if (kept >= run.beam) break
    }
  }
  return best
}

/** The best candidates of one level, at most `room` of them; of equals the earlier stays ahead. Sorted now and then, not each time. */
class Level {
  private candidates: Choice[] = []
  private readonly room: number
  /** a candidate with this score or more is not kept */
  worst = Number.POSITIVE_INFINITY

  constructor(room: number) {
    this.room = room
  }

  add(candidate: Choice): void {
    this.candidates.push(candidate)
    if (this.candidates.length === 2 * this.room) this.worst = this.inOrder()[this.room - 1]!.score
  }

  inOrder(): readonly Choice[] {
    this.candidates.sort((a, b) => a.score - b.score)
    if (this.candidates.length > this.room) this.candidates.length = this.room
    return this.candidates
  }
}

/** Every block for the room on top, and for the ones below it when those above may be given up within the budget. */
function expand(run: Run, node: Node): void {
  let waste = node.waste
  let room = node.room
  for (let given = 0; room !== null && given < 3; given++) {
    expandRoom(run, node, room, waste)
    waste += room.width * room.length
    if (waste > run.budget) return
    room = room.next
  }
}

function expandRoom(run: Run, node: Node, room: Room, waste: number): void {
  const { options, trial } = run
  const { left } = node
  let leastWidth = Number.POSITIVE_INFINITY
  let leastLength = Number.POSITIVE_INFINITY
  for (const option of options) {
    if (left[option.slot]! === 0) continue
    if (option.width < leastWidth) leastWidth = option.width
    if (option.length < leastLength) leastLength = option.length
  }
  let tried = 0
  for (const option of options) {
    const count = left[option.slot]!
    if (count === 0 || option.width > room.width || option.length > room.length) continue
    if (++tried > MOST_TRIED && option.width < room.width && option.length < room.length) continue
    const at = trial.plain ? room : seat(trial, room, option.shape)
    if (at === null) continue
    tryBlock(run, node, room, waste, leastWidth, leastLength, option, at.x, at.y, 1, 1)
    if (count === 1 || !trial.plain) continue
    const across = Math.min(count, Math.floor(room.width / option.width))
    const along = Math.min(count, Math.floor(room.length / option.length))
    if (across > 1) tryBlock(run, node, room, waste, leastWidth, leastLength, option, at.x, at.y, across, 1)
    if (along > 1) tryBlock(run, node, room, waste, leastWidth, leastLength, option, at.x, at.y, 1, along)
    const rows = Math.min(along, Math.floor(count / across))
    if (across > 1 && rows > 1)
      tryBlock(run, node, room, waste, leastWidth, leastLength, option, at.x, at.y, across, rows)
  }
}

/** So many of the shapes that fit a room are tried, the largest; beyond them only those that reach right across it. */
const MOST_TRIED = 50

function tryBlock(
  run: Run,
  node: Node,
  room: Room,
  waste: number,
  leastWidth: number,
  leastLength: number,
  option: Option,
  x: number,
  y: number,
  across: number,
  along: number,
): void {
  run.meter.steps--
  const width = option.width * across
  const length = option.length * along
  const before = y - room.y
  const above = room.length - length - before
  const beside = x - room.x
  const right = room.width - width - beside
  const level = node.count + across * along
  const placed = run.greed * (node.worth + option.worth * across * along)
  let waiting = run.levels[level]
  if (waiting === undefined) {
    waiting = new Level(2 * run.beam + 4)
    run.levels[level] = waiting
  }
  const unsplit = before + above === 0 || beside + right === 0
  for (let rows = 1; rows >= (unsplit ? 1 : 0); rows--) {
    const columnLength = rows === 1 ? length : room.length
    const rowWidth = rows === 1 ? room.width : width
    let lost = waste
    let idle = room.next === null ? 0 : room.next.idle
    const rest = (across: number, along: number): void => {
      if (across <= 0 || along <= 0) return
      if (across < leastWidth || along < leastLength) lost += across * along
      else idle += idleIn(run, across, along)
    }
    rest(right, columnLength)
    rest(beside, columnLength)
    rest(rowWidth, above)
    rest(rowWidth, before)
    const score = lost + idle - placed
    if (lost > run.budget || score >= waiting.worst) continue
    waiting.add({ score, node, room, option, x, y, across, along, rows: rows === 1 })
  }
}

/** The node a candidate stands for; its waste is that of the rooms given up on the way to its room. */
function grown(run: Run, choice: Choice): Node {
  const { node, room, option, x, y, across, along, rows } = choice
  const placed = across * along
  const left = node.left.slice()
  left[option.slot] = left[option.slot]! - placed
  let waste = node.waste
  for (let each = node.room!; each !== room; each = each.next!) waste += each.width * each.length
  const width = option.width * across
  const length = option.length * along
  const endX = room.x + room.width
  const endY = room.y + room.length
  let top = room.next
  if (rows) {
    // the room above (or before, where the rules moved the block) waits below the rests of the row
    top = roomsOn(
      run,
      top,
      rect(room.x, room.y, room.width, y - room.y),
      rect(room.x, y + length, room.width, endY - y - length),
    )
    top = roomsOn(run, top, rect(room.x, y, x - room.x, length), rect(x + width, y, endX - x - width, length))
  } else {
    top = roomsOn(
      run,
      top,
      rect(room.x, room.y, x - room.x, room.length),
      rect(x + width, room.y, endX - x - width, room.length),
    )
    top = roomsOn(run, top, rect(x, room.y, width, y - room.y), rect(x, y + length, width, endY - y - length))
  }
  // of two rests side by side or one above the other, the smaller is filled first
  if (top !== null && room.next !== top && top.next !== null && top.next !== room.next) {
    const { next } = top
    if (next.next === room.next && top.width * top.length > next.width * next.length) {
      top = roomOn(run, roomOn(run, room.next, top), next)
    }
  }
  return {
    choice,
    left,
    room: top,
    waste,
    area: node.area + option.area * placed,
    due: node.due + option.due * placed,
    worth: node.worth + option.worth * placed,
    count: node.count + placed,
    hash: (node.hash + Math.imul(option.key, placed)) | 0,
  }
}

function roomsOn(run: Run, next: Room | null, one: Rect, other: Rect): Room | null {
  let top = next
  const [larger, smaller] = one.width * one.length > other.width * other.length ? [one, other] : [other, one]
  if (larger.width > 0 && larger.length > 0) top = roomOn(run, top, larger)
  if (smaller.width > 0 && smaller.length > 0) top = roomOn(run, top, smaller)
  return top
}

function roomOn(run: Run, next: Room | null, { x, y, width, length }: Rect): Room {
  let hash = Math.imul((next === null ? 0 : next.hash) ^ (width * 31 + x), 0x9e3779b1)
  hash = Math.imul((hash ^ (hash >>> 15)) + length * 17 + y, 0x85ebca6b)
  const idle = idleIn(run, width, length) + (next === null ? 0 : next.idle)
  return { x, y, width, length, next, idle, hash: hash ^ (hash >>> 13) }
}

/**
 * Area that a room may be expected to waste: a tenth of a piece, and more for long thin ones, whose sides few pieces match. The three
 * shares were found by trial on strips sliced at random, of 49 to 196 pieces.
 */
function idleIn({ mean }: Run, width: number, length: number): number {
  if (mean === 0) return 0
  const longer = Math.max(width, length)
  const shorter = Math.min(width, length)
  return 0.1 * mean + Math.sqrt(mean) * (0.01 * longer - 0.02 * shorter)
}

/** Rooms on top in which no remaining piece fits are given up. */
function settle(run: Run, node: Node): void {
  while (node.room !== null && !fitsSome(run, node.left, node.room)) {
    node.waste += node.room.width * node.room.length
    node.room = node.room.next
  }
}

function fitsSome({ options, trial }: Run, left: readonly number[], room: Rect): boolean {
  for (const option of options) {
    if (left[option.slot]! === 0 || option.width > room.width || option.length > room.length) continue
    if (trial.plain || seat(trial, room, option.shape) !== null) return true
  }
  return false
}

/** The tree of a node: each choice divides its room; rooms nobody chose are spare. */
function treeOf(whole: Rect, last: Node): Part {
  const choices = new Map<string, Choice>()
  for (let { choice } = last; choice !== null; { choice } = choice.node) choices.set(nameOf(choice.room), choice)
  const build = (room: Rect): Part => {
    const choice = room.width > 0 && room.length > 0 ? choices.get(nameOf(room)) : undefined
    if (choice === undefined) return { kind: 'spare', rect: room }
    const { option, x, y, across, along, rows } = choice
    const width = option.width * across
    const length = option.length * along
    const block = blockOf(option.shape, rect(x, y, width, length), across, along)
    const endX = room.x + room.width
    const endY = room.y + room.length
    if (rows) {
      const row = splitOf(rect(room.x, y, room.width, length), false, [
        build(rect(room.x, y, x - room.x, length)),
        block,
        build(rect(x + width, y, endX - x - width, length)),
      ])
      return splitOf(room, true, [
        build(rect(room.x, room.y, room.width, y - room.y)),
        row,
        build(rect(room.x, y + length, room.width, endY - y - length)),
      ])
    }
    const column = splitOf(rect(x, room.y, width, room.length), true, [
      build(rect(x, room.y, width, y - room.y)),
      block,
      build(rect(x, y + length, width, endY - y - length)),
    ])
    return splitOf(room, false, [
      build(rect(room.x, room.y, x - room.x, room.length)),
      column,
      build(rect(x + width, room.y, endX - x - width, room.length)),
    ])
  }
  return build(whole)
}

/** Open rooms of one node never overlap and are never empty, so corner and size name a room. */
function nameOf(room: Rect): string {
  return `${room.x} ${room.y} ${room.width} ${room.length}`
}

function blockOf(shape: Shape, whole: Rect, across: number, along: number): Part {
  const { kind, posture, width, length } = shape
  const rows: Part[] = []
  for (let j = 0; j < along; j++) {
    const row: Part[] = []
    for (let i = 0; i < across; i++) {
      const own = rect(whole.x + i * width, whole.y + j * length, width, length)
      row.push({ kind: 'piece', rect: own, of: kind, posture })
    }
    rows.push(splitOf(rect(whole.x, whole.y + j * length, whole.width, length), false, row))
  }
  return splitOf(whole, true, rows)
}
