import type { Length } from '@lengthwise/units'
import { cm, inches } from '@lengthwise/units'
import type { Measure } from '../schema/leaves.ts'

/** Usual figures that hang on other keys and so cannot stand in the schema as defaults. */
export interface UsualFigures {
  readonly seamAllowance: Length
  /** turned in under a hem that is turned once */
  readonly singleTurn: Length
  readonly spareEachEndOfBolt: Length
  readonly mattressDepth: Length
  readonly pillowHem: Length
  readonly openEndHem: Length
}

export function usualFigures(measureIn: Measure): UsualFigures {
  return measureIn === 'in' ? IN_INCHES : IN_CENTIMETRES
}

const IN_CENTIMETRES: UsualFigures = {
  seamAllowance: cm(1.5),
  singleTurn: cm(1),
  spareEachEndOfBolt: cm(5),
  mattressDepth: cm(25),
  pillowHem: cm(3.5),
  openEndHem: cm(10),
}

const IN_INCHES: UsualFigures = {
  seamAllowance: inches(0.5),
  singleTurn: inches(0.375),
  spareEachEndOfBolt: inches(2),
  mattressDepth: inches(10),
  pillowHem: inches(1.375),
  openEndHem: inches(4),
}
