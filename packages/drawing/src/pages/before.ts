import type { CutCloth, Result } from '@lengthwise/planner'
import type { Length } from '@lengthwise/units'
import { cm, printPercent } from '@lengthwise/units'
import { clothName, clothTitle } from '../cloth/names.ts'
import type { Style } from '../cloth/style.ts'
import { PITCH, WEIGHTS } from '../cloth/style.ts'
import { line, text } from '../ink.ts'
import type { Measure } from '../measure.ts'
import { measureIn } from '../measure.ts'
import { hasAllLetters, oneLine, textWidth, unbroken } from '../text.ts'
import { costWords, notionWords } from '../words/answer.ts'
import { capital } from '../words/hands.ts'
import { counted, listed } from '../words/list.ts'
import { cutDown } from '../words/more-or-less.ts'
import type { Leaf, Runs } from './leaf.ts'
import { BOTTOM, checkLine, FRAME, leaf, rule, setRuns, tickBox } from './leaf.ts'
import { keptHems, lengthNeeded, moreThan, ownedSizes, spareOf, widthNeeded, widthToBuy } from './least.ts'
import { printAtTheTable, printBeforeBuying } from './print-checks.ts'

interface Item {
  readonly words: Runs
  /** a line to write a measure on */
  readonly write?: boolean
  /** something to know, not to do */
  readonly remark?: boolean
}

/** What is done before the shears: buy and measure, wash and square, with the figures at which to stop. */
export function beforeLeaves(result: Result, measure: Measure, style: Style): readonly Leaf[] {
  const sections: readonly (readonly [string, readonly Item[]])[] = [
    ['Buy and measure', buying(result, measure)],
    [result.order.wash === 'before-cutting' ? 'Wash, press, square' : 'Press and square', washing(result, measure)],
    ['At the table', atTheTable(result, measure)],
    ['Take care', result.cautions.map((each) => ({ words: [[sentence(each.text), 500]], remark: true }))],
    ['Good to know', result.goodToKnow.map((each) => ({ words: [[sentence(each.text), 500]], remark: true }))],
  ]
  const leaves = [leaf('before', 'Before the first cut', [whatIsSewn(result)], style)]
  let on = leaves[0]!
  const { small, usual } = style
  const pitch = small * PITCH
  for (const [head, items] of sections) {
    if (items.length === 0) continue
    const first = setRuns(items[0]!.words, 9, 0, textWidthFor(items[0]!), small)
    if (on.y + usual * 2.4 + first.lines * pitch > lowest()) turnOver()
    on.y += small * 0.4
    rule(on)
    on.y += usual * 1.75
    on.parts.push({ role: 'heading-2', marks: [text(head, 0, on.y, Math.min(usual, 5), 700)] })
    on.y += small * 2
    for (const item of items) {
      const probe = setRuns(item.words, 9, on.y, textWidthFor(item), small)
      if (on.y + (probe.lines - 1) * pitch > lowest()) {
        turnOver()
        on.y += usual * 1.75
        on.parts.push({ role: 'heading-2', marks: [text(`${head}, goes on`, 0, on.y, Math.min(usual, 5), 700)] })
        on.y += small * 2
      }
      const set = setRuns(item.words, 9, on.y, textWidthFor(item), small)
      const toWrite = FRAME.width - textWidth(measure.unit, small, 500) - 2
      const lines = item.write
        ? [
            line([toWrite - 32, on.y + 0.8, toWrite, on.y + 0.8], WEIGHTS.raw),
            text(measure.unit, FRAME.width, on.y, small, 500, 'end'),
          ]
        : []
      on.parts.push({
        role: 'list-item',
        marks: [item.remark ? text('–', 2, on.y, small, 500) : tickBox(0, on.y, small * 1.35), ...set.marks, ...lines],
      })
      on.y += set.lines * pitch + small * 0.42
    }
  }
  leaves[0]!.parts.push(checkLine(true))
  leaves[0]!.lowest = 234.5
  return leaves

  // the check line takes the foot of the first page
  function lowest(): number {
    return leaves.length === 1 ? 232 : BOTTOM
  }
  function turnOver(): void {
    on = leaf('before', 'Before the first cut, goes on', [], style)
    leaves.push(on)
  }
}

