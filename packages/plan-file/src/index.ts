export { NAMED_SIZES, SIZE_KINDS, sizeNamed } from '@lengthwise/pieces'
export type * from './api.ts'
export { parsePlan, readPlan, readPlanObject } from './read-plan.ts'
