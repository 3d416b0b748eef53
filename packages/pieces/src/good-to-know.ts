import type { Remark } from './answers.ts'
import type { Item, Order } from './order.ts'

/** Remarks that are neither problem nor caution, each at most once, in a fixed order. Sources are named in the text. */
export function goodToKnowFor(order: Order): readonly Remark[] {
  const { cloths, items } = order
  const remarks: Remark[] = []
  const say = (code: string, when: boolean, text: string): void => {
    if (when) remarks.push({ code, text })
  }

  say(
    'measure-the-insert',
    items.some((item) => item.item === 'duvet-cover' && item.sizeName !== null),
    'Names of duvet sizes differ between makers by several centimetres: measure the duvet itself and give its size (oleanderforhome, Why don’t my sheets fit).',
  )
  say(
    'measure-the-sheet',
    cloths.some((cloth) => cloth.from === 'sheet'),
    'The label of a flat sheet may give its size before hemming: measure from fold to fold, and each hem from fold to stitching (sizes.com, sheets).',
  )
  say(
    'measure-the-shrinkage',
    cloths.some((cloth) => cloth.shrinks.along > 0 || cloth.shrinks.across > 0),
    'Shrinkage is measured: mark a square of at least 35 cm (14 in) on the cloth, wash and dry it as the finished things will be, and measure both ways (after ISO 5077).',
  )
  say(
    'never-washed',
    order.wash === 'none',
    'This plan leaves shrinking out: what is made may come out smaller after its first wash.',
  )
  say(
    'measure-the-repeat',
    cloths.some((cloth) => cloth.print.repeat > 0),
    'The repeat on a label is approximate: measure it on the cloth over several repeats before buying (btalmadge).',
  )
  say(
    'one-way',
    cloths.some((cloth) => cloth.print.way === 'one-way'),
    'The print has a top: mark the head end of every piece on its wrong side as it comes off the cloth.',
  )
  say(
    'find-the-motif',
    cloths.some((cloth) => cloth.print.motif !== null && cloth.print.motif.first === null),
    'Where the first motif lies is not known, so one repeat more is bought: move the whole layout until the motif is centred.',
  )
  say(
    'match-at-the-selvedge',
    cloths.some((cloth) => cloth.print.match !== 'none' && cloth.print.way !== 'plain'),
    'Matched seams lie at the allowance inside the selvedge, or at the match line of the plan: see before buying that the print meets there. If it meets farther in, panels come out narrower (common practice, no source).',
  )
  say(
    'match-without-selvedges',
    cloths.some(
      ({ print, unusedSelvedge }) =>
        print.match !== 'none' && print.repeat + print.acrossRepeat > 0 && unusedSelvedge > 0,
    ),
    'With the selvedges trimmed off nothing keeps the seams of a matched print on its match line: leave unused-selvedge out and give the match line, measured from the selvedge, instead.',
  )
  say(
    'off-grain-print',
    cloths.some((cloth) => cloth.divideBy === 'tearing' && cloth.print.way !== 'plain'),
    'A tear follows the thread. If the print is not straight with the thread, cut by the print instead (quiltingboard 6120, 6606710).',
  )
  say(
    'tear-a-sample',
    cloths.some((cloth) => cloth.divideBy === 'tearing'),
    'Tear a sample first: most linens, blends, knits, twill and sateen do not tear well; draw a thread and cut along it instead (thirdbornclothing, on grain).',
  )
  say(
    'as-wide-as-the-cloth',
    items.some(keepsBothSelvedges),
    'Where both selvedges are kept, a sheet of one piece comes out exactly as wide as the cloth.',
  )
  say(
    'children-sheets-in-one-piece',
    items.some((item) => item.cot),
    'Sheets for children are cut in one piece, without joins (GOST 31307-2005, 3.2.1).',
  )
  say(
    'straight-end',
    cloths.some((cloth) => cloth.from === 'bolt' && cloth.sold),
    'Ask the shop to tear the cloth or to cut it straight by the thread: a crooked end costs some of what was paid for.',
  )
  return remarks
}

const keepsBothSelvedges = (item: Item): boolean =>
  item.item === 'flat-sheet' && item.hems.left === 'selvedge' && item.hems.right === 'selvedge'
