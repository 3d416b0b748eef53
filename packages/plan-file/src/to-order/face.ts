import type { EdgeNeed, FaceSpec, Hem } from '@lengthwise/pieces'
import type { Length } from '@lengthwise/units'
import { ZERO } from '@lengthwise/units'
import type * as z from 'zod'
import type { back, edgeNeed, front, hem, usualJoining } from '../schema/face.ts'
import type { UsualFigures } from './usual-figures.ts'

type JoiningKeys = ReturnType<typeof usualJoining>
type FrontKeys = z.output<ReturnType<typeof front>>
type BackKeys = z.output<ReturnType<typeof back>>

/** A face of these cloths, joined as the keys say. */
export function faceOf(keys: JoiningKeys, cloth: readonly string[]): FaceSpec {
  return {
    cloth,
    joined: keys.joined,
    smallestPanel: keys['smallest-panel'],
    centre: keys.centre,
    crossJoins: keys['cross-joins'],
    selvedgeToSelvedge: keys['selvedge-to-selvedge'],
    lengthRuns: keys['length-runs'],
    mostSeams: keys['most-seams'] ?? null,
    band: keys.band ? { at: keys.band.at, depth: keys.band.depth, cloth: keys.band.cloth ?? cloth } : null,
    zipEdge: null,
  }
}

/** Both faces of a cover. A face that says nothing is made as the other; a cloth that is named once serves both. */
export function bothFaces(
  cloth: readonly string[] | undefined,
  front: FrontKeys | undefined,
  back: BackKeys | undefined,
  usual: JoiningKeys,
): { front: FaceSpec; back: FaceSpec } {
  const frontCloth = front?.cloth ?? cloth ?? back?.cloth ?? []
  const backCloth = back?.cloth ?? cloth ?? frontCloth
  const frontFace = faceOf(front ?? usual, frontCloth)
  if (back === undefined) return { front: frontFace, back: { ...frontFace, cloth: backCloth, band: null } }
  const zipEdge = back['zip-edge']
    ? { kind: back['zip-edge'], finger: back.finger, lap: back.lap, stitching: back.stitching }
    : null
  return { front: frontFace, back: { ...faceOf(back, backCloth), zipEdge } }
}

type HemKeys = z.output<ReturnType<typeof hem>>

export function hemOf(keys: HemKeys, figures: UsualFigures): Hem {
  return { depth: keys.depth, turns: keys.turns, turnedIn: turnedIn(keys, figures) }
}

/** What goes under a hem unless it is given: the depth again when turned twice, a centimetre when turned once. */
export function turnedIn(
  keys: { readonly depth: Length; readonly turns: 1 | 2; readonly 'turned-in'?: Length | undefined },
  figures: UsualFigures,
): Length {
  return keys['turned-in'] ?? (keys.turns === 2 ? keys.depth : figures.singleTurn)
}

export function needOf(keys: z.output<ReturnType<typeof edgeNeed>>): EdgeNeed {
  if (typeof keys === 'object') return { kind: 'kept-hem', depth: keys['kept-hem'] }
  return keys === 'kept-hem' ? { kind: 'kept-hem', depth: ZERO } : { kind: keys }
}
