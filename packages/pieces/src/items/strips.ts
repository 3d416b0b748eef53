import type { Length, Problem } from '@lengthwise/units'
import { printLength, roundUpTo, times } from '@lengthwise/units'
import type { RefusedWay, Ways } from '../answers.ts'
import { bestWays, edgeOf, makeSeam, NO_NEEDS, tablesOf } from '../build.ts'
import type { ClothOnTable } from '../cloth.ts'
import type { Order, Strips } from '../order.ts'
import { otherwise } from '../refusals.ts'
import { step } from '../sewing.ts'
import type { Piece, SeamLine } from '../way.ts'
import type { Choice } from './choices.ts'
import { choicesFor } from './choices.ts'
import type { Draft } from './draft.ts'
import { waysFrom } from './draft.ts'
import { fewestParts, partOf } from './equal-parts.ts'
import { sewingStep } from './seam-words.ts'

/** More strips than this in one run are not looked at. */
const MOST_STRIPS = 200
/** Numbers of strips looked at: from one up along the cloth, and from the fewest that fit across it up. */
const NUMBERS_TRIED = 6

/**
 * A run of binding, ties or ruffle joined from equal strips: one to six of them along the cloth, and the fewest that fit
 * across it and up to five more. Width and run are cut sizes and do not grow; a strip has no upper edge, so the top of a
 * print does not matter.
 */
export function waysForStrips(order: Order, item: Strips, tables: ReadonlyMap<string, ClothOnTable>): Ways {
  const drafts: Draft[] = []
  const refused: RefusedWay[] = []
  for (const table of tablesOf(item.cloth, tables)) {
    const { allowance } = item.seam
    const fewest = fewestParts(item.run, table.usableWidth, allowance, order.markTo, MOST_STRIPS)
    const numbers = new Set<number>()
    if (item.runs !== 'across') for (let n = 1; n <= NUMBERS_TRIED; n++) numbers.add(n)
    if (item.runs !== 'along' && fewest !== null) for (let n = fewest; n < fewest + NUMBERS_TRIED; n++) numbers.add(n)
    if (fewest === null && item.runs === 'across')
      refused.push({
        words: 'strips across the cloth',
        why: `${table.cloth.name} is too narrow to join the run from ${MOST_STRIPS} strips or fewer`,
        ...otherwise(table.cloth.name),
      })
    for (const n of numbers) {
      const fitsAcross = fewest !== null && n >= fewest
      const run = fitsAcross ? item.runs : item.runs === 'either' ? 'along' : item.runs
      const part = { cloths: [table.cloth.name], asked: run, hasTop: false } as const
      // strips are cut sizes: what they shrink by does not make one run differ from the other
      const [choices] = choicesFor({ ...order, wash: 'none' }, tables, [part]).choices
      if (choices?.[0] !== undefined) drafts.push(joined(order, item, choices[0], n))
    }
  }
  const found = waysFrom(order, drafts, tables)
  return bestWays(found.ways, [...refused, ...found.refused], found.capped)
}

/** What is wrong with strips as the plan has them. */
export function checkStrips(order: Order, item: Strips): readonly Problem[] {
  const say = (l: Length): string => printLength(l, order.measureIn)
  const problems: Problem[] = []
  if (item.width <= 0 || item.run <= 0)
    problems.push({
      code: 'strip-without-size',
      path: item.path,
      message: 'A strip needs a width and a run.',
      hint: 'Write both, such as width: 6 cm and run: 7 m.',
    })
  if (item.width > item.run)
    problems.push({
      code: 'strip-wider-than-long',
      path: `${item.path}.width`,
      message: `The strip is ${say(item.width)} wide and only ${say(item.run)} long.`,
      hint: 'Exchange width and run, or write a rectangle.',
    })
  return problems
}

function joined(order: Order, item: Strips, choice: Choice, n: number): Draft {
  const { cloth, run } = choice
  const width = roundUpTo(item.width, order.markTo)
  const pieces: Piece[] = []
  const seams: SeamLine[] = []
  const nameOf = (i: number): string => (n === 1 ? '' : `/strip-${i}`)
  for (let i = 1; i <= n; i++) {
    pieces.push({
      name: nameOf(i),
      words: n === 1 ? item.name : `${item.name}, strip ${i} of ${n}`,
      cloth: cloth.name,
      cutWidth: width,
      cutLength: partOf(item.run, n, item.seam.allowance, order.markTo),
      count: 1,
      lengthRuns: run,
      mayTurnEndForEnd: true,
      headToward: null,
      uppermost: null,
      needs: NO_NEEDS,
      spansWidth: false,
      tie: null,
      marks: [],
    })
    if (i > 1) seams.push(makeSeam(item.seam, edgeOf(nameOf(i - 1), 'foot'), edgeOf(nameOf(i), 'head'), width, 'join'))
  }
  const joins = n - 1
  return {
    id: `${n}/${cloth.name}/${run}`,
    words: n === 1 ? 'one strip' : `${n} strips joined`,
    pieces,
    seams,
    joins,
    notions: [],
    hems: 0,
    sewing:
      n === 1
        ? []
        : [
            sewingStep(
              order,
              item.seam,
              `Join the ${n} strips end to end, ${joins === 1 ? 'one seam' : `${joins} seams`}`,
              times(width, joins),
            ),
            step('Press the seams open so that the strip stays thin.'),
          ],
  }
}
