import { NAMED_SIZES } from '@lengthwise/pieces'
import * as z from 'zod'
import { planShape } from './schema/plan.ts'

/**
 * JSON Schema of the plan file: every key with what it means, its default and its other names, and the named sizes.
 * Defaults are those of a plan in centimetres.
 */
export function planSchema(): object {
  const { $schema, ...rest } = z.toJSONSchema(planShape('cm'), { io: 'input', target: 'draft-2020-12' })
  return {
    $schema,
    title: 'Plan',
    description:
      'Lengths are text with a unit: 45 in, 1 5/8 in, 112 cm, 1.12 m, 2 1/4 yd; a bare number, fraction or not, takes measure-in. ' +
      'Sizes are W x L, across the bed first; pillowcases and cushions short side first.',
    ...rest,
    $comment: `Named sizes: ${NAMED_SIZES.map((size) => `${size.name} (${size.kind}, ${size.region})`).join('; ')}`,
  }
}
