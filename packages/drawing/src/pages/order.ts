import type { CutCloth, Result } from '@lengthwise/planner'
import { box } from '../box.ts'
import type { AlikeSet } from '../cloth/alike.ts'
import { inPlaceOf } from '../cloth/alike.ts'
import { setName, tableSize } from '../cloth/names.ts'
import { drawSmall } from '../cloth/small.ts'
import type { Style } from '../cloth/style.ts'
import { WEIGHTS } from '../cloth/style.ts'
import { frameOf, line, text } from '../ink.ts'
import type { Measure } from '../measure.ts'
import type { Mark } from '../scene.ts'
import { fit, textWidth, wrap } from '../text.ts'
import type { Step } from '../words/hands.ts'
import { byNumber, comesAway, heldIn, ordinal, stepsOf } from '../words/hands.ts'
import { counted, labelsListed, listed } from '../words/list.ts'
import { repeated, repeatedLine } from '../words/order.ts'
import type { Leaf } from './leaf.ts'
import { BOTTOM, FRAME, leaf, setRuns, tickBox } from './leaf.ts'

const LEFT = 34
const BOX = 4.4
/** between steps, in capital heights */
const STEP_GAP = 0.32
/** from one row of flags to the next, in capital heights */
const FLAG_ROW = 1.9
/** from one box to tick to the next, and to the flag */
const BOX_STEP = 6.4

/**
 * The order pages, cloth after cloth: boxes to tick, a flag, what to do and what it gives, grouped by the length in hand.
 * Cloths cut alike have one order with a box for each.
 */
