import type { Problem } from '@lengthwise/units'
import { problem } from './check-parts.ts'
import type { Item, Size } from './order.ts'

/** A thing that has no width or no length cannot be made: the path is the key of the size. */
export function checkSizes(item: Item): readonly Problem[] {
  const found = sizeOf(item)
  if (found === null) return []
  const { key, size } = found
  if (size.width > 0 && size.length > 0) return []
  const which = size.width <= 0 ? (size.length <= 0 ? 'width and no length' : 'width') : 'length'
  return [
    problem(
      'no-size',
      `${item.path}.${key}`,
      `there is no ${which}`,
      'measure both and write them, such as 40 x 60 cm',
    ),
  ]
}

/** The size as the plan has it, and the key it stands under. */
function sizeOf(item: Item): { readonly key: string; readonly size: Size } | null {
  switch (item.item) {
    case 'fitted-sheet':
      return { key: 'mattress', size: item.mattress }
    case 'bed-skirt':
      return { key: 'base', size: item.base }
    case 'quilt-back':
      return { key: 'quilt', size: item.quilt }
    // what these have instead of a size is looked at with the rest of them
    case 'bolster':
    case 'strips':
      return null
    case 'rectangle':
      return 'cut' in item.size ? { key: 'cut', size: item.size.cut } : { key: 'finished', size: item.size.finished }
    default:
      return { key: 'finished', size: item.finished }
  }
}
