export type { Fonts } from './write.ts'
export { write } from './write.ts'
