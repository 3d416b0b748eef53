import { expect, test } from 'vitest'

// the page's content security policy reports every attempt, also one that is caught
test('reading a plan builds no code from text', async () => {
  const built: unknown[] = []
  const original = globalThis.Function
  globalThis.Function = new Proxy(original, {
    construct: (target, given, newTarget) => {
      built.push(given)
      return Reflect.construct(target, given, newTarget)
    },
  })
  try {
    const { planSchema, readPlan, SAMPLE_PLAN } = await import('../src/index.ts')
    expect(readPlan(SAMPLE_PLAN).ok).toBe(true)
    expect(readPlan('make: [{ item: x }]').ok).toBe(false)
    planSchema()
  } finally {
    globalThis.Function = original
  }
  expect(built).toEqual([])
})
