import type { Problem } from '@lengthwise/units'
import type { Ways } from './answers.ts'
import type { ClothOnTable } from './cloth.ts'
import { checkBedSkirt, waysForBedSkirt } from './items/bed-skirt.ts'
import { checkBolster, waysForBolster } from './items/bolster.ts'
import { checkCushion, waysForCushion } from './items/cushion.ts'
import { waysForDuvetCover } from './items/duvet-cover.ts'
import { checkDuvetCover } from './items/duvet-cover-check.ts'
import { checkFittedSheet, waysForFittedSheet } from './items/fitted-sheet.ts'
import { checkFlatSheet, waysForFlatSheet } from './items/flat-sheet.ts'
import { checkPillowcase, waysForPillowcase } from './items/pillowcase.ts'
import { checkQuiltBack, waysForQuiltBack } from './items/quilt-back.ts'
import { checkRectangle, waysForRectangle } from './items/rectangle.ts'
import { checkStrips, waysForStrips } from './items/strips.ts'
import { checkThrow, waysForThrow } from './items/throw.ts'
import type { Item, Order } from './order.ts'

/** Every way to make one copy of `item` from the cloths as they lie on the table, by name. */
export function waysToMake(order: Order, item: Item, tables: ReadonlyMap<string, ClothOnTable>): Ways {
  switch (item.item) {
    case 'duvet-cover':
      return waysForDuvetCover(order, item, tables)
    case 'pillowcase':
      return waysForPillowcase(order, item, tables)
    case 'flat-sheet':
      return waysForFlatSheet(order, item, tables)
    case 'fitted-sheet':
      return waysForFittedSheet(order, item, tables)
    case 'bed-skirt':
      return waysForBedSkirt(order, item, tables)
    case 'bolster':
      return waysForBolster(order, item, tables)
    case 'cushion':
    case 'sham':
      return waysForCushion(order, item, tables)
    case 'throw':
      return waysForThrow(order, item, tables)
    case 'quilt-back':
      return waysForQuiltBack(order, item, tables)
    case 'strips':
      return waysForStrips(order, item, tables)
    case 'rectangle':
      return waysForRectangle(order, item, tables)
  }
}

/** What is wrong with one item as the plan has it, paths below `item.path`. */
export function checkItem(order: Order, item: Item): readonly Problem[] {
  switch (item.item) {
    case 'duvet-cover':
      return checkDuvetCover(order, item)
    case 'pillowcase':
      return checkPillowcase(order, item)
    case 'flat-sheet':
      return checkFlatSheet(order, item)
    case 'fitted-sheet':
      return checkFittedSheet(order, item)
    case 'bed-skirt':
      return checkBedSkirt(order, item)
    case 'bolster':
      return checkBolster(order, item)
    case 'cushion':
    case 'sham':
      return checkCushion(order, item)
    case 'throw':
      return checkThrow(order, item)
    case 'quilt-back':
      return checkQuiltBack(order, item)
    case 'strips':
      return checkStrips(order, item)
    case 'rectangle':
      return checkRectangle(order, item)
  }
}
