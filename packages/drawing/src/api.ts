import type { CutCloth, Result } from '@lengthwise/planner'
import type { Figure, FigureOptions, MapOptions, Scene } from './scene.ts'

/** One line of the tear-and-cut order, in words. */
export interface OrderLine {
  readonly flag: string
  readonly cloth: string
  /** the figure in bold stands between the two parts of `todo` */
  readonly todo: readonly [before: string, figure: string, after: string]
  readonly gives: string
  /** which length or part is in hand: 'First length' */
  readonly hand: string
}

/** What this package offers; text is in the plan's unit unless asked otherwise. */
export type DrawingApi = {
  cuttingMap(result: Result, options: MapOptions): Scene
  slips(result: Result, options: MapOptions): Scene
  clothFigure(result: Result, cloth: CutCloth, options: FigureOptions): Figure
  toSvg(figure: Figure, options?: { id?: string }): string
  pageToSvg(scene: Scene, page: number): string
  orderInWords(result: Result, cloth: CutCloth, unit?: 'cm' | 'mm' | 'in'): readonly OrderLine[]
  /** one sentence each: 'Buy 6.6 m of the 150 cm ticking stripe, 95.70 EUR', 'No shorter layout exists', '19 % not used, of it 14 % worth keeping' */
  answerInWords(
    result: Result,
    unit?: 'cm' | 'mm' | 'in',
  ): { readonly buy: readonly string[]; readonly proof: string; readonly waste: string }
  /** at most 40 columns */
  shopNote(result: Result, unit?: 'cm' | 'mm' | 'in'): string
  /** pieces and what to buy; cells that a spreadsheet would run are defused */
  toCsv(result: Result, unit?: 'cm' | 'mm' | 'in'): string
}
