import type { Item } from '@lengthwise/pieces'
import type { Form } from './result.ts'

/** Does the plan give the size of the cut piece, so that the finished one is not known? */
export const isCutSize = (item: Item): boolean => item.item === 'rectangle' && 'cut' in item.size

/** What width and length leave out of the finished size of an item. */
export function formOf(item: Item): Form | null {
  switch (item.item) {
    case 'pillowcase':
      return item.style === 'flanged' ? { kind: 'flange', size: item.flange } : null
    case 'cushion':
    case 'sham':
      return item.flange > 0 ? { kind: 'flange', size: item.flange } : null
    case 'bed-skirt':
      return { kind: 'drop', size: item.drop }
    case 'fitted-sheet':
      return { kind: 'depth', size: item.mattress.depth }
    case 'bolster':
      return { kind: 'diameter', size: item.diameter }
    default:
      return null
  }
}
