import type { Length } from '@lengthwise/units'
import { beforeShrinking, inches, length, roundUpTo } from '@lengthwise/units'
import type { RefusedWay } from '../answers.ts'
import { tablesOf } from '../build.ts'
import type { ClothOnTable } from '../cloth.ts'
import { shrinksBy } from '../cut-size.ts'
import { clearWidth, hemDepth } from '../on-table.ts'
import type { EdgeNeed, FaceSpec, Order } from '../order.ts'
import type { Lack } from '../refusals.ts'
import { asSold, otherwise, tooNarrow, tooShort } from '../refusals.ts'
import { say } from '../sewing.ts'
import type { FaceAsk, FaceWay, FaceWays } from './face.ts'
import type { Cell, Lane } from './lanes.ts'
import { assemble } from './lanes.ts'
import { usedUp } from './limits.ts'
import { shrinkAlike } from './shrinking.ts'
import type { Split } from './split.ts'
import { splitsOf } from './split.ts'

export type ZipEdge = NonNullable<FaceSpec['zipEdge']>

/** A hem shallower than this gives a zip no hold (common practice, no source). */
export const SHALLOWEST_HEM_FOR_ZIP = inches(0.75)

/** What is left for the outer foot seam: the finger's width less what shows between stitching and seam. */
export const footAllowance = (zipEdge: ZipEdge): Length => length(zipEdge.finger - zipEdge.stitching)

/**
 * A back from ready-made sheets with both hems kept: one hem is cut off as a strip, a finger's width beyond its stitching, and
 * moved to the foot, where its fold meets the other hem's fold over the zip. From head to foot, with L finished, a the head
 * allowance, o the lap, t from the stitching to the outer foot seam, f the finger's width, H the hem of the strip:
 *
 *      seam a | body …… other hem's fold ) lap o ( strip's fold, hem H | stitching, t | outer foot seam, f − t
 *
 *      strip H + f,   body B = L + a + o − H − t,   sheet needed L + a + o + f − t
 *
 * The strip is the deeper hem, or the one at the top of a one-way print, since it is not turned. Narrow sheets are joined
 * side by side first, bodies to bodies and strips to strips. Only the body is marked along its length.
 */
