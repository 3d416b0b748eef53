import { lay } from './lay.ts'
import type { Control, Request, WidthsAnswer } from './model.ts'

/** The layouts of one request at several widths of its field. */
export function layForWidths(request: Request, widths: readonly number[], control: Control): WidthsAnswer {
  return widths.map((width) => ({ width, answer: lay({ ...request, field: { ...request.field, width } }, control) }))
}

/**
 * The narrowest width, on the grid of `step` down from the field's, at which the length is proved to be still at most
 * `length`, and is at every width of the grid above it too; null when it is not even at the field's own width.
 */
export function narrowestFor(request: Request, length: number, step: number, control: Control): number | null {
  let narrowest: number | null = null
  for (let width = request.field.width; width > 0; width -= step) {
    const answer = lay({ ...request, field: { ...request.field, width } }, control)
    if (answer.length === null || answer.length > length) break
    narrowest = width
  }
  return narrowest
}
