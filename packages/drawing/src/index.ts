export type * from './api.ts'
export type * from './scene.ts'
