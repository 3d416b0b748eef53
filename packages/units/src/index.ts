export * from './length.ts'
export * from './money.ts'
export * from './problem.ts'
export * from './share.ts'
