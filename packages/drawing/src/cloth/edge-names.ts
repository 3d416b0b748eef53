import type { CutCloth } from '@lengthwise/planner'
import type { Box } from '../box.ts'
import { meetsAny, padded } from '../box.ts'
import { text, textBox } from '../ink.ts'
import type { Mark } from '../scene.ts'
import { textWidth } from '../text.ts'
import type { DrawOptions } from './draw.ts'

// what the ends and sides of the cloth are
export function edgeNames(cloth: CutCloth, options: DrawOptions, field: Box, taken: readonly Box[]): readonly Mark[] {
  const { view, style, measure } = options
  const { small } = style
  const marks: Extract<Mark, { kind: 'text' }>[] = []
  // the first words that find a place, the best words first
  const put = (
    said: readonly string[],
    y: number,
    ...places: readonly (readonly [number, 'start' | 'middle' | 'end'])[]
  ): void => {
    for (const words of said)
      for (const [x, anchor] of places) {
        const mark = text(words, x, y, small, 500, anchor)
        const own = padded(textBox(mark), 0.5 * style.by)
        if (meetsAny(own, [...taken, ...marks.map(textBox)])) continue
        marks.push(mark)
        return
      }
  }
  const above = field.y - 2.2 * style.by - small * 0.32
  const below = field.y + field.height + small * 1.36 + 0.6 * style.by
  const middle = field.x + field.width / 2
  const right = field.x + field.width
  const atStart = view.stretch.from === 0
  const atEnd = view.stretch.to === cloth.length
  const ends = cloth.from === 'bolt' ? ['Cut end', 'Bolt end'] : ['Head end', 'Foot end']
  const endName = (edge: CutCloth['edges']['start'], plain: string, hem: string): string =>
    edge.kind === 'hem' ? `${hem}, kept, ${measure.bare(edge.depth)} deep` : plain
  const from = view.stretch.fromFlag
  const beginning = atStart
    ? [endName(cloth.edges.start, ends[0]!, 'Head hem')]
    : from
      ? [...(atEnd ? [`From ${from} to the ${ends[1]!.toLowerCase()}`] : []), `From ${from}`]
      : ['Goes on from before']
  const selvedges = [cloth.edges.left, cloth.edges.right].filter(({ kind }) => kind === 'selvedge').length
  const room = field.width - selvedges * (textWidth('Selvedge', small, 500) + small)
  const fitting = beginning.filter((words) => textWidth(words, small, 500) <= room)
  put(
    fitting.length > 0 ? fitting : beginning,
    above,
    [middle, 'middle'],
    [field.x, 'start'],
    [field.x + field.width * 0.3, 'middle'],
    [right, 'end'],
  )
  if (cloth.edges.left.kind === 'selvedge') put(['Selvedge'], above, [field.x, 'start'])
  if (cloth.edges.right.kind === 'selvedge') put(['Selvedge'], above, [right, 'end'])
  const ending = atEnd
    ? endName(cloth.edges.end, ends[1]!, 'Foot hem')
    : (options.goesOn.find((words) => textWidth(words, small, 500) <= options.rightLimit - field.x) ??
      options.goesOn.at(-1) ??
      '')
  if (ending !== '') put([ending], below, [field.x, 'start'], [middle, 'middle'], [right, 'end'])
  return marks
}
