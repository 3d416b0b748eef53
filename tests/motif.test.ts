import { readPlan } from '@lengthwise/plan-file'
import type { Result } from '@lengthwise/planner'
import { plan, verify } from '@lengthwise/planner'
import { cm } from '@lengthwise/units'
import { expect, it } from 'vitest'

/* A motif centred on every face, where it is not known how far the first one lies from the cut end. */

function planned(make: string): Result {
  const read = readPlan(`
plan: 1
title: Motif
wash: none
make:
${make}
cloth:
  - name: print
    from: bolt
    widths: [220 cm]
    sold-by: 10 cm
    spare-each-end: 5 cm
    print: { way: one-way, repeat: 64 cm, motif: centred }
`)
  if (!read.ok) throw new Error(read.problems.map((p) => `${p.path}: ${p.message}`).join('\n'))
  const result = plan(read.value)
  expect(verify(result)).toEqual([])
  return result
}

const COVER = `
  - item: duvet-cover
    finished: 200 x 200 cm
    front: { cloth: print }
    back: { cloth: print }
    opening: { kind: zip, at: foot }`

it('a motif not yet found adds one repeat to the buy, once: 203 + 256 laid, 64 and 10 more, so 5.4 m', () => {
  const { cloths, proof } = planned(COVER)
  const [cloth] = cloths
  expect(cloth?.proof).toMatchObject({ status: 'proved', length: cm(459) })
  expect(cloth?.buy?.length).toBe(cm(540))
  expect(proof.status).toBe('proved')
  expect(cloth?.placed.map((p) => p.y)).toEqual([cm(5), cm(261)])
})

it('a motif not yet found lies in the same place of the repeat on every face of every item', () => {
  const { cloths } = planned(`${COVER}
  - item: cushion
    finished: 40 x 40 cm
    back: zip
    count: 2
    cloth: print`)
  const middles = cloths[0]!.placed.map((p) => (p.y + p.length / 2) % cm(64))
  expect(middles).toHaveLength(6)
  expect(new Set(middles).size).toBe(1)
})
