import { readPlan } from '@lengthwise/plan-file'
import type { CutCloth, Remnant, Result } from '@lengthwise/planner'
import { plan } from '@lengthwise/planner'
import { stringify } from 'yaml'

/** What a remnant is said to make still, planned again by itself from that remnant as its only cloth: what cannot be cut, in words. */
export function notMade(result: Result): readonly string[] {
  return result.cloths.flatMap((cloth) =>
    cloth.remnants.flatMap((remnant) =>
      remnant.wouldMake.flatMap((words) => {
        const read = readPlan(onlyThis(result, cloth, remnant, words))
        if (!read.ok) return read.problems.map(({ path, message }) => `${words}: ${path}: ${message}`)
        const { status } = plan(read.value, { effort: 'quick' })
        return status === 'laid' ? [] : [`${words} from ${remnant.name} of ${cloth.name}`]
      }),
    ),
  )
}

/** A plan for one such pillowcase from that remnant, with the edges the cloth has there. */
function onlyThis({ order }: Result, cloth: CutCloth, remnant: Remnant, words: string): string {
  const { usable, edges } = cloth
  const x = Math.max(remnant.x, usable.x)
  const y = Math.max(remnant.y, usable.y)
  const right = Math.min(remnant.x + remnant.width, usable.x + usable.width)
  const end = Math.min(remnant.y + remnant.length, usable.y + usable.length)
  const mm = (units: number) => `${(units / 320).toFixed(6)} mm`
  const edge = (at: boolean, own: CutCloth['edges']['left']) =>
    !at || own.kind === 'raw' ? 'none' : own.kind === 'selvedge' ? 'selvedge' : mm(own.depth)
  const { print, divideBy, lostPerTear } = cloth.cloth
  const inInches = order.measureIn === 'in'
  return stringify({
    plan: 1,
    title: 'What is left',
    'measure-in': order.measureIn,
    wash: order.wash === 'after-sewing' ? 'after-sewing' : 'none',
    seam: { kind: order.seam.kind, allowance: mm(order.seam.allowance) },
    'mark-to': order.markTo === 0 ? 0 : mm(order.markTo),
    make: [
      {
        item: 'pillowcase',
        style: 'inside-flap',
        faces: 'any',
        flap: inInches ? '6 in' : '15 cm',
        finished: words.replace('pillowcase ', ''),
        cloth: 'left',
        'length-runs': 'either',
      },
    ],
    cloth: [
      {
        name: 'left',
        from: 'remnant',
        size: `${mm(right - x)} x ${mm(end - y)}`,
        hems: {
          left: edge(x === 0, edges.left),
          right: edge(right === cloth.width, edges.right),
          head: edge(y === 0, edges.start),
          foot: edge(end === cloth.length, edges.end),
        },
        ...(order.wash === 'after-sewing' && {
          shrinks: { along: perCent(cloth.cloth.shrinks.along), across: perCent(cloth.cloth.shrinks.across) },
        }),
        'divide-by': divideBy,
        'lost-per-tear': mm(lostPerTear),
        print: { way: print.way, top: print.top },
      },
    ],
  })
}

const perCent = (millionths: number): string => `${millionths / 10_000} %`
