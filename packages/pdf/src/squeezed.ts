import { zlibSync } from 'fflate'
import type PDFDocument from 'pdfkit'

/**
 * Makes the document compress its streams (deflate, RFC 1950) with one implementation everywhere: the library would use
 * Node's own in Node and another in a browser, and the bytes would differ. Every object is finished as soon as its
 * page is, so a long map holds no more than one page of drawing.
 */
export function squeezed(document: PDFDocument): PDFDocument {
  const plain = document.ref.bind(document)
  document.ref = (data) => {
    const made = plain(data)
    const finish = made.finalize.bind(made)
    made.finalize = () => {
      if (made.buffer.length > 0 && made.data.Filter === undefined) {
        made.buffer = [zlibSync(joined(made.buffer))]
        made.data.Filter = 'FlateDecode'
      }
      finish()
    }
    return made
  }
  return document
}

function joined(chunks: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(chunks.reduce((sum, chunk) => sum + chunk.length, 0))
  let at = 0
  for (const chunk of chunks) {
    whole.set(chunk, at)
    at += chunk.length
  }
  return whole
}
