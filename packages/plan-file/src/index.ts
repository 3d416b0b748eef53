export { NAMED_SIZES } from '@lengthwise/pieces'
export type * from './api.ts'
export { parsePlan, readPlan, readPlanObject } from './read-plan.ts'
