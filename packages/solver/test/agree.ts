import type { Answer, Request } from '../src/index.ts'
import { check, lay } from '../src/index.ts'
import { isFew } from './every-rule.ts'
import { naiveLength } from './naive.ts'
import { sameOrders } from './same-order.ts'

/** What comes of one order, laid as it is, mirrored, shuffled and scaled, and held against the naive method. */
export interface Agreement {
  /** what is wrong, in words; empty when all agree */
  readonly faults: readonly string[]
  readonly answer: Answer
  /** laid as it is, nothing was left open: shortest, or shown to be impossible */
  readonly proved: boolean
  /** the naive method was asked */
  readonly compared: boolean
}

/** Where it is said that nothing at all works, nothing up to this length is tried. */
const LONG = 12

export function agreement(request: Request, units: number, effort: number): Agreement {
  const faults: string[] = []
  const laid = (each: Request, how: string): Answer => {
    const answer = lay(each, { effort })
    for (const fault of check(each, answer)) faults.push(`${how}: ${fault.code}: ${fault.message}`)
    return answer
  }
  const answer = laid(request, 'as it is')
  const here = reach(request, answer)
  for (const { how, request: other, times } of sameOrders(request, units)) {
    const there = reach(other, laid(other, how))
    if (times === null) {
      if (here.never ? there.most !== Number.POSITIVE_INFINITY : there.never && here.most !== Number.POSITIVE_INFINITY)
        faults.push(`${how}: can be laid in one of the two only`)
    } else if (there.least > here.most * times || here.least * times > there.most)
      faults.push(`${how}: ${show(there)}, not ${times} times ${show(here)}`)
  }
  // a layout that was not found says nothing that the naive method could hold against it
  const compared = isFew(request) && (answer.length !== null || here.never)
  if (compared) {
    const truth = naiveLength(request, answer.length ?? LONG) ?? Number.POSITIVE_INFINITY
    if (truth < here.least || truth > here.most) faults.push(`the naive method says ${truth}, not ${show(here)}`)
  }
  return { faults, answer, proved: here.least === here.most, compared }
}

/** The shortest length lies between these; both infinite where it is shown that there is no layout. */
interface Reach {
  readonly least: number
  readonly most: number
  readonly never: boolean
}

function reach({ field }: Request, { status, length, bound }: Answer): Reach {
  const most = length ?? Number.POSITIVE_INFINITY
  const never = status === 'infeasible' || bound > (field.length ?? Number.POSITIVE_INFINITY)
  return { least: never ? Number.POSITIVE_INFINITY : bound, most, never }
}

const show = ({ least, most }: Reach): string => (least === most ? `${most}` : `${least} to ${most}`)
