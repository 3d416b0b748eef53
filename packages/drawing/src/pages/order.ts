import type { CutCloth, Result } from '@lengthwise/planner'
import { box } from '../box.ts'
import { clothName } from '../cloth/names.ts'
import { drawSmall } from '../cloth/small.ts'
import type { Style } from '../cloth/style.ts'
import { WEIGHTS } from '../cloth/style.ts'
import { frameOf, line, text } from '../ink.ts'
import type { Measure } from '../measure.ts'
import type { Mark } from '../scene.ts'
import { textWidth, wrap } from '../text.ts'
import type { Step } from '../words/hands.ts'
import { comesAway, heldIn, stepsOf } from '../words/hands.ts'
import { labelsListed } from '../words/list.ts'
import { lineOf } from '../words/order.ts'
import type { Leaf } from './leaf.ts'
import { BOTTOM, FRAME, leaf, setRuns, tickBox } from './leaf.ts'

const LEFT = 34

/** The order page: a tick box, a flag, what to do and what it gives, grouped by the length in hand. */
export function orderLeaves(result: Result, cloth: CutCloth, measure: Measure, style: Style): readonly Leaf[] {
  const groups = grouped(stepsOf(cloth))
  const { small } = style
  const pitch = small * 1.55
  const flagWide = Math.max(12, ...cloth.divisions.map((d) => textWidth(d.flag, small, 700) + 2))
  const textLeft = LEFT + 7 + flagWide + 2
  const leaves: Leaf[] = []
  let fresh = 0
  let on = begin()

  if (groups.length === 0) {
    on.y += small * 2
    const words = `Nothing to divide: the whole cloth is ${labelsListed([...cloth.placed.map((p) => p.label), ...cloth.remnants.map((r) => r.name)])}.`
    on.parts.push({ role: 'paragraph', marks: [text(words, 0, on.y, small, 500)] })
  }
  for (const [g, group] of groups.entries()) {
    const steps = group.steps
    const next = groups[g + 1]?.steps[0]?.division.flag
    const picture = pictureOf(cloth, steps, style)
    const first = heightOf(steps[0]!)
    const need = Math.max(first + pitch * 2, small * 2 + (picture?.height ?? 0))
    if (on.y + need > BOTTOM && on.y > fresh + 1) on = turnOver()
    const top = on.y
    on.parts.push({ role: 'artifact', marks: [line([0, top, FRAME.width, top], WEIGHTS.thin)] })
    on.y += small * 2.1
    const head = wrap(group.name, LEFT - 2, small, 700)
    on.parts.push({ role: 'heading-2', marks: head.map((words, i) => text(words, 0, on.y + i * pitch, small, 700)) })
    const pictured = on
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
    for (const step of steps) {
      if (on.y + heightOf(step) - pitch > BOTTOM) {
        on = turnOver()
        on.y += small * 1.4
      }
      addStep(step)
    }
    const labels = comesAway(steps).flatMap(heldIn)
    if (labels.length > 0) {
      const words = `Write ${labelsListed(labels)} on ${labels.length === 1 ? 'it' : 'them'}${next === undefined ? '' : `; measure again before ${next}`}.`
      const set = setRuns([[words, 500]], LEFT + 7, on.y, FRAME.width - LEFT - 7, small)
      if (on.y + (set.lines - 1) * pitch > BOTTOM) {
        on = turnOver()
        on.y += small * 1.4
      }
      const placed = setRuns([[words, 500]], LEFT + 7, on.y, FRAME.width - LEFT - 7, small)
      on.parts.push({ role: 'list-item', marks: [tickBox(LEFT, on.y, 4.4), ...placed.marks] })
      on.y += placed.lines * pitch + small * 0.4
    }
    // the picture may stand on the page before
    on.y = Math.max(on.y - small * 0.6, on === pictured ? pictureEnd + small * 0.9 : 0)
  }
  return leaves

  function begin(): Leaf {
    const name = clothName(result, cloth)
    const byThread = cloth.divisions.some((d) => d.how === 'thread')
    const tears = cloth.divisions.some((d) => d.how === 'tear' || d.how === 'shears-through-hem-then-tear')
    const page = leaf(
      'order',
      leaves.length === 0 ? 'Tear and cut in this order' : 'Tear and cut, goes on',
      leaves.length === 0
        ? [
            'The side you measure from is named first. Down is along the selvedge.',
            tears
              ? 'To tear: snip the edge, tear to the far edge, snip it. Flags T are torn, flags C are cut.'
              : byThread
                ? 'By the thread: draw one thread out, right across, and cut along the gap it leaves.'
                : 'Cut along a ruled line, right across unless it says where to begin and end.',
          ]
        : [],
      style,
      name,
    )
    leaves.push(page)
    fresh = page.y
    return page
  }
  function turnOver(): Leaf {
    return begin()
  }
  function parts(step: Step): { todo: ReturnType<typeof setRuns>; gives: readonly string[] } {
    const words = lineOf(step, cloth, measure)
    const width = FRAME.width - textLeft
    return {
      todo: setRuns(
        [
          [words.todo[0], 500],
          [words.todo[1], 700],
          [`${words.todo[2]}.`, 500],
        ],
        textLeft,
        on.y,
        width,
        small,
      ),
      gives: wrap(`${words.gives}.`, width, small, 500),
    }
  }
  function heightOf(step: Step): number {
    const { todo, gives } = parts(step)
    return (todo.lines + gives.length) * pitch + small * 0.7
  }
  function addStep(step: Step): void {
    const { todo, gives } = parts(step)
    const flag = box(LEFT + 7, on.y - small * 1.25, flagWide, small * 1.5)
    const below = on.y + todo.lines * pitch
    on.parts.push({
      role: 'list-item',
      marks: [
        tickBox(LEFT, on.y, 4.4),
        frameOf(flag, WEIGHTS.raw),
        text(step.division.flag, flag.x + flagWide / 2, on.y, small, 700, 'middle'),
        ...todo.marks,
        ...gives.map((words, i) => text(words, textLeft, below + i * pitch, small, 500)),
      ],
    })
    on.y = below + gives.length * pitch + small * 0.7
  }
}

function grouped(steps: readonly Step[]): readonly { readonly name: string; readonly steps: readonly Step[] }[] {
  const groups: { name: string; steps: Step[] }[] = []
  for (const step of steps) {
    const last = groups.at(-1)
    if (last !== undefined && last.name === step.group) last.steps.push(step)
    else groups.push({ name: step.group, steps: [step] })
  }
  return groups
}

// the length a group divides, at 1:50 or smaller, with the numbers of its pieces
function pictureOf(
  cloth: CutCloth,
  steps: readonly Step[],
  style: Style,
): { readonly height: number; readonly labels: readonly string[]; at(x: number, y: number): readonly Mark[] } | null {
  const away = comesAway(steps)
  const boxes = away.map(({ box }) => box)
  if (boxes.length === 0) return null
  const from = Math.min(...boxes.map((b) => b.y))
  const to = Math.max(...boxes.map((b) => b.y + b.length))
  const perUnit =
    [50, 100, 200]
      .map((scale) => 1 / (320 * scale))
      .find((each) => cloth.width * each <= LEFT - 4 && (to - from) * each <= 60) ?? 1 / (320 * 200)
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
