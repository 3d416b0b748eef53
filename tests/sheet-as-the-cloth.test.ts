import { readPlan } from '@lengthwise/plan-file'
import type { Result } from '@lengthwise/planner'
import { plan, verify } from '@lengthwise/planner'
import { cm } from '@lengthwise/units'
import { expect, it } from 'vitest'

/* Flat sheets whose opposite edges the cloth itself makes: they come out as the cloth is, which must be enough as sold. */

function planned(text: string): Result {
  const read = readPlan(`plan: 1\ntitle: Sheet\n${text}`)
  if (!read.ok) throw new Error(read.problems.map((p) => `${p.path}: ${p.message}`).join('\n'))
  const result = plan(read.value)
  expect(verify(result)).toEqual([])
  return result
}

const twoSelvedges = (widths: string, wash: string) => `
wash: ${wash}
make:
  - item: flat-sheet
    finished: 280 x 300 cm
    hems: { left: selvedge, right: selvedge }
    cloth: linen
cloth:
  - name: linen
    from: bolt
    widths: [${widths}]
    shrinks: { along: 5 %, across: 5 % }
`

it('both selvedges kept: cloth a centimetre narrower than asked is refused, with the width that would do', () => {
  const result = planned(twoSelvedges('279 cm', 'none'))
  expect(result.status).toBe('cannot-be-cut')
  expect(result.missing).toMatchObject([{ cloth: 'linen', direction: 'across', short: cm(1) }])
  expect(result.widths[0]).toMatchObject({ possible: false, enoughFrom: null })
  expect(result.widths[0]?.why).toContain('280 cm')
})

it('both selvedges kept: no width below the one asked is enough', () => {
  const result = planned(twoSelvedges('280 cm, 252 cm', 'none'))
  const [asked, narrower] = result.widths
  expect(asked).toMatchObject({ chosen: true, possible: true, enoughFrom: cm(280), seams: 0 })
  expect(narrower?.seams).toBeGreaterThan(0)
  expect(result.finished).toMatchObject([{ width: cm(280), length: cm(300) }])
})

it.each(['before-cutting', 'after-sewing'])('both selvedges kept, washed %s: 266 wide is said and no fault', (wash) => {
  const result = planned(twoSelvedges('280 cm', wash))
  expect(result.status).toBe('laid')
  expect(result.finished[0]).toMatchObject({ width: cm(266), asked: { width: cm(280) } })
  expect(result.goodToKnow.find((r) => r.code === 'as-the-cloth-comes')?.text).toContain(
    'finishes 266 cm wide, as the cloth comes after the wash: 280 cm was asked',
  )
})

it('a fitted sheet and a flat sheet of linen 280, washed first, 5 %: 609 laid, 6.6 m', () => {
  const result = planned(`
wash: before-cutting
make:
  - item: fitted-sheet
    mattress: 150 x 200 x 32 cm
    tuck: 12 cm
    casing: 3 cm
    cloth: linen
  - item: flat-sheet
    finished: 280 x 300 cm
    hems:
      head: { depth: 10 cm, turns: 1, turned-in: 1.5 cm }
      foot: { depth: 2.5 cm, turns: 1, turned-in: 1 cm }
      left: selvedge
      right: selvedge
    cloth: linen
cloth:
  - name: linen
    from: bolt
    widths: [280 cm]
    sold-by: 10 cm
    spare-each-end: 5 cm
    shrinks: { along: 5 %, across: 5 % }
    divide-by: thread
`)
  expect(result.cloths[0]?.proof).toMatchObject({ status: 'proved', length: cm(609) })
  expect(result.cloths[0]?.buy?.length).toBe(cm(660))
})

const twoHems = (size: string, wash: string) => `
wash: ${wash}
make:
  - item: flat-sheet
    finished: 200 x 260 cm
    hems: { head: kept-hem, foot: kept-hem, left: { depth: 1 cm, turns: 2 }, right: { depth: 1 cm, turns: 2 } }
    cloth: old
cloth:
  - name: old
    from: sheet
    size: ${size}
    hems: { head: 10 cm, foot: 2.5 cm, left: selvedge, right: selvedge }
    shrinks: { along: 4 %, across: 1 % }
`

it('both end hems kept on a sheet shorter than asked is refused, with what is missing along', () => {
  const result = planned(twoHems('230 x 250 cm', 'none'))
  expect(result.status).toBe('cannot-be-cut')
  expect(result.missing).toMatchObject([{ cloth: 'old', direction: 'along', short: cm(10) }])
})

it('both end hems kept on a sheet as long as asked, washed first: its own length is said and no fault', () => {
  const result = planned(twoHems('230 x 260 cm', 'before-cutting'))
  expect(result.finished).toMatchObject([{ width: cm(200), length: cm(249.6) }])
  expect(result.goodToKnow.find((r) => r.code === 'as-the-cloth-comes')?.text).toContain('249.6 cm long')
})
