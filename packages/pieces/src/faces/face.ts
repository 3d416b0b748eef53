import type { Length } from '@lengthwise/units'
import { length } from '@lengthwise/units'
import type { RefusedWay } from '../answers.ts'
import type { Cloth } from '../cloth.ts'
import type { Run } from '../cut-size.ts'
import type { FaceSpec, Seam, Size } from '../order.ts'
import type { Assembled, FaceEdge, FaceEdges } from './lanes.ts'
import type { Shrinks } from './shrinking.ts'

/** A face to be made: what shows of it, what lies beyond, and how it may be joined. */
export interface FaceAsk {
  /** name of its pieces: '/front', or '' for an item that is one face */
  readonly name: string
  /** 'Front' */
  readonly words: string
  readonly finished: Size
  readonly edges: FaceEdges
  readonly seam: Seam
  readonly spec: FaceSpec
  /** why it may not be joined at all; null where it may */
  readonly neverJoined: string | null
  /** `finished` is a cut size: it does not grow for shrinking */
  readonly asCut?: boolean
  /** cut for this loss, the largest of all it is sewn to; its own loss when not given */
  readonly shrinks?: Shrinks
  /** what shows of its length before the wash, when that is settled by what it is joined to */
  readonly lengthBeforeWash?: Length
}

/** One way to make a face from one cloth (with a band, from two). */
export interface FaceWay extends Assembled {
  /** such as `centre-and-sides/along` */
  readonly id: string
  readonly words: string
  readonly cloths: readonly Cloth[]
  readonly run: Run | 'either'
  /** its own loss in the wash after sewing; of a face with a band the larger */
  readonly shrinks: Shrinks
  /** seams inside the face */
  readonly joins: number
}

export interface FaceWays {
  readonly ways: readonly FaceWay[]
  readonly refused: readonly RefusedWay[]
  readonly capped: boolean
}

/** What shows of a face at the machine, between its finished edges. */
export const shownOf = (face: Assembled, { head, foot, left, right }: FaceEdges): Size => ({
  width: length(face.width - left.beyond - right.beyond),
  length: length(face.length - head.beyond - foot.beyond),
})

/** An edge with a seam, or a raw one. */
export const plainEdge = (beyond: Length): FaceEdge => ({ beyond, folds: [], need: { kind: 'none' } })
