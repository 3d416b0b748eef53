import { readPlan } from '@lengthwise/plan-file'
import type { Result } from '@lengthwise/planner'
import { plan, verify } from '@lengthwise/planner'
import { cm } from '@lengthwise/units'
import { expect, it } from 'vitest'

/* Matched prints meet at the seam only where both panels bring a selvedge to it: joined seams lie on the match line. */

function planned(text: string): Result {
  const read = readPlan(text)
  if (!read.ok) throw new Error(read.problems.map((p) => `${p.path}: ${p.message}`).join('\n'))
  const result = plan(read.value)
  expect(verify(result)).toEqual([])
  return result
}

/** Joined edges as laid: each must be the cloth's own selvedge, since all panels lie head to the cut end. */
function joinedEdges(result: Result): readonly string[] {
  const placed = new Map(result.cloths.flatMap((cloth) => cloth.placed.map((p) => [p.piece, p] as const)))
  return result.seams
    .filter((seam) => seam.match !== 'none')
    .flatMap((seam) =>
      [seam.a, seam.b].map((ref) => {
        const [piece, edge] = ref.split('#')
        return placed.get(piece!)!.edges[edge as 'left' | 'right'].kind
      }),
    )
}

// the cover 225 x 220 worked by hand: sides 47, or 48 with the seams 2 cm inside the selvedges; 939 cm either way
it.each([
  ['', 47],
  [', match-line: 2 cm', 48],
])('matched panels bring their selvedges to the seam (print%s: sides %s cm), still in 939 cm', (line, side) => {
  const face = '{ cloth: print, joined: centre-and-sides, length-runs: along }'
  const result = planned(`
plan: 1
title: Cover with a print
wash: none
mark-to: 0.5 cm
seam: { kind: plain, allowance: 1.5 cm }
make:
  - item: duvet-cover
    finished: 225 x 220 cm
    front: ${face}
    back: ${face}
    opening: { kind: buttons, at: foot, depth: 4 cm }
cloth:
  - name: print
    from: bolt
    widths: [140 cm]
    sold-by: 10 cm
    spare-each-end: 5 cm
    print: { way: one-way, top: cut-end, repeat: 64 cm, match: half-drop${line} }
`)
  expect(result.pieces.find((p) => p.piece === 'duvet-cover-1/back/left-side')?.cutWidth).toBe(cm(Number(side)))
  expect(result.cloths[0]?.proof).toMatchObject({ status: 'proved', length: cm(939) })
  expect(joinedEdges(result)).toEqual(Array(8).fill('selvedge'))
})

it('a matched panel with the rest at one side brings its selvedge to the seam', () => {
  const result = planned(`
plan: 1
title: Back of a quilt
wash: none
make:
  - item: quilt-back
    quilt: 200 x 200 cm
    overhang: 0 cm
    joined: full-widths
    length-runs: along
    cloth: print
cloth:
  - name: print
    from: bolt
    widths: [150 cm]
    print: { way: two-way, repeat: 64 cm, across-repeat: 31 cm, match: straight, match-line: 2 cm }
`)
  expect(joinedEdges(result)).toEqual(['selvedge', 'selvedge'])
})
