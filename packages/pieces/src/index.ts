export type * from './answers.ts'
export type * from './cloth.ts'
export type * from './order.ts'
export type * from './way.ts'
