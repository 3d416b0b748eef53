import type { Copy, Way } from '@lengthwise/pieces'
import type { SewingStep } from './result.ts'

/** The sewing order, numbered through: like copies made the same way are sewn together, step by step. */
export function sewingOf(copies: readonly { readonly copy: Copy; readonly way: Way }[]): readonly SewingStep[] {
  const groups: { ids: string[]; itemIndex: number; way: Way }[] = []
  for (const { copy, way } of copies) {
    const group = groups.find((g) => g.itemIndex === copy.itemIndex && sewnAlike(g.way, way))
    if (group) group.ids.push(copy.id)
    else groups.push({ ids: [copy.id], itemIndex: copy.itemIndex, way })
  }
  let step = 0
  return groups.flatMap(({ ids, way }) =>
    way.sewing.map((line) => ({ step: ++step, item: listed(ids), text: line.text, seamLength: line.seamLength })),
  )
}

/** 'pillowcase-1', or 'pillowcase-1 to pillowcase-4' where the numbers run on. */
function listed(ids: readonly string[]): string {
  const [first] = ids
  const last = ids.at(-1)
  if (ids.length < 3 || numberOf(last!) - numberOf(first!) !== ids.length - 1) return ids.join(', ')
  return `${first} to ${last}`
}

const numberOf = (id: string): number => Number(id.slice(id.lastIndexOf('-') + 1))

const sewnAlike = (a: Way, b: Way): boolean =>
  a.sewing.length === b.sewing.length && a.sewing.every((line, i) => line.text === b.sewing[i]!.text)
