import type { Side } from '@lengthwise/pieces'
import { cm } from '@lengthwise/units'
import { describe, expect, it } from 'vitest'
import { plan, verify } from '../src/index.ts'
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

describe('a hem that must be kept', () => {
  const sheet = (mustKeep: readonly Side[], width = 200, count = 1) =>
    remnant('sheet', width, 230, {
      from: 'sheet',
      count,
      mustKeep,
      edges: {
        head: { kind: 'hem', depth: cm(10) },
        foot: { kind: 'hem', depth: cm(2.5) },
        left: { kind: 'selvedge' },
        right: { kind: 'selvedge' },
      },
    })
  const towels = (count: number) => rectangle('towel', 60, 100, { count, cloth: ['sheet'] })

  it('stays whole on a remnant when no piece needs it', () => {
    const result = plan(orderOf([towels(2)], [sheet(['head'])]))
    const [cloth] = result.cloths
    expect(cloth?.remnants.find((r) => r.y === 0)).toMatchObject({ x: 0, width: cm(200) })
    expect(verify(result)).toEqual([])
    // 20 × 50 is worth keeping: 230 - 2.5 - 20 leaves two rows of 100, six towels
    expect(plan(orderOf([towels(6)], [sheet(['head'])])).status).toBe('laid')
    expect(plan(orderOf([towels(6)], [sheet(['head', 'foot'])])).status).toBe('cannot-be-cut')
  })

  it('ends on a piece that needs it, over its whole run', () => {
    const needs = { ...towels(1).needs, head: { kind: 'kept-hem' as const, depth: cm(5) } }
    // 60 beside 60: what is left of the hem is worth keeping; beside 190 it is not
    const few = plan(orderOf([{ ...towels(2), needs }], [sheet(['head'])]))
    expect(few.status).toBe('laid')
    expect(verify(few)).toEqual([])
    const wide = rectangle('sheet top', 190, 100, { cloth: ['sheet'], needs })
    expect(plan(orderOf([wide], [sheet(['head'])])).status).toBe('cannot-be-cut')
    expect(plan(orderOf([wide], [sheet(['foot'])])).status).toBe('laid')
  })

  it('leaves as many pieces on a sheet as keep it, though one more would go on', () => {
    // 3 × 62 leave 14 of the hem on waste: two on one sheet, the third on the other
    const needs = { ...towels(1).needs, head: { kind: 'kept-hem' as const, depth: cm(5) } }
    const result = plan(
      orderOf([{ ...rectangle('top', 62, 150, { count: 3, cloth: ['sheet'], needs }) }], [sheet(['head'], 200, 2)]),
    )
    expect(result.cloths.map((c) => c.placed.length)).toEqual([2, 1])
    expect(verify(result)).toEqual([])
  })

  it('is not said to be in the way of pieces that only the sharing tried leaves without room', () => {
    /*
     * On 190 × 230, hems 10 and 2.5, a deep piece lies only below a top, a broad one 20 or more from the head. One top to each sheet
     * does it: below it a deep piece, beside it the strip and 20 from the head a broad piece. With both tops and the third on one
     * sheet, the other has a deep piece and no top, and a strip of 20 is in its way.
     */
    const needs = { ...towels(1).needs, head: { kind: 'kept-hem' as const, depth: cm(5) } }
    const cloth = ['sheet']
    const tops = rectangle('top', 60, 15, { count: 2, cloth, needs })
    const third = rectangle('third', 70, 20, { cloth, needs })
    const deep = rectangle('deep', 60, 212, { count: 2, cloth })
    const broad = rectangle('broad', 130, 207, { count: 2, cloth })
    const result = plan(orderOf([tops, third, deep, broad], [sheet(['head'], 190, 2)]))
    if (result.status === 'laid') expect(verify(result)).toEqual([])
    else expect(result.proof.status).not.toBe('proved')
  })

  describe('and pieces that could lie at another hem', () => {
    const eitherHem = { ...towels(1).needs, head: { kind: 'kept-hem' as const, depth: cm(2) } }
    const top = (count: number) => rectangle('top', 190, 15, { count, cloth: ['sheet'], needs: eitherHem })
    const body = (long: number, count: number) => rectangle('body', 190, long, { count, cloth: ['sheet'] })

    it.each([1, 2])('ends on them where a strip of its own leaves no room: %i sheets', (count) => {
      // 20 at the head, 212 and the top, 15, at the foot are more than 230; 15, 212 and a foot hem of 2.5 are not
      const result = plan(orderOf([top(count), body(212, count)], [sheet(['head'], 190, count)]))
      expect(result.cloths.map((c) => c.placed.map((p) => p.y))).toEqual(Array(count).fill([0, cm(15)]))
      expect(verify(result)).toEqual([])
    })

    it('stays on a strip where there is room for one', () => {
      const result = plan(orderOf([top(1), body(190, 1)], [sheet(['head'], 190)]))
      expect(result.cloths[0]?.placed.map((p) => p.y).toSorted((a, b) => a - b)).toEqual([cm(20), cm(215)])
      expect(verify(result)).toEqual([])
    })

    it('is kept at both ends, one piece or two', () => {
      for (const count of [1, 2]) {
        const result = plan(orderOf([top(count)], [sheet(['head', 'foot'], 190)]))
        expect(result.cloths.map((c) => c.placed.length)).toEqual([count])
        expect(verify(result)).toEqual([])
      }
    })
  })

  it('is refused when it ends on waste', () => {
    const result = plan(orderOf([towels(2)], [sheet(['head'])]))
    const spoilt = result.cloths.map((c) => ({ ...c, remnants: c.remnants.filter((r) => r.y > 0) }))
    expect(verify({ ...result, cloths: spoilt }).map((f) => f.code)).toContain('must-keep')
  })
})