export function waysOfKeptHems(
  order: Order,
  ask: FaceAsk,
  zipEdge: ZipEdge,
  tables: ReadonlyMap<string, ClothOnTable>,
): FaceWays {
  const ways: FaceWay[] = []
  const refused: RefusedWay[] = []
  let capped = false
  for (const table of tablesOf(ask.spec.cloth, tables)) {
    const refuse = (why: string, lack: Lack = otherwise(table.cloth.name)): void => {
      refused.push({ words: `${ask.words.toLowerCase()}: both hems of ${table.cloth.name} kept`, why, ...lack })
    }
    const roles = rolesOf(table)
    if (typeof roles === 'string') {
      refuse(roles)
      continue
    }
    const allowance = ask.edges.head.beyond
    const own = shrinksBy(order, table.cloth, 'along')
    const shrinks = ask.shrinks ?? own
    if (!shrinkAlike(own, shrinks)) {
      refuse('it would shrink apart from what it is sewn to: wash before cutting')
      continue
    }
    const { finger, lap, stitching } = zipEdge
    const strip = length(roles.strip + finger)
    const grown = beforeShrinking(ask.finished.length, shrinks.length)
    const body = roundUpTo(length(grown + allowance + lap - roles.strip - stitching), order.markTo)
    const lengthNeeded = body + strip
    if (table.length === null || lengthNeeded > table.length) {
      refuse('the sheet is too short', tooShort(order, table, lengthNeeded))
      continue
    }
    if (body <= roles.other) {
      refuse('the hems are as deep as the cover is long')
      continue
    }
    const available = clearWidth(table)
    const need = beforeShrinking(ask.finished.width, shrinks.width) + ask.edges.left.beyond + ask.edges.right.beyond
    const centre = ask.spec.centre
    // side hems are cut off
    const wider =
      table.width - available + (available === table.usableWidth ? need : roundUpTo(length(need), order.markTo))
    const oneWidth = tooNarrow(table, asSold(order, wider, table.cloth.shrinks.across))
    const found = splitsOf({
      need,
      available,
      maySpan: available === table.usableWidth,
      join: ask.seam.allowance,
      markTo: order.markTo,
      centreCut:
        typeof centre === 'string' ? null : length(beforeShrinking(centre, shrinks.width) + 2 * ask.seam.allowance),
      spec: ask.spec,
    })
    capped ||= found.thinned
    for (const split of found.splits) {
      const joins = 2 * (split.strips.length - 1)
      if (joins > 0 && (ask.neverJoined !== null || ask.spec.joined === 'one-piece'))
        refuse(ask.neverJoined ?? 'the face is to be of one piece', oneWidth)
      else if (ask.spec.mostSeams !== null && joins > ask.spec.mostSeams)
        refuse(`it takes ${joins} seams, and at most ${ask.spec.mostSeams} are allowed`, oneWidth)
      else if (
        usedUp(
          split.strips.map((strip) => strip.size),
          [ask.edges.left.beyond, ask.edges.right.beyond],
          ask.seam.allowance,
        )
      )
        refuse('a panel would be used up by its seams')
      else ways.push(faceWay(table, roles, split, body, strip, joins))
    }
    if (found.splits.length === 0) refuse(`the sheet is narrower than the ${say(order, length(need))} needed`, oneWidth)
  }
  return { ways, refused, capped }

  function faceWay(
    table: ClothOnTable,
    roles: Roles,
    split: Split,
    body: Length,
    strip: Length,
    joins: number,
  ): FaceWay {
    const keptHem = (depth: Length): EdgeNeed => ({ kind: 'kept-hem', depth })
    const cells: readonly Cell[] = [
      { role: 'body', words: 'body', run: body, joint: null, needs: { foot: keptHem(roles.other) } },
      {
        role: 'zip-strip',
        words: 'zip strip',
        run: strip,
        joint: { kind: 'zip', lap: zipEdge.lap },
        needs: { head: keptHem(roles.strip) },
      },
    ]
    const lanes = split.strips.map(({ role, size, spans }): Lane => {
      const named = role.replace(/^first-/, 'left-').replace(/^last-/, 'right-')
      return { role: named, words: named.replaceAll('-', ' '), size, spans, cells }
    })
    const assembled = assemble({
      as: 'columns',
      name: ask.name,
      words: ask.words,
      table,
      run: 'along',
      lanes,
      join: ask.seam.allowance,
      seam: ask.seam,
      selvedgeJoins: false,
      edges: ask.edges,
      phase: null,
    })
    return {
      ...assembled,
      // the ends are fixed: the strip lies at the hem it is cut from, the body at the other
      pieces: assembled.pieces.map((piece) => ({
        ...piece,
        mayTurnEndForEnd: false,
        headToward: roles.head,
        tie: sameSideTie(table, piece.name.replace(/[/-](body|zip-strip)$/, '')),
      })),
      id: `kept-hems/${table.cloth.name}/${split.kind}${split.detail === '' ? '' : `/${split.detail}`}`,
      words: `both hems of ${table.cloth.name} kept${joins > 0 ? `, ${split.strips.length} panels joined first` : ''}`,
      cloths: [table.cloth],
      run: 'along',
      shrinks: shrinksBy(order, table.cloth, 'along'),
      joins,
    }
  }
}

interface Roles {
  /** depth of the hem cut off as a strip, and of the one left on the body */
  readonly strip: Length
  readonly other: Length
  /** where the head of both pieces lies */
  readonly head: 'start' | 'end'
}

/** Which hem becomes the strip; words when the cloth cannot serve. */
function rolesOf(table: ClothOnTable): Roles | string {
  const { edges, cloth } = table
  const [head, foot] = [hemDepth(edges.head), hemDepth(edges.foot)]
  if (table.length === null || head === 0 || foot === 0)
    return 'only a flat sheet with a hem at head and foot has hems to keep'
  if (cloth.spareEachEnd > 0) return 'squaring the ends would cut the hems off'
  if (Math.min(head, foot) < SHALLOWEST_HEM_FOR_ZIP) return 'a hem under 3/4 in (1.9 cm) is too shallow to carry a zip'
  const { way, top } = cloth.print
  if (way === 'one-way' && (top === 'left' || top === 'right')) return 'the top of the print lies toward a side'
  const fromHead = way === 'one-way' ? top === 'cut-end' : head >= foot
  return fromHead ? { strip: head, other: foot, head: 'start' } : { strip: foot, other: head, head: 'end' }
}

/** On printed cloth strip and body are trimmed on the same side, or at the same place of the repeat across. */
function sameSideTie(table: ClothOnTable, face: string): FaceWay['pieces'][number]['tie'] {
  if (table.cloth.print.way === 'plain') return null
  const repeat = table.acrossRepeat > 0 ? table.acrossRepeat : table.width
  return { face, axis: 'across', repeat, offset: 0 as Length, absolute: false }
}
