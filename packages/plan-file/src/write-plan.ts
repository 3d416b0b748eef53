import { Document, isCollection, isMap, visit } from 'yaml'
import { plainObject } from './plain-data.ts'

/** The keys of a plan as YAML text that reads back to the same plan; comments are not kept. */
export function writePlan(plan: unknown): string {
  const document = new Document(plainObject(plan).data ?? {})
  visit(document, {
    Scalar: (_, node) => {
      // 54.125 would be refused as ambiguous when it is read again, 54.1250 is not
      if (typeof node.value === 'number' && /^[1-9]\d{0,2}\.\d{3}$/.test(String(node.value))) node.minFractionDigits = 4
    },
    // items and cloths on several lines, what stands inside them on one: front: { cloth: stripe, joined: any }
    Collection: (_, node, above) => {
      const levels = above.filter((one) => isCollection(one)).length
      if (levels > 2 || (levels === 1 && isMap(node))) node.flow = true
    },
  })
  return document.toString({ lineWidth: 0 })
}
