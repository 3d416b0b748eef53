import { lay } from '@lengthwise/solver'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { randomOrder } from '../../solver/test/orders.ts'
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

  it('bound no layout too high, whatever the sides to touch and the turning', () => {
    let tight = 0
    for (let seed = 1; seed <= 150; seed++) {
      const request = randomOrder(seed, { pieces: 5, width: 6 + (seed % 5), turning: true, flush: seed % 2 === 0 })
      const { width } = request.field
      const { length } = lay(request, { effort: 20_000, tidy: false })
      if (length === null) continue
      const widths = request.demands.flatMap((d) => d.postures.map((p) => p.width))
      const bounds = measuresFor(width, widths).map((measure) => {
        const sum = request.demands.reduce((total, d) => total + d.count * weigh(measure, d.postures), 0)
        return Math.ceil(sum / measure.capacity)
      })
      for (const bound of bounds) expect(bound, `seed ${seed}`).toBeLessThanOrEqual(length)
      if (Math.max(...bounds) === length) tight++
    }
    expect(tight).toBeGreaterThan(50)
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
