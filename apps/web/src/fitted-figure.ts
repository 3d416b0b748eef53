import type { Figure } from '@lengthwise/drawing'
import { clothFigure } from '@lengthwise/drawing'
import type { Result } from '@lengthwise/planner'

/** What the map of one cloth is drawn for. */
export interface Room {
  /** millimetres of picture that fit beside each other */
  readonly across: number
  readonly smallestCapital: number
  /** times as large as it fits */
  readonly zoom: number
  readonly done: number | null
}

// millimetres of picture for one metre of cloth where there is room for it, and where there is hardly any
const USUAL = 110
const LEAST = 12
const UNITS_PER_METRE = 320_000

/** The map of one cloth, set for the room it has: never a finished drawing made smaller, so that its letters stay legible. */
export function fittedFigure(result: Result, index: number, room: Room): Figure | null {
  const cloth = result.cloths[index]
  if (cloth === undefined) return null
  const { smallestCapital, zoom } = room
  const done = room.done === null ? null : Math.min(room.done, cloth.divisions.length)
  const at = (mmPerMetre: number): Figure => clothFigure(result, cloth, { smallestCapital, done, mmPerMetre })
  const metres = cloth.width / UNITS_PER_METRE
  const usual = at(USUAL)
  // flags and ruler keep their width at every scale
  const fits = Math.max(LEAST, (room.across - (usual.width - metres * USUAL)) / metres)
  const scale = Math.min(USUAL, fits) * zoom
  return scale === USUAL ? usual : at(scale)
}
