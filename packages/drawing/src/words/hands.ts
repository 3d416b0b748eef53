import type { CutCloth, Division, MeasuredFrom, Outcome } from '@lengthwise/planner'

/** A division with the names of what is in hand: every part is named when it comes away and called by that name later. */
export interface Step {
  readonly division: Division
  /** 'the cloth', 'the first length', 'part A', or 'the rest' of the step before */
  readonly hand: string
  /** the side measured from, and the other side */
  readonly near: Side
  readonly far: Side
  /** the group of the order page: 'Cut end', 'First length' … */
  readonly group: string
}

export interface Side {
  readonly outcome: Outcome
  /** the name of a part still to be divided; '' for anything else */
  readonly name: string
}

/** Walks the divisions in order and names every part; a part is found again by its rectangle. */
export function stepsOf(cloth: CutCloth): readonly Step[] {
  const names = new Map<string, string>([[keyOf({ x: 0, y: 0, width: cloth.width, length: cloth.length }), CLOTH]])
  const groups = new Map<string, string>()
  const count = { lengths: 0, parts: 0 }
  return cloth.divisions.map((division, i) => {
    const next = cloth.divisions[i + 1]
    const hand = names.get(keyOf(division.hand)) ?? CLOTH
    const ofCloth = hand === CLOTH
    if (endsInside(division)) {
      const side: Side = { outcome: division.gives[0], name: hand }
      return {
        division,
        hand,
        near: side,
        far: side,
        group: ofCloth ? 'The cloth' : (groups.get(keyOf(division.hand)) ?? capital(hand)),
      }
    }
    const sides = division.gives
    const fromBefore = measuredFromBefore(division, cloth)
    // named in the order in which they are divided, whichever of them is measured
    const named = sides.map((outcome, which): Side => {
      if (outcome.kind !== 'part') return { outcome, name: '' }
      const name = nameOf(outcome, which === 1)
      names.set(keyOf(outcome.box), name)
      return { outcome, name }
    })
    const [near, far] = (fromBefore ? named : [...named].reverse()) as [Side, Side]
    const group = groupOf(near)
    for (const { outcome, name } of named) if (name !== '') groups.set(keyOf(outcome.box), groupFor(name, group))
    return { division, hand, near, far, group }

    function nameOf(outcome: Outcome, isAfter: boolean): string {
      const other = sides[isAfter ? 0 : 1]!
      if (ofCloth && division.runs === 'across') {
        const isLast = !dividedAcross(cloth, outcome)
        // lengths come off the cloth until what is left is the last of them
        if (isAfter && !isLast) return CLOTH
        const onlyTrimmed = other.kind === 'trim' || other.kind === 'waste'
        if (count.lengths > 0 || !(isLast || onlyTrimmed)) return `the ${ordinal(count.lengths++)} length`
        return other.kind === 'part' ? `the ${ordinal(count.lengths++)} length` : CLOTH
      }
      // what is not divided further leaves the cloth the cloth
      if (ofCloth && other.kind !== 'part') return CLOTH
      if (isAfter && fromBefore && next !== undefined && keyOf(next.hand) === keyOf(outcome.box)) return REST
      return `part ${letters(count.parts++)}`
    }

    function groupOf(near: Side): string {
      const inherited = groups.get(keyOf(division.hand))
      if (!ofCloth && inherited !== undefined) return inherited
      if (near.name.endsWith('length')) {
        const atOnce = next !== undefined && keyOf(next.hand) === keyOf(near.outcome.box)
        return atOnce ? capital(near.name.slice(4)) : 'The lengths'
      }
      const end = division.measure.from.kind === 'cloth-edge' ? END_NAMES[division.measure.from.edge] : undefined
      if (ofCloth && division.runs === 'across' && sides[1].kind === 'trim')
        return cloth.from === 'bolt' ? 'Bolt end' : 'Foot end'
      if (sides.some((side) => side.kind === 'trim')) return end ?? 'The cloth'
      return 'The cloth'
    }
  })
}

