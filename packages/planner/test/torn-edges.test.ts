import { cm } from '@lengthwise/units'
import { expect, it } from 'vitest'
import { plan } from '../src/index.ts'
import { bolt, orderOf, rectangle, remnant } from './orders.ts'

/* What tearing costs in threads, worked by hand (common practice, no source). */

it('an edge that is the selvedge loses nothing, though nothing asked for one', () => {
  // two side by side on 101: each has one selvedge and one torn edge, 50.5; two rows of 41
  const order = orderOf(
    [rectangle('towel', 50, 40, { count: 4 })],
    [bolt('cloth', [101], { lostPerTear: cm(0.5), spareEachEnd: cm(5) })],
  )
  const result = plan(order)
  const [cloth] = result.cloths
  expect(cloth?.placed).toHaveLength(4)
  expect(cloth?.placed.map((p) => [p.width, p.length])).toEqual(Array(4).fill([cm(50.5), cm(41)]))
  expect(cloth?.proof).toMatchObject({ status: 'proved', length: cm(82) })
  expect(cloth?.buy?.length).toBe(cm(100))
})

it('a hem that stays on a piece loses nothing, a raw edge is straightened first', () => {
  const sheet = remnant('sheet', 52, 61, {
    from: 'sheet',
    lostPerTear: cm(1),
    edges: {
      head: { kind: 'hem', depth: cm(5) },
      foot: { kind: 'raw' },
      left: { kind: 'selvedge' },
      right: { kind: 'raw' },
    },
  })
  const needs = { ...rectangle('', 1, 1).needs, head: { kind: 'kept-hem' as const, depth: cm(2) } }
  const result = plan(orderOf([rectangle('case', 51, 60, { cloth: ['sheet'], needs })], [sheet]))
  expect(result.cloths[0]?.placed[0]).toMatchObject({ x: 0, y: 0, width: cm(52), length: cm(61) })
  const tooSmall = plan(
    orderOf(
      [rectangle('case', 51, 60, { cloth: ['sheet'], needs })],
      [{ ...sheet, size: { width: cm(51.5), length: cm(61) } }],
    ),
  )
  expect(tooSmall.status).toBe('cannot-be-cut')
})