export function orderLeaves(
  result: Result,
  sets: readonly AlikeSet[],
  measure: Measure,
  style: Style,
): readonly Leaf[] {
  const { small } = style
  const pitch = small * 1.55
  const leaves: Leaf[] = []
  let fresh = 0
  let on: Leaf
  for (const set of sets) writeSet(set)
  // what follows on the same page begins with a rule
  leaves.at(-1)!.y += small
  return leaves

  function writeSet(set: AlikeSet): void {
    const { cloth, others } = set
    const name = setName(result, set)
    const boxes = others.length + 1
    const flagLeft = LEFT + BOX_STEP * boxes + 0.6
    const flagWide = Math.max(12, ...cloth.divisions.map((d) => textWidth(d.flag, small, 700) + 2))
    const textLeft = flagLeft + flagWide + 2
    // from one flag with its boxes to the next, where many stand in a row
    const flagStep = textLeft - LEFT + 1.4
    const flagsAcross = Math.floor((FRAME.width - LEFT + 3.4) / flagStep)
    const groups = grouped(stepsOf(cloth))
    const first = groups[0]
    if (leaves.length === 0 || on.y + small * 3.7 + (first ? needOf(first) : pitch) > BOTTOM) turnOver('')
    writeHead()
    if (first === undefined) {
      on.y += small * 2
      const words = `Nothing to divide: the whole cloth is ${labelsListed([...cloth.placed.map((p) => p.label), ...cloth.remnants.map((r) => r.name)])}.`
      on.parts.push({ role: 'paragraph', marks: [text(words, 0, on.y, small, 500)] })
      on.y += small
    }
    groups.forEach((group, g) => {
      writeGroup(group, groups[g + 1]?.steps[0]?.division.flag)
    })

    function writeHead(): void {
      on.y += small * (on.y === fresh ? 1.9 : 2.8)
      const lies = `, ${tableSize(cloth, measure)} on the table`
      const capital = Math.min(style.usual, 5)
      const head = fit(name, FRAME.width - textWidth(lies, capital, 700), capital, 700) + lies
      on.parts.push({ role: 'heading-2', marks: [text(head, 0, on.y, capital, 700)] })
      for (const words of others.flatMap((other, i) => wrap(swapped(other, i), FRAME.width, small, 500))) {
        on.y += pitch * 1.1
        on.parts.push({ role: 'paragraph', marks: [text(words, 0, on.y, small, 500)] })
      }
      on.y += small * 0.9
    }

    function swapped(other: CutCloth, i: number): string {
      const pairs = inPlaceOf(set, other).map(([label, instead]) => `${label} for ${instead}`)
      const both =
        i === 0 ? `Cut ${boxes === 2 ? 'both' : `all ${counted(boxes)}`} alike; there is a box for each. ` : ''
      return `${both}From the ${ordinal(i + 1)} come ${listed(pairs)}.`
    }

    // what may not be parted: the name, its picture and the first step
    function needOf({ steps }: Group): number {
      const picture = pictured(steps)
      const first = heightOf(repeated(steps)[0]!)
      return Math.max(small * 1.9 + first - pitch, picture === null ? 0 : small * 2.6 + picture.height)
    }

    // no taller than the words beside it, unless it is small anyway
    function pictured(steps: readonly Step[]): ReturnType<typeof pictureOf> {
      const words = repeated(steps).reduce((sum, run) => sum + heightOf(run), 0)
      return pictureOf(cloth, steps, style, Math.min(60, Math.max(words, 24)))
    }

    function writeGroup(group: Group, next: string | undefined): void {
      const { steps } = group
      const picture = pictured(steps)
      if (on.y + needOf(group) > BOTTOM && on.y > fresh + 1) turnOver(name)
      const top = on.y
      on.parts.push({ role: 'artifact', marks: [line([0, top, FRAME.width, top], WEIGHTS.thin)] })
      on.y += small * 1.8
      const head = wrap(group.name, LEFT - 2, small, 700)
      on.parts.push({ role: 'heading-2', marks: head.map((words, i) => text(words, 0, on.y + i * pitch, small, 700)) })
      const drawnOn = on
      let pictureEnd = on.y
      if (picture !== null) {
        const y = on.y + (head.length - 1) * pitch + small * 0.7
        on.parts.push({
          role: 'figure',
          alt: `${group.name}: ${labelsListed(picture.labels)}`,
          marks: picture.at(0.5, y),
        })
        pictureEnd = y + picture.height
      }
      for (const run of repeated(steps)) {
        if (on.y + heightOf(run) - pitch > BOTTOM) {
          turnOver(name)
          on.y += small * 1.4
        }
        addRun(run)
      }
      const labels = byNumber(comesAway(steps).flatMap(heldIn))
      if (labels.length > 0) writeNumbers(labels, next)
      // the picture may stand on the page before
      on.y = Math.max(on.y - small * 0.85, on === drawnOn ? pictureEnd + small * 0.6 : 0)
    }

    function writeNumbers(labels: readonly string[], next: string | undefined): void {
      const instead = others
        .map((other, i) => ` (on the ${ordinal(i + 1)} ${labelsListed(insteadOf(other, labels))})`)
        .join('')
      // many have come away one by one, each numbered when it did
      const numbered =
        labels.length > 2
          ? `Each has its number: ${labelsListed(labels)}`
          : `Write ${labelsListed(labels)} on ${labels.length === 1 ? 'it' : 'them'}`
      const words = `${numbered}${instead}${next === undefined ? '' : `; measure what is left before ${next}`}.`
      const written = (y: number) => setRuns([[words, 500]], flagLeft, y, FRAME.width - flagLeft, small)
      if (on.y + (written(0).lines - 1) * pitch > BOTTOM) {
        turnOver(name)
        on.y += small * 1.4
      }
      const placed = written(on.y)
      on.parts.push({ role: 'list-item', marks: [...ticks(LEFT), ...placed.marks] })
      on.y += placed.lines * pitch + small * 0.2
    }

    function insteadOf(other: CutCloth, labels: readonly string[]): readonly string[] {
      const pairs = new Map(inPlaceOf(set, other).map(([label, instead]) => [instead, label]))
      return labels.map((label) => pairs.get(label) ?? label)
    }

    function ticks(x: number): readonly Mark[] {
      return Array.from({ length: boxes }, (_, i) => tickBox(x + i * BOX_STEP, on.y, BOX))
    }

    function partsOf(run: readonly Step[]): { todo: ReturnType<typeof setRuns>; gives: readonly string[] } {
      const words = repeatedLine(run, cloth, measure)
      const width = FRAME.width - textLeft
      const runs = [
        [words.todo[0], 500],
        [words.todo[1], 700],
        [`${words.todo[2]}.`, 500],
      ] as const
      return { todo: setRuns(runs, textLeft, on.y, width, small), gives: wrap(`${words.gives}.`, width, small, 500) }
    }

    // many flags stand in rows above their words, one beside them
    function flagRows(run: readonly Step[]): number {
      return run.length === 1 ? 0 : Math.ceil(run.length / flagsAcross)
    }

    function heightOf(run: readonly Step[]): number {
      const { todo, gives } = partsOf(run)
      return flagRows(run) * FLAG_ROW * small + (todo.lines + gives.length) * pitch + small * STEP_GAP
    }

    function addRun(run: readonly Step[]): void {
      const flags = run.flatMap(({ division: { flag } }, i): readonly Mark[] => {
        const x = LEFT + (i % flagsAcross) * flagStep
        if (i > 0 && i % flagsAcross === 0) on.y += FLAG_ROW * small
        const frame = box(x + flagLeft - LEFT, on.y - small * 1.25, flagWide, small * 1.5)
        return [
          ...ticks(x),
          frameOf(frame, WEIGHTS.raw),
          text(flag, frame.x + flagWide / 2, on.y, small, 700, 'middle'),
        ]
      })
      if (run.length > 1) on.y += FLAG_ROW * small
      const { todo, gives } = partsOf(run)
      const below = on.y + todo.lines * pitch
      on.parts.push({
        role: 'list-item',
        marks: [
          ...flags,
          ...todo.marks,
          ...gives.map((words, i) => text(words, textLeft, below + i * pitch, small, 500)),
        ],
      })
      on.y = below + gives.length * pitch + small * STEP_GAP
    }
  }

  /** A new page, in the middle of a cloth with its name. */
  function turnOver(name: string): void {
    on = leaf(
      'order',
      leaves.length === 0 ? 'Tear and cut in this order' : 'Tear and cut, goes on',
      leaves.length === 0 ? howTo(result.cloths) : [],
      style,
      name,
    )
    if (leaves.length > 0) on.y += small * 0.8
    leaves.push(on)
    fresh = on.y
  }
}