const OR_STOP = '? Stop, and lay out again.'

// so much is soon lost where two ends are squared (common practice, no source)
const SQUARED = cm(5)

const textWidthFor = (item: Item): number => (item.write ? 126 : FRAME.width - 9)

const sentence = (words: string): string => {
  const clean = unbroken(capital(oneLine(words)))
  return /[.!?]$/.test(clean) ? clean : `${clean}.`
}

function whatIsSewn(result: Result): string {
  const kinds = new Map<string, number>()
  for (const row of result.finished) {
    const name = row.item.replace(/-\d+$/, '').replace(/-/g, ' ')
    kinds.set(name, (kinds.get(name) ?? 0) + 1)
  }
  const things = [...kinds].map(([name, n]) => (n === 1 ? `one ${name}` : `${counted(n)} ${plural(name)}`))
  return things.length === 0
    ? oneLine(result.order.title)
    : `${capital(listed(things))}, ${counted(result.pieces.length)} pieces to cut.`
}

const plural = (name: string): string => (/(s|x|ch|sh)$/.test(name) ? `${name}es` : `${name}s`)

function buying(result: Result, measure: Measure): readonly Item[] {
  const items: Item[] = []
  for (const cloth of result.cloths) {
    if (cloth.buy !== null) items.push(...boltToBuy(result, cloth, measure))
  }
  items.push(...printBeforeBuying(result, measure).map((words) => ({ words })))
  for (const row of result.buy)
    if (row.what !== 'cloth') items.push({ words: [[`Buy ${notionWords(row, measure)}.`, 500]] })
  for (const { alike, words, size } of ownedSizes(result, true)) {
    const hems = keptHems(alike, measure)
    items.push({
      words: [
        [`Measure the ${words}. Less than `, 500],
        [`${measure.size(size.width, size.length)}\u00a0${measure.unit}`, 700],
        [
          result.order.wash === 'before-cutting'
            ? `${alike[0]!.cloth.size === null ? '' : ', before washing'}${OR_STOP}`
            : `${OR_STOP}${moreThan(result, alike, measure)}`,
          500,
        ],
        [hems === '' ? '' : ` Hems, from fold to stitching: ${hems}. If not, stop too.`, 500],
      ],
    })
  }
  return items
}

function boltToBuy(result: Result, cloth: CutCloth, measure: Measure): readonly Item[] {
  const { width, length, cost } = cloth.buy!
  const other = measureIn(measure.unit === 'in' ? 'cm' : 'in')
  const row = result.widths.find((r) => r.cloth === cloth.name && r.chosen)
  const needed = widthToBuy(result, cloth)
  const enough = row?.enoughFrom ?? width
  const spare = spareOf(cloth)
  return [
    {
      words: [
        ['Buy ', 500],
        [measure.bought(length), 700],
        [
          ` (${other.unit === 'in' ? upToEighthYard(length, other) : upToTenCm(length, other)}) of ${clothTitle(cloth.name)}, `,
          500,
        ],
        [measure.full(width), 700],
        [` (${inOther(width, other)}) wide${costWords(result, cost)}: one length, one dye lot.`, 500],
      ],
    },
    {
      write: true,
      words: [
        ['Measure between the selvedges and write it here. Less than ', 500],
        [measure.atLeast(needed), 700],
        [
          enough < needed
            ? `? Stop: this map does not fit. Laid out again, ${measure.atLeast(enough)} or more takes no more cloth.`
            : OR_STOP,
          500,
        ],
      ],
    },
    ...(spare < SQUARED
      ? [
          {
            words: [
              [
                `Have it torn or cut by the thread at both ends: the plan leaves ${spare > 0 ? `only ${measure.full(spare)}` : 'nothing'} to spare. Otherwise ask for a little more.`,
                500,
              ],
            ],
          } as const,
        ]
      : []),
  ]
}

