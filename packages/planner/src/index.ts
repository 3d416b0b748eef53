export type * from './result.ts'
