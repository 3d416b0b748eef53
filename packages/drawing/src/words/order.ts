import type { CutCloth, Division, MeasuredFrom, Result } from '@lengthwise/planner'
import type { Length } from '@lengthwise/units'
import { cm } from '@lengthwise/units'
import type { OrderLine } from '../api.ts'
import type { Measure, Unit } from '../measure.ts'
import { measureIn } from '../measure.ts'
import type { Side, Step } from './hands.ts'
import { CLOTH, endsInside, heldIn, REST, stepsOf, together } from './hands.ts'
import { labelsListed, listed } from './list.ts'

/**
 * The tear-and-cut order in sentences that need nothing else: what is in hand, how far from which edge, what comes away.
 * The side between the edge measured from and the division is named first.
 */
export function orderInWords(result: Result, cloth: CutCloth, unit?: Unit): readonly OrderLine[] {
  const measure = measureIn(unit ?? result.order.measureIn)
  return stepsOf(cloth).map((step) => lineOf(step, cloth, measure))
}

export function lineOf(step: Step, cloth: CutCloth, measure: Measure): OrderLine {
  const { division, hand } = step
  const direction = division.runs === 'across' ? 'across' : 'down'
  const inside = endsInside(division)
  return {
    flag: division.flag,
    cloth: cloth.name,
    todo: [
      `${VERBS[division.how]} ${direction} ${hand}, `,
      measure.full(division.measure.distance),
      ` from ${edgeWords(division.measure.from)}${inside ? betweenWords(division, measure) : AFTERWARDS[division.how]}`,
    ],
    gives: inside
      ? insideWords(division, cloth, measure)
      : `${nearWords(step.near, division, measure)}; ${farWords(step.far, division, measure)}`,
    hand: step.group,
  }
}

/** Steps in order, those together that do the same to what is left again and again, a piece coming away each time. */
export function repeated(steps: readonly Step[]): readonly (readonly Step[])[] {
  const runs: Step[][] = []
  for (const step of steps) {
    const last = runs.at(-1)
    if (last !== undefined && goesOn(last.at(-1)!, step)) last.push(step)
    else runs.push([step])
  }
  // two are as short one by one
  return runs.flatMap((run) => (run.length > 2 ? [run] : run.map((step) => [step])))
}

function goesOn({ division: a, near, far }: Step, { division: b, near: next, hand }: Step): boolean {
  return (
    hand === REST &&
    far.name === REST &&
    near.outcome.kind === 'piece' &&
    next.outcome.kind === 'piece' &&
    a.how !== 'shears-through-hem-then-tear' &&
    a.how === b.how &&
    a.runs === b.runs &&
    a.measure.distance === b.measure.distance &&
    b.measure.from.kind === 'division' &&
    b.measure.from.flag === a.flag
  )
}

/** One sentence for all of them: the first as it is, 'and again from each to the next'. */
export function repeatedLine(
  run: readonly Step[],
  cloth: CutCloth,
  measure: Measure,
): Pick<OrderLine, 'todo' | 'gives'> {
  const { todo, gives } = lineOf(run[0]!, cloth, measure)
  if (run.length === 1) return { todo, gives }
  const { division, far } = run.at(-1)!
  const pieces = labelsListed(run.flatMap((step) => heldIn(step.near.outcome)))
  return {
    todo: [todo[0], todo[1], `${todo[2]}, and again from each to the next`],
    gives: `Gives ${pieces}, one each time; ${farWords(far, division, measure)}`,
  }
}

/** 'the left selvedge', 'the fold of the head hem', 'T1' */
export function edgeWords(from: MeasuredFrom): string {
  if (from.kind === 'division') return from.flag
  return `the ${from.edge.endsWith('hem') ? 'fold of the ' : ''}${from.edge.replace('-', ' ')}`
}

const VERBS: Readonly<Record<Division['how'], string>> = {
  tear: 'Tear',
  shears: 'Cut',
  thread: 'Cut by the thread',
  'shears-through-hem-then-tear': 'Tear',
}

const AFTERWARDS: Readonly<Record<Division['how'], string>> = {
  tear: '',
  shears: '',
  thread: '',
  'shears-through-hem-then-tear': ', through hems with shears',
}

// where a cut begins and ends that does not run right across
function betweenWords({ runs, from, to, hand }: Division, measure: Measure): string {
  const edge = runs === 'across' ? hand.x : hand.y
  const [low, high] = [from, to].map((place) => (place - edge) as Length)
  return `, only between ${measure.bare(low!)} and ${measure.full(high!)} from its ${runs === 'across' ? 'left' : 'upper'} edge`
}

function insideWords(division: Division, cloth: CutCloth, measure: Measure): string {
  const all = together(cloth, division)
  const [first] = all
  if (division !== all.at(-1)) {
    const chalk = division === first ? `Chalk ${labelsListed(all.map((each) => each.flag))} first; n` : 'N'
    return `${chalk}othing comes away yet`
  }
  const held = heldIn(division.gives[0])
  const sized = [...cloth.placed.map((p) => [p.label, p] as const), ...cloth.remnants.map((r) => [r.name, r] as const)]
  const words = held.flatMap((label) => {
    const found = sized.find(([name]) => name === label)?.[1]
    return found ? [`${label} (${measure.size(found.width, found.length)})`] : []
  })
  return `Now these come apart: ${listed(words)}`
}

function nearWords(side: Side, division: Division, measure: Measure): string {
  const { outcome } = side
  if (outcome.kind === 'piece') return `Gives ${outcome.label}`
  if (outcome.kind === 'remnant') return `Gives ${outcome.name}, to keep`
  if (outcome.kind === 'part')
    return side.name === CLOTH ? 'The cloth goes on' : `Gives ${side.name}, for ${labelsListed(heldIn(outcome))}`
  return `Takes off ${measure.full(breadth(outcome.box, division))} of ${outcome.kind}`
}

function farWords(side: Side, division: Division, measure: Measure): string {
  const { outcome } = side
  if (outcome.kind === 'piece') return `the rest is ${outcome.label}`
  if (outcome.kind === 'remnant') return `the rest is ${outcome.name}, to keep`
  if (outcome.kind !== 'part')
    return `the ${measure.full(breadth(outcome.box, division))} left over is ${outcome.kind}${tooNarrow(outcome.box, division) ? ', too narrow to tear: cut it off' : ''}`
  if (side.name === CLOTH) return 'the cloth goes on'
  if (side.name.endsWith('length')) return `the rest is ${side.name}, for ${labelsListed(heldIn(outcome))}`
  if (side.name === REST) return `the rest is for ${labelsListed(heldIn(outcome))}`
  return `the rest waits as ${side.name}, for ${labelsListed(heldIn(outcome))}`
}

/** A strip narrower than this frays away in the hand (common practice, no source). */
const NARROWEST_TEAR = cm(1)
const tooNarrow = (box: Parameters<typeof breadth>[0], division: Division): boolean =>
  division.how !== 'thread' && division.how !== 'shears' && breadth(box, division) < NARROWEST_TEAR

const breadth = (b: { width: Length; length: Length }, division: Division): Length =>
  division.runs === 'across' ? b.length : b.width
