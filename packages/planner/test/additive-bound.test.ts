import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { measuresFor, weigh } from '../src/additive-bound.ts'

describe('measures that add up', () => {
  it('never weigh pieces side by side above their capacity', () => {
    const bars = fc.integer({ min: 5, max: 60 }).chain((across) =>
      fc.record({
        across: fc.constant(across),
        widths: fc.array(fc.integer({ min: 1, max: across }), { minLength: 1, maxLength: 8 }),
        others: fc.array(fc.integer({ min: 1, max: across }), { maxLength: 8 }),
      }),
    )
    fc.assert(
      fc.property(bars, ({ across, widths, others }) => {
        const bar: number[] = []
        for (const width of widths) if (bar.reduce((sum, w) => sum + w, width) <= across) bar.push(width)
        for (const measure of measuresFor(across, [...widths, ...others])) {
          const weight = bar.reduce((sum, width) => sum + measure.weight({ width, length: 1, flush: 0 }), 0)
          expect(weight).toBeLessThanOrEqual(measure.capacity)
        }
      }),
      { seed: 1, numRuns: 3000 },
    )
  })

  it('count two selvedges to a line', () => {
    const [selvedges] = measuresFor(10, []).slice(-1)
    expect(selvedges?.capacity).toBe(2)
    expect(weigh(selvedges!, [{ width: 3, length: 7, flush: 3 }])).toBe(14)
  })

  it('count a piece wider than half as the whole width', () => {
    const wide = { width: 6, length: 7, flush: 0 }
    const bound = Math.max(...measuresFor(10, [6]).map((m) => Math.ceil((3 * weigh(m, [wide])) / m.capacity)))
    expect(bound).toBe(21)
  })
})
