import type { Length, Problem } from '@lengthwise/units'
import { length, printLength } from '@lengthwise/units'
import type { Cloth } from './cloth.ts'
import type { Run } from './cut-size.ts'
import { runsOf } from './cut-size.ts'
import type { Edge, EdgeNeed, FaceSpec, Item, Order } from './order.ts'
import { EDGES } from './order.ts'

/* Checks that several items share. Each answers problems with a path below the item and the next step as hint. */

export const problem = (code: string, path: string, message: string, hint: string): Problem => ({
  code,
  path,
  message,
  hint,
})

/** The cloths of `names`; a name that no cloth has is the reader's problem. */
export const clothsNamed = (order: Order, names: readonly string[]): readonly Cloth[] =>
  order.cloths.filter((cloth) => names.includes(cloth.name))

/** An allowance is more than nothing. */
export function checkSeam(item: Item): readonly Problem[] {
  return item.seam.allowance > 0
    ? []
    : [problem('seam-allowance', `${item.path}.seam`, 'the seam has no allowance', 'give an allowance such as 1.5 cm')]
}

/** How a face may be joined: seams narrower than panels, runs the print allows, nothing joined for a cot. */
export function checkFaceSpec(order: Order, item: Item, spec: FaceSpec, path: string): readonly Problem[] {
  const problems: Problem[] = []
  const say = (l: Length): string => printLength(l, order.measureIn)
  const mayJoin = spec.joined !== 'one-piece' && !item.cot
  if (mayJoin && spec.smallestPanel > 0 && spec.smallestPanel <= 2 * item.seam.allowance)
    problems.push(
      problem(
        'seam-wider-than-panel',
        `${path}.smallest-panel`,
        `a panel of ${say(spec.smallestPanel)} would be used up by its two seams of ${say(item.seam.allowance)}`,
        `make the smallest panel wider than ${say(length(2 * item.seam.allowance))}, or the seam narrower`,
      ),
    )
  if (typeof spec.centre !== 'string' && spec.centre <= 0)
    problems.push(problem('centre', `${path}.centre`, 'the centre has no width', 'give a finished width, full or any'))
  if (item.cot && spec.joined !== 'one-piece' && spec.joined !== 'any')
    problems.push(
      problem(
        'cot-joined',
        `${path}.joined`,
        'a child’s sheet is made of one piece (GOST 31307-2005, 3.2.1), and so is everything for a cot here',
        'take joined: one-piece, and a cloth wide enough',
      ),
    )
  problems.push(...checkRuns(order, spec.cloth, spec.lengthRuns, `${path}.length-runs`))
  if (spec.band !== null && spec.band.depth <= 0)
    problems.push(
      problem('band', `${path}.band`, 'the band has no depth', 'give a finished depth, or leave the band out'),
    )
  return problems
}

/** A one-way print decides how the length runs: the contrary is a mistake where no cloth named can serve. */
export function checkRuns(
  order: Order,
  names: readonly string[],
  lengthRuns: Run | 'either',
  path: string,
): readonly Problem[] {
  const cloths = clothsNamed(order, names)
  if (cloths.some((cloth) => runsOf(cloth, lengthRuns).length > 0)) return []
  return cloths.map((cloth) =>
    problem(
      'length-runs',
      path,
      `the top of the print on ${cloth.name} lies toward the ${cloth.print.top}, so the length cannot run ${lengthRuns}`,
      `take length-runs: ${lengthRuns === 'along' ? 'across' : 'along'}, or leave it out`,
    ),
  )
}

/** A need for a selvedge or a kept hem that none of the cloths can meet. */
export function checkClothNeeds(
  order: Order,
  names: readonly string[],
  needs: Readonly<Record<Edge, EdgeNeed>>,
  path: string,
): readonly Problem[] {
  const cloths = clothsNamed(order, names)
  if (cloths.length === 0) return []
  return EDGES.flatMap((edge) => {
    const need = needs[edge]
    if (need.kind === 'none' || cloths.some((cloth) => offers(cloth, need))) return []
    const what = need.kind === 'selvedge' ? 'selvedge' : 'hem of that depth'
    return [
      problem(
        need.kind === 'selvedge' ? 'no-selvedge' : 'no-hem',
        `${path}.${edge}`,
        `no cloth named here has a ${what} to keep`,
        need.kind === 'selvedge'
          ? 'name a cloth with selvedges and no unused-selvedge, or leave the need out'
          : 'name a flat sheet with such a hem, or leave the need out',
      ),
    ]
  })
}

function offers(cloth: Cloth, need: EdgeNeed): boolean {
  const edges = Object.values(cloth.edges)
  if (need.kind === 'selvedge') return cloth.unusedSelvedge === 0 && edges.some((edge) => edge.kind === 'selvedge')
  return need.kind === 'kept-hem' && edges.some((edge) => edge.kind === 'hem' && edge.depth >= need.depth)
}