/** A cut with shears that ends inside what is in hand: nothing comes away until all such cuts of one hand are made. */
export const endsInside = ({ gives, hand }: Division): boolean =>
  gives.every((outcome) => outcome.kind === 'part' && keyOf(outcome.box) === keyOf(hand))

/** All cuts that divide one hand together, in order. */
export const together = (cloth: CutCloth, division: Division): readonly Division[] =>
  cloth.divisions.filter((each) => endsInside(each) && keyOf(each.hand) === keyOf(division.hand))

// whether lengths still come off a part
const dividedAcross = (cloth: CutCloth, part: Outcome): boolean =>
  cloth.divisions.some((d) => d.runs === 'across' && keyOf(d.hand) === keyOf(part.box))

/** What comes away in these steps, in order: pieces, remnants, and what falls apart with the last cut of several. */
export function comesAway(steps: readonly Step[]): readonly Outcome[] {
  return steps.flatMap((step) => {
    if (endsInside(step.division)) {
      const last = steps.filter((each) => keyOf(each.division.hand) === keyOf(step.division.hand)).at(-1)
      return last === step ? [step.near.outcome] : []
    }
    return [step.near, step.far]
      .map(({ outcome }) => outcome)
      .filter(({ kind }) => kind === 'piece' || kind === 'remnant')
  })
}

/** Labels a part holds, by number, pieces first. */
export function heldIn(outcome: Outcome): readonly string[] {
  if (outcome.kind === 'piece') return [outcome.label]
  if (outcome.kind === 'remnant') return [outcome.name]
  return outcome.kind === 'part' ? byNumber([...outcome.labels, ...outcome.remnants]) : []
}

/** By number, pieces before remnants. */
export const byNumber = (labels: readonly string[]): readonly string[] =>
  [...labels].sort((a, b) => Number(a.startsWith('R')) - Number(b.startsWith('R')) || numberIn(a) - numberIn(b))
const numberIn = (label: string): number => Number(label.replace(/\D/g, ''))

export const CLOTH = 'the cloth'
export const REST = 'the rest'

const groupFor = (name: string, group: string): string => (name.endsWith('length') ? capital(name.slice(4)) : group)

const END_NAMES: Readonly<Record<string, string>> = {
  'cut-end': 'Cut end',
  'bolt-end': 'Bolt end',
  'head-end': 'Head end',
  'foot-end': 'Foot end',
  'head-hem': 'Head hem',
  'foot-hem': 'Foot hem',
}

/** Does what lies before a division lie between it and the edge it is measured from? */
export const measuredFromBefore = (division: Division, cloth: CutCloth): boolean =>
  placeOf(division.measure.from, cloth) <= division.at

/** Where an edge that is measured from lies, along the axis it is measured on. */
export function placeOf(from: MeasuredFrom, cloth: CutCloth): number {
  if (from.kind === 'division') return cloth.divisions.find((each) => each.flag === from.flag)?.at ?? 0
  if (from.edge.startsWith('right')) return cloth.width
  return from.edge === 'bolt-end' || from.edge.startsWith('foot') ? cloth.length : 0
}

/** A part is found again by its rectangle. */
export const keyOf = (b: { x: number; y: number; width: number; length: number }): string =>
  `${b.x} ${b.y} ${b.width} ${b.length}`

const ORDINALS = 'first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth'.split(' ')
/** From 0: 'first', 'second' … */
export const ordinal = (n: number): string =>
  ORDINALS[n] ?? `${n + 1}${SUFFIX[(n + 1) % 10 > 3 || Math.floor(((n + 1) % 100) / 10) === 1 ? 0 : (n + 1) % 10]}`
const SUFFIX = ['th', 'st', 'nd', 'rd']

// I and O written on cloth would be 1 and 0
const LETTERS = 'ABCDEFGHJKLMNPQRSTUVWXYZ'
const letters = (n: number): string =>
  (n < LETTERS.length ? '' : letters(Math.floor(n / LETTERS.length) - 1)) + LETTERS[n % LETTERS.length]

export const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1)
