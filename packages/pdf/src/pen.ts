/// <reference path="./pdfkit.d.ts" />
import type { Mark } from '@lengthwise/drawing'
import { printable, textWidth, typeSize } from '@lengthwise/drawing'
import type PDFDocument from 'pdfkit'

/** Draws marks on the document's current page; remembers weight, dashes and cap, so that nothing is set twice. */
export function pen(document: PDFDocument): (mark: Mark) => void {
  let weight = -1
  let dash = ''
  let cap = 'butt'
  function set(mark: { weight: number; dash?: readonly number[]; cap?: 'butt' | 'round' }): void {
    if (mark.weight !== weight) document.lineWidth(pt(mark.weight))
    weight = mark.weight
    const wanted = (mark.dash ?? []).join(' ')
    if (wanted !== dash) {
      if (mark.dash) document.dash(mark.dash.map(pt), {})
      else document.undash()
    }
    dash = wanted
    const ends = mark.cap ?? 'butt'
    if (ends !== cap) document.lineCap(ends)
    cap = ends
  }
  function paint(fill: 'none' | 'ink' | 'paper', outlined: boolean): void {
    if (fill === 'none') document.stroke()
    else {
      if (fill === 'paper') document.fillColor(WHITE)
      if (outlined) document.fillAndStroke()
      else document.fill()
      if (fill === 'paper') document.fillColor(BLACK)
    }
  }
  return (mark) => {
    switch (mark.kind) {
      case 'line':
        set(mark)
        document.moveTo(pt(mark.x1), pt(mark.y1)).lineTo(pt(mark.x2), pt(mark.y2)).stroke()
        return
      case 'lines':
        set(mark)
        for (const [x1, y1, x2, y2] of mark.segments) document.moveTo(pt(x1), pt(y1)).lineTo(pt(x2), pt(y2))
        document.stroke()
        return
      case 'path': {
        set(mark)
        mark.points.forEach(([x, y], i) => {
          if (i === 0) document.moveTo(pt(x), pt(y))
          else document.lineTo(pt(x), pt(y))
        })
        if (mark.closed) document.closePath()
        paint(mark.fill, mark.weight > 0)
        return
      }
      case 'circle':
        set(mark)
        document.circle(pt(mark.x), pt(mark.y), pt(mark.r))
        paint(mark.fill, mark.weight > 0)
        return
      case 'text':
        writeText(document, mark)
    }
  }
}

function writeText(document: PDFDocument, mark: Extract<Mark, { kind: 'text' }>): void {
  const before =
    mark.anchor === 'start' ? 0 : textWidth(mark.text, mark.capital, mark.weight) * (mark.anchor === 'end' ? 1 : 0.5)
  const turned = mark.turn === 90
  if (turned) document.save().rotate(-90, { origin: [pt(mark.x), pt(mark.y)] })
  if (mark.ink === 'paper') document.fillColor(WHITE)
  document
    .font(`${mark.weight}`)
    .fontSize(pt(typeSize(mark.capital, mark.weight)))
    .text(printable(mark.text), pt(mark.x - before), pt(mark.y), {
      lineBreak: false,
      baseline: 'alphabetic',
      features: FEATURES,
    })
  if (mark.ink === 'paper') document.fillColor(BLACK)
  if (turned) document.restore()
}

// by their numbers, so that a list of colour names is not needed
const WHITE = '#ffffff'
const BLACK = '#000000'

// lining tabular figures; no ligatures, so that text measures what it was measured to be
const FEATURES = { lnum: true, tnum: true, kern: true, liga: false, clig: false }

/** Millimetres to points, to a thousandth. */
export const pt = (mm: number): number => Math.round((mm * 72_000) / 25.4) / 1000