// in the other system, never less than what is needed
function upToEighthYard(length: Length, other: Measure): string {
  const eighth = 292_608 / 8
  return other.bought((Math.ceil(length / eighth) * eighth) as Length)
}
function upToTenCm(length: Length, other: Measure): string {
  return other.bought((Math.ceil(length / 32_000) * 32_000) as Length)
}
// rounded up, as lengths are: less would be too narrow
function inOther(width: Length, other: Measure): string {
  const step = other.unit === 'in' ? 8128 / 8 : 320
  return other.full((Math.ceil(width / step) * step) as Length)
}

function washing(result: Result, measure: Measure): readonly Item[] {
  const items: Item[] = []
  const wash = result.order.wash === 'before-cutting'
  if (wash) {
    const shrinking = result.cloths.filter((cloth) => cloth.cloth.shrinks.along > 0 || cloth.cloth.shrinks.across > 0)
    const names = [
      ...new Set(
        shrinking.map(
          (cloth) =>
            `${clothTitle(cloth.name)} ${printPercent(cloth.cloth.shrinks.along, { noBreak: true })} along and ${printPercent(cloth.cloth.shrinks.across, { noBreak: true })} across`,
        ),
      ),
    ]
    items.push({
      words: [
        [
          `Oversew the raw ends. Wash as you will wash the finished things${names.length > 0 ? `; the map counts on shrinkage of ${listed(names)}` : ''}.`,
          500,
        ],
      ],
    })
  }
  items.push({ words: [['Press. Pull on the bias until the corners are square.', 500]] })
  for (const cloth of result.cloths) {
    if (cloth.buy === null) continue
    const name = `${clothName(result, cloth)}: measure`
    items.push({
      write: true,
      words: [
        [`${name} the length and write it here. Less than `, 500],
        [measure.atLeast(lengthNeeded(cloth)), 700],
        [`${OR_STOP}${cutDown(result, cloth, 'along', measure)}`, 500],
      ],
    })
    items.push({
      write: true,
      words: [
        [wash ? `${name} the width again. Less than ` : `${name} the width as it lies. Less than `, 500],
        [measure.atLeast(widthNeeded(cloth)), 700],
        [`${OR_STOP}${cutDown(result, cloth, 'across', measure) || ' More is left over.'}`, 500],
      ],
    })
  }
  if (wash)
    for (const { alike, words, size } of ownedSizes(result, false))
      items.push({
        words: [
          [`Measure the ${words}. Less than `, 500],
          [`${measure.size(size.width, size.length)}\u00a0${measure.unit}`, 700],
          [`${OR_STOP}${moreThan(result, alike, measure)}`, 500],
        ],
      })
  return items
}

function endsOf({ cloths }: Result): string {
  const [bolts, others] = ['bolt', 'other'].map((kind) =>
    cloths.some(({ from }) => (from === 'bolt') === (kind === 'bolt')),
  )
  if (!others) return 'cut end'
  return bolts ? 'cut end (of a sheet: its head end)' : 'head end'
}

function atTheTable(result: Result, measure: Measure): readonly Item[] {
  const items: Item[] = [
    {
      words: [
        [`Lay the cloth right side up, its ${endsOf(result)} where the map has its top. Chalk an arrow there.`, 500],
      ],
    },
  ]
  items.push(...printAtTheTable(result, measure).map((words) => ({ words })))
  items.push({
    words: [
      [
        'Measure twice before each division. Write the number on the wrong side of each piece as it comes away, with an arrow to its top.',
        500,
      ],
    ],
  })
  const remnants = result.cloths.flatMap((cloth) => cloth.remnants.map((r) => r.name))
  if (remnants.length > 0)
    items.push({
      words: [
        ['Keep ', 500],
        [remnants.length > 3 ? `${remnants[0]} to ${remnants.at(-1)}` : listed(remnants), 700],
        [remnants.length === 1 ? ': write its size on it.' : ': write the size on each.', 500],
      ],
    })
  const names = [result.order.title, ...result.pieces.map((p) => p.words), ...result.cloths.map((c) => c.name)]
  if (!names.every((name) => hasAllLetters(oneLine(name))))
    items.push({
      words: [
        ['Some letters of your names are not in the typeface of this map and stand as boxes. Go by the numbers.', 500],
      ],
    })
  return items
}
