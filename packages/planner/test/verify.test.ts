import { cm, length } from '@lengthwise/units'
import { describe, expect, it } from 'vitest'
import type { CutCloth, Placed, Result } from '../src/index.ts'
import { plan, verify } from '../src/index.ts'
import { bolt, orderOf, rectangle, remnant } from './orders.ts'

/* Every broken answer is refused, each by a code of its own. */

const printed = bolt('cloth', [150], { spareEachEnd: cm(5) })
const order = orderOf(
  [
    rectangle('towel', 60, 120, { count: 3, needs: { ...rectangle('', 1, 1).needs, left: { kind: 'selvedge' } } }),
    rectangle('mat', 50, 70, {
      count: 2,
      cloth: ['sheet'],
      needs: { ...rectangle('', 1, 1).needs, foot: { kind: 'kept-hem', depth: cm(2) } },
    }),
  ],
  [
    { ...printed, print: { ...printed.print, way: 'one-way', top: 'cut-end', repeat: cm(32) } },
    remnant('sheet', 120, 100, {
      from: 'sheet',
      edges: {
        head: { kind: 'hem', depth: cm(8) },
        foot: { kind: 'hem', depth: cm(2) },
        left: { kind: 'raw' },
        right: { kind: 'raw' },
      },
    }),
  ],
)
const sound = plan(order)

const change = (name: string, how: (cloth: CutCloth) => CutCloth): Result => ({
  ...sound,
  cloths: sound.cloths.map((cloth) => (cloth.name === name ? how(cloth) : cloth)),
})
const first = (cloth: CutCloth, how: (piece: Placed) => Placed): CutCloth => ({
  ...cloth,
  placed: cloth.placed.map((piece, i) => (i === 0 ? how(piece) : piece)),
})

const broken: [string, Result][] = [
  ['outside', change('cloth', (c) => first(c, (p) => ({ ...p, y: length(0) })))],
  ['overlap', change('cloth', (c) => first(c, (p) => ({ ...p, x: c.placed[1]!.x, y: c.placed[1]!.y })))],
  ['size', change('cloth', (c) => first(c, (p) => ({ ...p, width: length(p.width - 1) })))],
  ['piece', change('cloth', (c) => first(c, (p) => ({ ...p, piece: 'mat-1' })))],
  ['edge', change('cloth', (c) => first(c, (p) => ({ ...p, edges: { ...p.edges, start: { kind: 'selvedge' } } })))],
  ['hem', change('sheet', (c) => first(c, (p) => ({ ...p, y: length(p.y === 0 ? 1 : p.y - 1) })))],
  ['print', change('cloth', (c) => first(c, (p) => ({ ...p, top: 'end' })))],
  ['phase', change('cloth', (c) => first(c, (p) => ({ ...p, phase: length(1) })))],
  ['order', change('cloth', (c) => ({ ...c, divisions: c.divisions.slice(1) }))],
  ['laid', change('cloth', (c) => ({ ...c, proof: { ...c.proof, length: length(c.proof.length + 1) } }))],
  ['buy', change('cloth', (c) => ({ ...c, buy: { ...c.buy!, length: length(c.buy!.length + cm(10)) } }))],
  ['cost', change('cloth', (c) => ({ ...c, buy: { ...c.buy!, cost: (c.buy!.cost! + 1n) as never } }))],
  ['waste', change('cloth', (c) => ({ ...c, notUsed: { ...c.notUsed, area: c.notUsed.area + 1 } }))],
  ['twice', change('cloth', (c) => first(c, (p) => ({ ...p, piece: c.placed[1]!.piece })))],
  ['label', change('cloth', (c) => first(c, (p) => ({ ...p, label: c.placed[1]!.label })))],
  ['unplaced', change('cloth', (c) => ({ ...c, placed: c.placed.slice(1) }))],
  ['count', { ...sound, pieces: sound.pieces.slice(1) }],
  ['finished', { ...sound, finished: sound.finished.map((f) => ({ ...f, width: length(f.asked.width - 1) })) }],
  ['proof', { ...sound, proof: { ...sound.proof, bound: sound.proof.value - 1n, status: 'proved' } }],
  ['missing', { ...sound, status: 'cannot-be-cut' }],
]

describe('the check of the whole answer', () => {
  it('passes a sound one', () => {
    expect(sound.status).toBe('laid')
    expect(verify(sound)).toEqual([])
  })
  it.each(broken)('refuses by the code %s', (code, result) => {
    expect(verify(result).map((refusal) => refusal.code)).toContain(code)
  })
})
