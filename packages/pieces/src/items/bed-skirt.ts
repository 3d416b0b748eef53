import type { Length, Problem } from '@lengthwise/units'
import { beforeShrinking, length, sum, times, ZERO } from '@lengthwise/units'
import type { RefusedWay, Ways } from '../answers.ts'
import { bestWays, edgeOf, foldAcross, half, makePiece, makeSeam, tablesOf } from '../build.ts'
import { checkFaceSpec, checkSeam, problem } from '../check-parts.ts'
import type { ClothOnTable } from '../cloth.ts'
import { cutLength } from '../cut-size.ts'
import type { FaceAsk, FaceWay } from '../faces/face.ts'
import { shownOf } from '../faces/face.ts'
import { waysOfFace } from '../faces/face-ways.ts'
import type { FaceEdge } from '../faces/lanes.ts'
import type { BedSkirt, Order } from '../order.ts'
import { otherwise } from '../refusals.ts'
import { joinSteps, say, step } from '../sewing.ts'
import { hemTake } from '../thread.ts'
import type { Mark, Piece, SeamLine, SewingLine } from '../way.ts'
import type { Choice } from './choices.ts'
import { choicesFor } from './choices.ts'
import type { Draft } from './draft.ts'
import { waysFrom } from './draft.ts'
import { NEVER_JOINED } from './duvet-cover.ts'
import { fewestParts, partOf } from './equal-parts.ts'
import { hemStep, plainly, sewingStep } from './seam-words.ts'

/** More panels than this in one skirt are not looked at. */
const MOST_PANELS = 100
/** Numbers of panels looked at: the fewest that fit across the cloth and one more; and up to three long ones along it. */
const PANELS_TRIED = 2
const LONG_PANELS_TRIED = 3

/*
 * A bed skirt: a deck as large as the bed base, and a skirt sewn to its sides and foot, 2 L + W long once gathered or
 * pleated; the head has none.
 *
 *                 head, hemmed
 *            +---------------------+
 *     skirt  |        deck         |  skirt
 *            +---------------------+
 *                    skirt
 */

/** Every deck with every skirt. The skirt is joined from equal panels whose upper edge lies toward the top of a print. */
export function waysForBedSkirt(order: Order, item: BedSkirt, tables: ReadonlyMap<string, ClothOnTable>): Ways {
  const decks = waysOfFace(order, deckOf(item), tables)
  const skirts = skirtsOf(order, item, tables)
  const drafts = decks.ways.flatMap((deck) => skirts.ways.map((skirt) => together(order, item, deck, skirt)))
  const ways = waysFrom(order, drafts, tables, decks.capped)
  return bestWays(ways.ways, [...decks.refused, ...skirts.refused, ...ways.refused], ways.capped)
}

/** What is wrong with a bed skirt as the plan has it. */
export function checkBedSkirt(order: Order, item: BedSkirt): readonly Problem[] {
  const problems = [...checkSeam(item), ...checkFaceSpec(order, item, item.deck, `${item.path}.deck`)]
  const add = (code: string, key: string, message: string, hint: string): void => {
    problems.push(problem(code, `${item.path}${key}`, message, hint))
  }
  if (item.drop <= 0)
    add('no-drop', '.drop', 'the skirt has no drop', 'measure from the top of the bed base to the floor')
  if (item.style === 'gathered' && item.fullnessPercent < 100)
    add('fullness', '.fullness', 'a fullness below one does not reach round the bed', 'take 2.5, or 2 for stiff cloth')
  if (item.style === 'corner-pleats' && item.pleat <= 0)
    add('pleat', '.pleat', 'the corner pleats take no cloth', 'take 15 to 30 cm for each pleat')
  if (2 * item.seam.allowance >= item.base.width)
    add('seam-too-wide', '.seam', 'the seam allowances leave nothing of the deck', 'take an allowance of 1 to 1.5 cm')
  return problems
}

