import type { Length, Share } from '@lengthwise/units'
import { beforeShrinking, length, NO_SHARE, roundUpTo } from '@lengthwise/units'
import type { Cloth } from './cloth.ts'
import type { Order, Size } from './order.ts'

/** How the length of a piece lies on the cloth. */
export type Run = 'along' | 'across'

/** What a piece of `cloth` loses in the wash after sewing, by the piece's own directions; nothing when it was washed before. */
export function shrinksBy(
  order: Pick<Order, 'wash'>,
  cloth: Pick<Cloth, 'shrinks'>,
  run: Run,
): { readonly width: Share; readonly length: Share } {
  if (order.wash !== 'after-sewing') return { width: NO_SHARE, length: NO_SHARE }
  const { along, across } = cloth.shrinks
  return run === 'along' ? { width: across, length: along } : { width: along, length: across }
}

/** Finished ÷ (1 − s) + allowances, up to the marking step: allowances do not grow. */
export function cutLength(order: Pick<Order, 'markTo'>, finished: Length, s: Share, allowances: Length): Length {
  return roundUpTo(length(beforeShrinking(finished, s) + allowances), order.markTo)
}

/** `cutLength` both ways. `allowances`: the two at the ends of each direction together. */
export function cutSize(order: Order, cloth: Cloth, run: Run, finished: Size, allowances: Size): Size {
  const s = shrinksBy(order, cloth, run)
  return {
    width: cutLength(order, finished.width, s.width, allowances.width),
    length: cutLength(order, finished.length, s.length, allowances.length),
  }
}

/**
 * The runs a length may take on a cloth. A one-way print decides it: the head end lies toward the top of the print.
 * Empty when the plan asks for the contrary.
 */
export function runsOf(cloth: Cloth, asked: Run | 'either'): readonly Run[] {
  const { print } = cloth
  const printed: readonly Run[] =
    print.way !== 'one-way'
      ? ['along', 'across']
      : print.top === 'cut-end' || print.top === 'bolt'
        ? ['along']
        : ['across']
  return asked === 'either' ? printed : printed.filter((run) => run === asked)
}

/**
 * As `runsOf`, but the two runs as one `either` where they give the same cut size, for pieces that need not be joined:
 * the layout then chooses. They differ only when the piece shrinks differently along and across after sewing.
 */
export function runsToCut(order: Order, cloth: Cloth, asked: Run | 'either'): readonly (Run | 'either')[] {
  const runs = runsOf(cloth, asked)
  const alike = order.wash !== 'after-sewing' || cloth.shrinks.along === cloth.shrinks.across
  return runs.length === 2 && alike ? ['either'] : runs
}

/** Smallest whole number of units not below a ÷ n. */
export const shareOut = (a: number, n: number): Length => length(Math.ceil(a / n))
