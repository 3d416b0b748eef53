import type { Weights } from '../bounds/weights.ts'
import type { Kind, KindPosture, Problem } from '../problem.ts'
import type { Tree } from './blocks.ts'
import type { Finished } from './fronts.ts'
import { Reach } from './reach.ts'
import type { Strictness } from './strictness.ts'

/**
 * The same problem with each piece as wide as it may be while all sets of pieces that fit side by side still do: what no sum of other widths
 * fills beside so many of a kind is shared out among them, one kind after another (the raising of sizes of Boschetti, Hadjiconstantinou &
 * Mingozzi 2002 and Carlier, Clautiaux & Moukrim 2007; from memory). Then nothing is left over that the search would have to find out to be
 * waste, and kinds that differed in nothing else become one.
 *
 * No layout is lost: the width of a block is that of a set of its pieces which lie beside each other, one of each column's pieces,
 * and such sets fit as before. None is won, since a raised piece has room for the true one. Lengths stay as they are.
 */
export class Widened {
  readonly problem: Problem
  private readonly from: Problem
  /** per kind, those of the given problem that are this one now */
  private readonly members: readonly (readonly number[])[]

  /** Null where pieces must keep clear of a side, or flaws make it matter where the others leave room. */
  static of(problem: Problem, width: number, strictness: Strictness): Widened | null {
    const { zones, flaws } = problem
    return zones.left + zones.right + flaws.length > 0 ? null : new Widened(problem, width, strictness.widths)
  }

  private constructor(problem: Problem, width: number, strict: number) {
    this.from = problem
    const raised = raisedWidths(problem, width, strict)
    const members: number[][] = []
    const kinds: Kind[] = []
    const known = new Map<string, number>()
    for (const [kind, k] of problem.kinds.entries()) {
      const raise = (p: KindPosture, posture: number): KindPosture => ({ ...p, width: raised[kind]![posture]! })
      const postures = k.postures.map(raise)
      const key = JSON.stringify([postures.map((p) => [p.width, p.length, p.flush]), k.tie])
      const at = known.get(key) ?? kinds.length
      known.set(key, at)
      const same = kinds[at]
      const area = Math.min(...postures.map((p) => p.width * p.length))
      kinds[at] = same ? { ...same, count: same.count + k.count } : { ...k, postures, area }
      members[at] = [...(members[at] ?? []), kind]
    }
    this.problem = { ...problem, kinds }
    this.members = members
  }

  /** What pieces of the given problem weigh holds for those raised: any of a kind may be the lightest of its members. */
  weights(given: readonly Weights[] | null): readonly Weights[] | null {
    const lightest = ({ values }: Weights) => this.members.map((of) => Math.min(...of.map((kind) => values[kind]!)))
    return given === null ? null : given.map((w) => ({ ...w, values: lightest(w) }))
  }

  /** A block of raised pieces as one of the true pieces. */
  restored(block: Finished): Finished {
    const given = this.members.map(() => ({ at: 0, used: 0 }))
    const tree = this.trueTree(block.tree, given)
    return { ...block, tree, width: tree.width }
  }

  private trueTree(tree: Tree, given: readonly { at: number; used: number }[]): Tree {
    if (tree.how === 'piece') {
      const to = given[tree.kind]!
      const members = this.members[tree.kind]!
      if (to.used === this.from.kinds[members[to.at]!]!.count) {
        to.at++
        to.used = 0
      }
      to.used++
      const kind = members[to.at]!
      return { ...tree, kind, width: this.from.kinds[kind]!.postures[tree.posture]!.width }
    }
    const first = this.trueTree(tree.first, given)
    const second = this.trueTree(tree.second, given)
    const width = tree.how === 'beside' ? first.width + second.width : Math.max(first.width, second.width)
    return { ...tree, first, second, width }
  }
}

/** For each kind's postures: the widest first, each among the others as they are by then. */
function raisedWidths({ kinds }: Problem, width: number, strict: number): number[][] {
  const raised = kinds.map((k) => k.postures.map((p) => p.width))
  const all = kinds.flatMap((k, kind) => k.postures.map((_, posture) => ({ kind, posture })))
  all.sort((a, b) => raised[b.kind]![b.posture]! - raised[a.kind]![a.posture]!)
  for (const { kind, posture } of all) {
    const reach = new Reach(
      kinds.map(({ count }, other) => ({ count, sizes: [...new Set(raised[other])] })),
      width,
    )
    const own = raised[kind]![posture]!
    let most = width
    for (let n = 1; n <= kinds[kind]!.count && n * own <= width; n++) {
      const left = width - n * own
      reach.turnTo(kinds.map(({ count }, other) => (other === kind ? count - n : count)))
      const gap = reach.gapOf(left)
      most = Math.min(most, own + Math.floor(gap / n) + strict)
    }
    raised[kind]![posture] = most
  }
  return raised
}
