import type { CutCloth, Result } from '@lengthwise/planner'
import type { Measure } from '../measure.ts'
import { oneLine } from '../text.ts'
import { capital } from '../words/hands.ts'
import { listed } from '../words/list.ts'
import type { AlikeSet } from './alike.ts'

/** A cloth as one would say it: 'old sheets' where the plan has the key 'old-sheets'; what is written with spaces stays. */
export function clothTitle(name: string): string {
  const said = oneLine(name)
  return said.includes(' ') ? said : said.replace(/(?<=[\p{L}\p{N}])[-_](?=[\p{L}\p{N}])/gu, ' ')
}

/** 'Ticking stripe' or 'Old flat sheet 2', safe for a line of text. */
export function clothName(result: Result, cloth: CutCloth): string {
  const several = result.cloths.filter((each) => each.name === cloth.name).length > 1 || cloth.cloth.count > 1
  const name = capital(clothTitle(cloth.name))
  return several ? `${name} ${cloth.piece}` : name
}

/** 'Old flat sheets 1 and 2' for those that are cut alike. */
export function setName(result: Result, { cloth, others }: AlikeSet): string {
  const more = others.map((each) => `${each.piece}`)
  return more.length === 0 ? clothName(result, cloth) : listed([clothName(result, cloth), ...more])
}

/** Width and length as it lies on the table: '145.5 × 627 cm'. */
export const tableSize = (cloth: CutCloth, measure: Measure): string =>
  `${measure.size(cloth.width, cloth.length)}\u00a0${measure.unit}`
