// what this package uses of pdfkit 0.20, which publishes no types
declare module 'pdfkit' {
  type Content = (() => void) | PDFStructureElement | readonly (PDFStructureElement | (() => void))[]
  export class PDFStructureElement {
    add(child: PDFStructureElement | (() => void)): this
    end(): void
  }
  interface PDFReference {
    buffer: readonly Uint8Array[]
    readonly data: Record<string, unknown>
    finalize(): void
  }
  export default class PDFDocument {
    constructor(options: Record<string, unknown>)
    ref(data?: Record<string, unknown>): PDFReference
    readonly _root: { data: { ViewerPreferences?: { data: Record<string, unknown> } } }
    addPage(options: { size: readonly [number, number]; margin: number }): this
    registerFont(name: string, font: Uint8Array): this
    font(name: string): this
    fontSize(size: number): this
    text(text: string, x: number, y: number, options: Record<string, unknown>): this
    moveTo(x: number, y: number): this
    lineTo(x: number, y: number): this
    closePath(): this
    circle(x: number, y: number, r: number): this
    lineWidth(width: number): this
    lineCap(cap: 'butt' | 'round'): this
    dash(lengths: readonly number[], options: { phase?: number }): this
    undash(): this
    fillColor(colour: string): this
    stroke(): this
    fill(): this
    fillAndStroke(): this
    save(): this
    restore(): this
    rotate(degrees: number, options: { origin: readonly [number, number] }): this
    struct(type: string, options: Record<string, unknown>, content?: Content): PDFStructureElement
    addStructure(element: PDFStructureElement): this
    markContent(tag: string, options?: Record<string, unknown>): this
    endMarkedContent(): this
    end(): void
  }
}
declare module 'pdfkit/output' {
  import type PDFDocument from 'pdfkit'
  export function toBytes(document: PDFDocument): Promise<Uint8Array>
}
