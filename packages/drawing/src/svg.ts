import type { Figure, Mark, Page, Scene } from './scene.ts'
import { typeSize } from './text.ts'

/**
 * A figure as one SVG element, in millimetres. Ink is `currentColor` and paper `var(--paper)`, so that it follows the page
 * and forced colours. All text is escaped.
 */
export function toSvg(figure: Figure, options: { readonly id?: string } = {}): string {
  return svg(figure.width, figure.height, 'Cutting map', figure.alt, figure.marks, options.id ?? 'map')
}

/** One page of a scene as SVG of the paper's size. */
export function pageToSvg(scene: Scene, page: number): string {
  const found = scene.pages[page]
  if (found === undefined)
    throw new RangeError(`pageToSvg: there is no page ${page}; the map has ${scene.pages.length}`)
  const alt = found.parts
    .map((part) => part.alt ?? '')
    .filter((each) => each !== '')
    .join(' ')
  return svg(
    found.width,
    found.height,
    scene.title,
    alt === '' ? titleOf(found) : alt,
    marksOf(found),
    `page-${page + 1}`,
  )
}

/** All marks of a page in reading order. */
export const marksOf = (page: Page): readonly Mark[] =>
  page.parts.flatMap((part) => [
    ...part.marks,
    ...(part.rows ?? []).flatMap((row) => row.cells.flatMap((cell) => cell.marks)),
  ])

const titleOf = (page: Page): string =>
  page.parts
    .filter((part) => part.role === 'heading-1')
    .flatMap((part) => part.marks)
    .map((mark) => (mark.kind === 'text' ? mark.text : ''))
    .join(' ')

function svg(width: number, height: number, title: string, alt: string, marks: readonly Mark[], id: string): string {
  const name = escaped(id)
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-labelledby="${name}-title ${name}-desc" viewBox="0 0 ${num(width)} ${num(height)}" width="${num(width)}mm" height="${num(height)}mm" fill="none" stroke="currentColor" font-family="'Alegreya Sans',sans-serif" style="font-variant-numeric:lining-nums tabular-nums;font-variant-ligatures:none">`,
    `<title id="${name}-title">${escaped(title)}</title>`,
    `<desc id="${name}-desc">${escaped(alt)}</desc>`,
    ...marks.map(element),
    '</svg>',
  ].join('\n')
}

function element(mark: Mark): string {
  switch (mark.kind) {
    case 'line':
      return `<path d="M${num(mark.x1)} ${num(mark.y1)}L${num(mark.x2)} ${num(mark.y2)}"${stroke(mark.weight, mark.cap, mark.dash)}/>`
    case 'lines':
      return `<path d="${mark.segments.map(([x1, y1, x2, y2]) => `M${num(x1)} ${num(y1)}L${num(x2)} ${num(y2)}`).join('')}"${stroke(mark.weight, mark.cap)}/>`
    case 'path':
      return `<path d="M${mark.points.map(([x, y]) => `${num(x)} ${num(y)}`).join('L')}${mark.closed ? 'Z' : ''}"${paint(mark.weight, mark.fill)}/>`
    case 'circle':
      return `<circle cx="${num(mark.x)}" cy="${num(mark.y)}" r="${num(mark.r)}"${paint(mark.weight, mark.fill)}/>`
    case 'text': {
      const turn = mark.turn === 90 ? ` transform="rotate(-90 ${num(mark.x)} ${num(mark.y)})"` : ''
      const anchor = mark.anchor === 'start' ? '' : ` text-anchor="${mark.anchor}"`
      const fill = mark.ink === 'paper' ? PAPER : 'currentColor'
      return `<text x="${num(mark.x)}" y="${num(mark.y)}" font-size="${num(typeSize(mark.capital, mark.weight))}" font-weight="${mark.weight}" fill="${fill}" stroke="none" unicode-bidi="plaintext" xml:space="preserve"${anchor}${turn}>${escaped(mark.text)}</text>`
    }
  }
}

const PAPER = 'var(--paper,#fff)'

const stroke = (weight: number, cap?: string, dash?: readonly number[]): string =>
  ` stroke-width="${num(weight)}"${cap === 'round' ? ' stroke-linecap="round"' : ''}${dash ? ` stroke-dasharray="${dash.map(num).join(' ')}"` : ''}`

const paint = (weight: number, fill: 'none' | 'ink' | 'paper'): string =>
  `${fill === 'none' ? '' : ` fill="${fill === 'ink' ? 'currentColor' : PAPER}"`}${weight === 0 ? ' stroke="none"' : ` stroke-width="${num(weight)}"`}`

const num = (n: number): string => `${Math.round(n * 1000) / 1000}`

// XML allows no control characters and no lone surrogates, not even escaped
const allowed = (words: string): string => words.replace(/[\p{Cc}\p{Cs}\ufffe\uffff]/gu, '')

const escaped = (words: string): string => allowed(words).replace(/[&<>"']/g, (letter) => `&#${letter.charCodeAt(0)};`)
