import type { Length, Problem } from '@lengthwise/units'
import { printLength } from '@lengthwise/units'
import { problem } from './check-parts.ts'
import { checkSizes } from './check-sizes.ts'
import type { Cloth } from './cloth.ts'
import type { Order } from './order.ts'
import { checkItem } from './ways-to-make.ts'

/** Everything that makes no sense in an order that reads well, all at once: cloths first, then items. */
export function checkOrder(order: Order): readonly Problem[] {
  return [
    ...order.cloths.flatMap((cloth, i) => checkCloth(order, cloth, `cloth[${i}]`)),
    ...order.items.flatMap((item) => {
      // of what has no size nothing else can be said
      const sizeless = checkSizes(item)
      return sizeless.length > 0 ? sizeless : checkItem(order, item)
    }),
  ]
}

const ALL = 1_000_000

function checkCloth(order: Order, cloth: Cloth, path: string): readonly Problem[] {
  const say = (l: Length): string => printLength(l, order.measureIn)
  const problems: Problem[] = []
  const add = (code: string, below: string, message: string, hint: string): void => {
    problems.push(problem(code, `${path}.${below}`, message, hint))
  }

  // shrinkage
  for (const way of ['along', 'across'] as const)
    if (cloth.shrinks[way] >= ALL)
      add('shrinkage', `shrinks.${way}`, 'nothing would be left of the cloth', 'give a share below 100 %, such as 5 %')

  // print
  const { print } = cloth
  if (print.match !== 'none' && print.repeat === 0 && print.acrossRepeat === 0)
    add(
      'no-repeat',
      'print.repeat',
      `a ${print.match} match needs a repeat`,
      'measure the repeat along the selvedge, or take match: none',
    )
  if (print.motif !== null && print.repeat === 0)
    add(
      'no-repeat',
      'print.repeat',
      'a motif can be centred only where it repeats',
      'measure the repeat along the selvedge, or leave motif out',
    )
  if (print.match === 'half-drop' && print.repeat === 0 && print.acrossRepeat > 0)
    add(
      'no-repeat',
      'print.repeat',
      'a half-drop match needs the repeat along the cloth',
      'measure it along the selvedge, or take match: straight',
    )
  const narrowestSeam = Math.min(...order.items.map((item) => item.seam.allowance))
  if (print.match !== 'none' && print.matchLine > 0 && print.matchLine < narrowestSeam)
    add(
      'match-line',
      'print.match-line',
      `the print meets only ${say(print.matchLine)} inside the selvedge, closer than the seam allowance`,
      `take a seam allowance of at most ${say(print.matchLine)}, or measure the match line again`,
    )

  if (cloth.have > 0 && cloth.widths.length > 1)
    add(
      'have-widths',
      'have',
      'what is already owned has one width, and several are given here',
      'write the owned length as a cloth of its own, with its width, have, and sold: no',
    )

  // there is some of it
  const widths = cloth.size === null ? cloth.widths.map((w) => w.width) : [cloth.size.width]
  const sized = cloth.size === null ? 'widths' : 'size'
  if (widths.length === 0)
    add('no-cloth', sized, 'a bolt without a width', 'give the widths the shop has, such as [150 cm]')
  if (widths.some((width) => width <= 0) || cloth.size?.length === 0)
    add('no-cloth', sized, 'there is no cloth in a size of 0', 'measure the cloth and write its size')
  if (cloth.from === 'bolt' && !cloth.sold && cloth.have <= 0)
    add('no-cloth', 'have', 'this bolt is not sold and none of it is owned', 'give the length you have, or sold: yes')

  // what is trimmed and what is kept
  for (const width of widths)
    if (width > 0 && 2 * cloth.unusedSelvedge >= width)
      add(
        'unused-selvedge',
        'unused-selvedge',
        `nothing would be left of a width of ${say(width)}`,
        'give what is trimmed off each side, such as 1 cm',
      )
  if (cloth.size !== null) {
    const deep = (side: keyof Cloth['edges']): number => {
      const edge = cloth.edges[side]
      return edge.kind === 'hem' ? edge.depth : 0
    }
    if (cloth.size.length > 0 && deep('head') + deep('foot') >= cloth.size.length)
      add(
        'hem-too-deep',
        'hems',
        'the hems at head and foot are deeper than the sheet is long',
        'measure the finished depth of each hem',
      )
    if (cloth.size.width > 0 && deep('left') + deep('right') >= cloth.size.width)
      add(
        'hem-too-deep',
        'hems',
        'the hems at the sides are deeper than the sheet is wide',
        'measure the finished depth of each hem',
      )
    if (cloth.size.length > 0 && 2 * cloth.spareEachEnd >= cloth.size.length)
      add(
        'spare-each-end',
        'spare-each-end',
        'squaring the ends would use the whole length up',
        'give what is trimmed off each end, such as 2 cm',
      )
  }
  for (const side of cloth.mustKeep)
    if (cloth.edges[side].kind !== 'hem')
      add('keep', `keep.${side}`, `there is no hem at the ${side} to keep`, 'give the hem its depth, or leave keep out')

  // flaws
  cloth.flaws.forEach((flaw, i) => {
    const size = cloth.size
    if (size !== null && (flaw.x + flaw.width > size.width || flaw.y + flaw.length > size.length))
      add('flaw', `flaws[${i}]`, 'the flaw reaches beyond the cloth', 'measure x from the left and y from the head end')
    if (flaw.on !== null && flaw.on > cloth.count)
      add(
        'flaw',
        `flaws[${i}].on`,
        `there are only ${cloth.count} of this cloth`,
        `give a number from 1 to ${cloth.count}`,
      )
  })
  return problems
}
