export * from './model.ts'