function deckOf(item: BedSkirt): FaceAsk {
  const { allowance } = item.seam
  // gathers do not lie as flat as a seam between two cut edges: the deck's own edge is what is held to size
  const edge: FaceEdge = { beyond: allowance, folds: [ZERO], need: { kind: 'none' } }
  const sewn: FaceEdge = { ...edge, stitched: true }
  return {
    name: '/deck',
    words: 'Deck',
    finished: item.base,
    edges: { head: edge, foot: sewn, left: sewn, right: sewn },
    seam: item.seam,
    spec: item.deck,
    neverJoined: item.cot ? NEVER_JOINED : null,
  }
}

interface Skirt {
  readonly id: string
  readonly words: string
  readonly pieces: readonly Piece[]
  readonly seams: readonly SeamLine[]
  /** as joined, its ends not yet hemmed */
  readonly joined: Length
  readonly cutDrop: Length
}

function skirtsOf(
  order: Order,
  item: BedSkirt,
  tables: ReadonlyMap<string, ClothOnTable>,
): { readonly ways: readonly Skirt[]; readonly refused: readonly RefusedWay[] } {
  const ways: Skirt[] = []
  const refused: RefusedWay[] = []
  const { allowance } = item.seam
  for (const table of tablesOf(item.skirtCloth, tables)) {
    const part = { cloths: [table.cloth.name], asked: 'either', hasTop: true } as const
    for (const [choice] of choicesFor(order, tables, [part]).choices) {
      if (choice === undefined) continue
      const total = sum(beforeShrinking(runOf(item), choice.width), times(allowance, 2))
      const numbers = new Set<number>()
      // a print that is matched meets at seams along the cloth only
      const isMatched = table.cloth.print.match !== 'none' && table.repeat > 0
      if (choice.run !== 'along') for (let n = 1; n <= (isMatched ? 1 : LONG_PANELS_TRIED); n++) numbers.add(n)
      const fewest = fewestParts(total, table.usableWidth, allowance, order.markTo, MOST_PANELS)
      if (choice.run !== 'across' && fewest !== null)
        for (let n = fewest; n < fewest + PANELS_TRIED; n++) numbers.add(n)
      if (numbers.size === 0)
        refused.push({
          words: `skirt of ${table.cloth.name}`,
          why: `it would take more than ${MOST_PANELS} panels`,
          ...otherwise(table.cloth.name),
        })
      for (const n of numbers) {
        const fits = fewest !== null && n >= fewest
        const run = choice.run !== 'either' ? choice.run : !fits ? 'across' : isMatched && n > 1 ? 'along' : 'either'
        ways.push(skirtOf(order, item, table, { ...choice, run }, total, n))
      }
    }
  }
  return { ways, refused }
}

/** Round both sides and the foot, with fullness, or with the cloth of a pleat at each foot corner. */
function runOf(item: BedSkirt): Length {
  const around = 2 * item.base.length + item.base.width
  return item.style === 'gathered'
    ? length(Math.ceil((around * item.fullnessPercent) / 100))
    : length(around + 2 * item.pleat)
}