function howTo(cloths: readonly CutCloth[]): readonly string[] {
  const ways = new Set(cloths.flatMap((cloth) => cloth.divisions.map((d) => d.how)))
  const tears = ways.has('tear') || ways.has('shears-through-hem-then-tear')
  const lettered = cloths.some((cloth) => stepsOf(cloth).some((step) => step.hand.startsWith('part ')))
  return [
    `What is measured off is named first. Down is along the selvedge.${lettered ? ' Letter every part.' : ''}`,
    ...(tears
      ? [
          `To tear: snip the edge, tear to the far edge, snip it. ${ways.has('thread') ? 'Flags C are cut with shears.' : 'Flags T are torn, flags C are cut.'}`,
        ]
      : ways.has('thread')
        ? []
        : ['Cut along a ruled line, right across unless it says where to begin and end.']),
    ...(ways.has('thread')
      ? ['By the thread: draw one thread out, right across, and cut along the gap. Its flags are T too.']
      : []),
  ]
}

interface Group {
  readonly name: string
  readonly steps: readonly Step[]
}

function grouped(steps: readonly Step[]): readonly Group[] {
  const groups: { name: string; steps: Step[] }[] = []
  for (const step of steps) {
    const last = groups.at(-1)
    if (last !== undefined && last.name === step.group) last.steps.push(step)
    else groups.push({ name: step.group, steps: [step] })
  }
  return groups
}

// the length a group divides, at 1:50 or smaller, with the numbers of its pieces; null where it would be too tall
function pictureOf(
  cloth: CutCloth,
  steps: readonly Step[],
  style: Style,
  tallest: number,
): { readonly height: number; readonly labels: readonly string[]; at(x: number, y: number): readonly Mark[] } | null {
  const away = comesAway(steps)
  const boxes = away.map(({ box }) => box)
  if (boxes.length === 0) return null
  const from = Math.min(...boxes.map((b) => b.y))
  const to = Math.max(...boxes.map((b) => b.y + b.length))
  const perUnit = [50, 100, 200]
    .map((scale) => 1 / (320 * scale))
    .find((each) => cloth.width * each <= LEFT - 4 && (to - from) * each <= tallest)
  if (perUnit === undefined) return null
  const labels = away.flatMap(heldIn)
  return {
    height: (to - from) * perUnit,
    labels,
    at: (x, y) =>
      drawSmall(cloth, {
        stretch: { from, to, fromFlag: null, toFlag: null },
        left: x,
        top: y,
        perUnit,
        turned: false,
        capital: Math.min(style.small, 3.5),
        labels: 'numbers',
        by: 1,
      }).marks,
  }
}
