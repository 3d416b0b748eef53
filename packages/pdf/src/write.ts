/// <reference path="./pdfkit.d.ts" />
import type { Mark, Page, Part, Scene } from '@lengthwise/drawing'
import type { PDFStructureElement } from 'pdfkit'
import PDFDocument from 'pdfkit'
import { toBytes } from 'pdfkit/output'
import { pen, pt } from './pen.ts'
import { squeezed } from './squeezed.ts'

/** Two weights of Alegreya Sans as TrueType files; the caller reads them from disk or has them inlined. */
export interface Fonts {
  readonly medium: Uint8Array
  readonly bold: Uint8Array
}

/**
 * A scene as a tagged PDF 1.7: real text, fonts embedded as subsets, title shown, language set, printing at true size
 * asked for, and no clock in it, so that the same scene gives the same bytes in Node and in a browser.
 */
export async function write(scene: Scene, fonts: Fonts): Promise<Uint8Array> {
  const told = Date.parse(scene.date ?? NO_DATE)
  const date = new Date(Number.isNaN(told) ? Date.parse(NO_DATE) : told)
  const document = new PDFDocument({
    autoFirstPage: false,
    font: null,
    compress: false,
    pdfVersion: '1.7',
    tagged: true,
    lang: scene.language,
    displayTitle: true,
    info: { Title: scene.title, Producer: 'Lengthwise', Creator: 'Lengthwise', CreationDate: date, ModDate: date },
  })
  squeezed(document)
  document.registerFont('500', fonts.medium)
  document.registerFont('700', fonts.bold)
  // a viewer that fits the page to the paper would spoil the scale
  const preferences = document._root.data.ViewerPreferences
  if (preferences) preferences.data.PrintScaling = 'None'
  const bytes = toBytes(document)
  const root = document.struct('Document', {})
  document.addStructure(root)
  for (const page of scene.pages) writePage(document, root, page)
  root.end()
  document.end()
  return bytes
}

// a plan without a date, or with one that cannot be read, still needs one that never changes
const NO_DATE = '2000-01-01'

function writePage(document: PDFDocument, root: PDFStructureElement, page: Page): void {
  document.addPage({ size: [pt(page.width), pt(page.height)], margin: 0 })
  const draw = pen(document)
  const section = document.struct('Sect', {})
  root.add(section)
  let list: PDFStructureElement | null = null
  for (const part of page.parts) {
    if (part.role === 'artifact') {
      artifact(document, part.marks, draw)
      continue
    }
    if (part.role !== 'list-item') list = null
    else if (list === null) {
      list = document.struct('L', {})
      section.add(list)
    }
    addPart(document, list ?? section, part, draw)
  }
  section.end()
}

function addPart(document: PDFDocument, parent: PDFStructureElement, part: Part, draw: (mark: Mark) => void): void {
  const content = (): void => part.marks.forEach(draw)
  switch (part.role) {
    case 'heading-1':
      parent.add(document.struct('H1', {}, content))
      return
    case 'heading-2':
      parent.add(document.struct('H2', {}, content))
      return
    case 'list-item': {
      const item = document.struct('LI', {})
      parent.add(item)
      item.add(document.struct('LBody', {}, content))
      return
    }
    case 'figure':
      parent.add(document.struct('Figure', { alt: part.alt ?? '', bbox: bounds(part.marks) }, content))
      return
    case 'table': {
      artifact(document, part.marks, draw)
      const table = document.struct('Table', {})
      parent.add(table)
      for (const row of part.rows ?? []) {
        const line = document.struct('TR', {})
        table.add(line)
        for (const cell of row.cells) {
          const type = cell.header ? 'TH' : 'TD'
          line.add(document.struct(type, cell.header ? { scope: 'Column' } : {}, () => cell.marks.forEach(draw)))
        }
      }
      return
    }
    default:
      parent.add(document.struct('P', {}, content))
  }
}

function artifact(document: PDFDocument, marks: readonly Mark[], draw: (mark: Mark) => void): void {
  document.markContent('Artifact', { type: 'Layout' })
  marks.forEach(draw)
  document.endMarkedContent()
}

function bounds(marks: readonly Mark[]): readonly number[] {
  const xs: number[] = []
  const ys: number[] = []
  const add = (x: number, y: number): void => {
    xs.push(x)
    ys.push(y)
  }
  for (const mark of marks) {
    if (mark.kind === 'line') {
      add(mark.x1, mark.y1)
      add(mark.x2, mark.y2)
    } else if (mark.kind === 'lines')
      for (const [x1, y1, x2, y2] of mark.segments) {
        add(x1, y1)
        add(x2, y2)
      }
    else if (mark.kind === 'path') for (const [x, y] of mark.points) add(x, y)
    else add(mark.x, mark.y)
  }
  const least = (all: readonly number[]): number => all.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY)
  const most = (all: readonly number[]): number => all.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY)
  return xs.length === 0 ? [0, 0, 0, 0] : [pt(least(xs)), pt(least(ys)), pt(most(xs)), pt(most(ys))]
}