function skirtOf(order: Order, item: BedSkirt, table: ClothOnTable, choice: Choice, total: Length, n: number): Skirt {
  const { allowance } = item.seam
  const width = partOf(total, n, allowance, order.markTo)
  const cutDrop = cutLength(order, item.drop, choice.length, sum(allowance, hemTake(item.hem)))
  const hemline: Mark = foldAcross(length(cutDrop - hemTake(item.hem)))
  const nameOf = (i: number): string => (n === 1 ? '/skirt' : `/skirt/panel-${i}`)
  const isMatched = n > 1 && choice.run === 'along' && table.cloth.print.match !== 'none' && table.repeat > 0
  const pieces: Piece[] = []
  const seams: SeamLine[] = []
  for (let i = 1; i <= n; i++) {
    const isDropped = table.cloth.print.match === 'half-drop' && i % 2 === 0
    const piece = makePiece(table.cloth, {
      name: nameOf(i),
      words: n === 1 ? 'Skirt' : `Skirt, panel ${i} of ${n}`,
      size: { width, length: cutDrop },
      run: choice.run,
      tie: isMatched
        ? {
            face: '/skirt',
            axis: 'along',
            repeat: table.repeat,
            offset: isDropped ? length(Math.floor(table.repeat / 2)) : ZERO,
            absolute: false,
          }
        : null,
      marks: [hemline],
    })
    // panels that share a print must all lie the same way up
    pieces.push(isMatched ? { ...piece, mayTurnEndForEnd: false, headToward: piece.headToward ?? 'start' } : piece)
    if (i > 1)
      seams.push(
        makeSeam(item.seam, edgeOf(nameOf(i - 1), 'right'), edgeOf(nameOf(i), 'left'), cutDrop, 'join', {
          match: isMatched ? table.cloth.print.match : 'none',
        }),
      )
  }
  const panels = n === 1 ? 'one length' : `${n} panels`
  const side = choice.run === 'across' ? ' along the cloth' : ''
  return {
    id: `${n}/${table.cloth.name}/${choice.run}`,
    words: `skirt in ${panels}${side}`,
    pieces,
    seams,
    joined: length(n * width - 2 * (n - 1) * allowance),
    cutDrop,
  }
}

function together(order: Order, item: BedSkirt, deck: FaceWay, skirt: Skirt): Draft {
  // the deck may be larger than the bed by what the marking step added
  const { width, length: long } = shownOf(deck, deckOf(item).edges)
  const around = length(2 * long + width)
  const run = length(skirt.joined - 2 * item.seam.allowance)
  const pieces = [...deck.pieces, ...skirt.pieces]
  const seams = [...deck.seams, ...skirt.seams]
  return {
    id: `deck/${deck.id}+skirt/${skirt.id}`,
    words: `${deck.words}; ${skirt.words}`,
    pieces,
    seams,
    joins: deck.joins + skirt.seams.length,
    notions: [],
    // hem and ends of the skirt, two rows of gathering, the seam to the deck, the deck's head
    hems: run + 2 * skirt.cutDrop + (item.style === 'gathered' ? 2 * run : 0) + around + width,
    sewing: [
      ...joinSteps(order, pieces, seams),
      ...fullnessSteps(order, item, skirt, run, around),
      step(
        `Turn ${say(order, item.seam.allowance)} under at the fold mark at the head of the deck, over the ends of the skirt, and stitch it down: ${say(order, width)}.`,
        width,
      ),
      step('Press the seam toward the deck, and the hem.'),
    ],
  }
}

/** `run`: the skirt between its hemmed ends; `around`: the sides and the foot of the deck that it is sewn to. */
function fullnessSteps(order: Order, item: BedSkirt, skirt: Skirt, run: Length, around: Length): SewingLine[] {
  const ends = step(
    `Turn in ${say(order, item.seam.allowance)} at both ends of the skirt, half of it under, and stitch: ${say(order, skirt.cutDrop)} each.`,
    times(skirt.cutDrop, 2),
  )
  const hemmed = hemStep(order, item.hem, 'the lower edge of the skirt', run)
  const sewn =
    'Skirt to the stitching marks at the sides and foot of the deck, right sides together, turning at the foot corners'
  if (item.style === 'corner-pleats')
    return [
      ends,
      hemmed,
      step(`Fold a pleat of ${say(order, half(run - around))} at each foot corner, half to either side, and baste it.`),
      sewingStep(order, plainly(item.seam), sewn, around),
    ]
  return [
    ends,
    hemmed,
    step(
      `Stitch two rows of long stitches within the allowance of the upper edge, ${say(order, run)} each, and draw them up to ${say(order, around)}, evenly, eighth by eighth.`,
      times(run, 2),
    ),
    sewingStep(order, plainly(item.seam), sewn, around),
  ]
}
