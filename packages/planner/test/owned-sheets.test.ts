import { cm } from '@lengthwise/units'
import { describe, expect, it } from 'vitest'
import { plan } from '../src/index.ts'
import { bolt, orderOf, rectangle, remnant } from './orders.ts'

/* Sheets and remnants at hand, worked by hand; no source but geometry. */

describe('sheets with a flaw', () => {
  // on 110 × 110 with a flaw at (20, 20), 5 × 8, three squares of 50 lie clear: at (0, 28), (50, 0) and (50, 50)
  const sheets = (on: number | null) =>
    remnant('sheet', 110, 110, {
      from: 'sheet',
      count: 2,
      flaws: [{ x: cm(20), y: cm(20), width: cm(5), length: cm(8), on }],
    })
  const squares = (count: number, cloth = ['sheet']) => rectangle('mat', 50, 50, { count, cloth })

  it.each([
    [5, null],
    [6, null],
    [7, 1],
  ])('%i squares come from two sheets, the flaw on %s', (count, on) => {
    const result = plan(orderOf([squares(count)], [sheets(on)]))
    expect(result.status).toBe('laid')
    expect(result.cloths.flatMap((c) => c.placed)).toHaveLength(count)
  })

  it('nothing is bought beside them when they are enough', () => {
    const result = plan(orderOf([squares(6, ['cloth', 'sheet'])], [bolt('cloth', [150]), sheets(null)]))
    expect(result.proof.value).toBe(0n)
    expect(result.buy).toEqual([])
  })

  it('says what was not found as not found, and proves nothing', () => {
    const result = plan(orderOf([squares(8)], [sheets(null)]), { effort: 'quick' })
    expect(result.status).toBe('cannot-be-cut')
    if (result.proof.status === 'proved') expect(result.missing[0]?.words).toMatch(/not enough/)
    else expect(result.missing[0]?.words).toMatch(/found within this effort/)
  })
})
