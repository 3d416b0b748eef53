// The typeface of the page and of the map it prints: Alegreya Sans (SIL Open Font License 1.1) with the outlines and widths of
// the letters of most European languages and of Vietnamese only. Glyph numbers, kerning and hinting are kept as they are, so
// that the page writes the very bytes the command writes.
import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname } from 'node:path'
import { deflateRawSync } from 'node:zlib'
import { together } from './fonts-together.mjs'

const NAME = 'virtual:map-fonts'
const WEIGHTS = ['400Regular', '500Medium', '700Bold']

// Latin with the letters of Welsh and Vietnamese, Greek, Cyrillic, signs and fractions
const RANGES = [
  [0x20, 0x17f],
  [0x37e, 0x3ce],
  [0x400, 0x45f],
  [0x490, 0x491],
  [0x1a0, 0x1a1],
  [0x1af, 0x1b0],
  [0x218, 0x21b],
  [0x1e80, 0x1e85],
  [0x1e9e, 0x1ef9],
  [0x2002, 0x203a],
  [0x2044, 0x2044],
  [0x20ac, 0x20ac],
  [0x2150, 0x215e],
  [0x2190, 0x2193],
  [0x2212, 0x2215],
  [0x2248, 0x2265],
  [0x25a1, 0x25a1],
]
// tables that neither layout nor embedding reads stay out
const KEPT = [
  'GDEF',
  'GPOS',
  'GSUB',
  'OS/2',
  'cmap',
  'cvt ',
  'fpgm',
  'glyf',
  'head',
  'hhea',
  'hmtx',
  'loca',
  'maxp',
  'name',
  'post',
  'prep',
]
// as the map asks for them
const FEATURES = { lnum: true, tnum: true, kern: true, liga: false, clig: false }

/** Gives the page a module of the letters it has. */
export function mapFonts() {
  return {
    name: 'map-fonts',
    resolveId: (id) => (id === NAME ? `\0${NAME}` : undefined),
    load: (id) => (id === `\0${NAME}` ? `export const LETTERS = ${JSON.stringify(RANGES)}` : undefined),
  }
}

/** The fonts in one piece, deflated, in base64; `src/fonts.ts` unpacks them. */
export function packedFonts() {
  const pdf = createRequire(createRequire(import.meta.url).resolve('@lengthwise/pdf'))
  const fontkit = pdf(pdf.resolve('fontkit', { paths: [dirname(pdf.resolve('pdfkit'))] }))
  const files = WEIGHTS.map((name) => {
    const whole = readFileSync(pdf.resolve(`@expo-google-fonts/alegreya-sans/${name}/AlegreyaSans_${name}.ttf`))
    return thinned(whole, wanted(fontkit.create(whole)))
  })
  return deflateRawSync(together(files), { level: 9 }).toString('base64')
}

// beside a fraction slash digits become small
const FRACTIONS = [...'0123456789'].map((digit) => `${digit}\u2044${digit}`)

/** Glyph numbers of the wanted characters, as the map's features shape them. */
function wanted(font) {
  const glyphs = new Set([0])
  for (const point of font.characterSet) {
    if (!RANGES.some(([first, last]) => point >= first && point <= last)) continue
    // a browser measures by figures as they are, even where it shows others
    glyphs.add(font.glyphForCodePoint(point).id)
    for (const glyph of font.layout(String.fromCodePoint(point), FEATURES).glyphs) glyphs.add(glyph.id)
  }
  for (const text of FRACTIONS) for (const glyph of font.layout(text, FEATURES).glyphs) glyphs.add(glyph.id)
  // the page, unlike the map, is set with ligatures
  for (const text of joined()) for (const glyph of font.layout(text).glyphs) glyphs.add(glyph.id)
  return glyphs
}

/** Two and three letters that a typeface may join. */
function joined() {
  const letters = [...'fijltbhkT']
  const pairs = letters.flatMap((a) => letters.map((b) => a + b))
  return [...pairs, ...pairs.flatMap((pair) => letters.map((c) => pair + c))]
}

/** The font file with empty outlines for all glyphs but the wanted ones and what those are composed of. */
function thinned(file, glyphs) {
  const tables = new Map()
  for (let n = 0; n < file.readUInt16BE(4); n++) {
    const entry = 12 + 16 * n
    const start = file.readUInt32BE(entry + 8)
    tables.set(file.toString('latin1', entry, entry + 4), file.subarray(start, start + file.readUInt32BE(entry + 12)))
  }
  const long = tables.get('head').readInt16BE(50) === 1
  const loca = tables.get('loca')
  const count = tables.get('maxp').readUInt16BE(4)
  const place = (n) => (long ? loca.readUInt32BE(4 * n) : 2 * loca.readUInt16BE(2 * n))
  const outline = (n) => tables.get('glyf').subarray(place(n), place(n + 1))
  for (const n of glyphs) for (const component of componentsOf(outline(n))) glyphs.add(component)

  const outlines = []
  const places = Buffer.alloc(loca.length)
  let at = 0
  for (let n = 0; n <= count; n++) {
    if (long) places.writeUInt32BE(at, 4 * n)
    else places.writeUInt16BE(at / 2, 2 * n)
    if (n === count || !glyphs.has(n)) continue
    outlines.push(outline(n))
    at += outline(n).length
  }
  tables.set('glyf', Buffer.concat(outlines))
  tables.set('loca', places)
  // glyph names are not needed: version 3 of the table has none
  const post = Buffer.from(tables.get('post').subarray(0, 32))
  post.writeUInt32BE(0x00030000, 0)
  tables.set('post', post)
  tables.set('hmtx', wantedMetrics(Buffer.from(tables.get('hmtx')), glyphs))
  tables.set('GPOS', kerningOnly(Buffer.from(tables.get('GPOS'))))
  return assembled(file.subarray(0, 4), tables)
}

/** Zeros for the widths and bearings of glyphs that are not wanted. */
function wantedMetrics(metrics, glyphs) {
  for (let n = 0; 4 * n < metrics.length; n++) if (!glyphs.has(n)) metrics.fill(0, 4 * n, 4 * n + 4)
  return metrics
}

const MARK_TO_BASE = 4
const EXTENSION = 9

/** Placing of loose accents taken out: its features lose their lookups, whose subtables become zeros. */
function kerningOnly(gpos) {
  const features = gpos.readUInt16BE(6)
  for (let n = 0; n < gpos.readUInt16BE(features); n++) {
    const entry = features + 2 + 6 * n
    const lookupCount = features + gpos.readUInt16BE(entry + 4) + 2
    if (['mark', 'mkmk'].includes(gpos.toString('latin1', entry, entry + 4))) gpos.writeUInt16BE(0, lookupCount)
  }
  const lookups = gpos.readUInt16BE(8)
  const subtables = []
  for (let n = 0; n < gpos.readUInt16BE(lookups); n++) {
    const lookup = lookups + gpos.readUInt16BE(lookups + 2 + 2 * n)
    // heads of lookups stand between the subtables and stay
    subtables.push({ type: 0, at: lookup })
    for (let m = 0; m < gpos.readUInt16BE(lookup + 4); m++) {
      const start = lookup + gpos.readUInt16BE(lookup + 6 + 2 * m)
      const type = gpos.readUInt16BE(lookup)
      subtables.push(
        type === EXTENSION
          ? { type: gpos.readUInt16BE(start + 2), at: start + gpos.readUInt32BE(start + 4) }
          : { type, at: start },
      )
    }
  }
  subtables.sort((a, b) => a.at - b.at)
  subtables.forEach(({ type, at }, n) => {
    if (type >= MARK_TO_BASE) gpos.fill(0, at, subtables[n + 1]?.at ?? gpos.length)
  })
  return gpos
}

const ARGS_ARE_WORDS = 1
const HAS_SCALE = 8
const MORE = 32
const HAS_TWO_SCALES = 64
const HAS_MATRIX = 128

function componentsOf(outline) {
  const found = []
  if (outline.length === 0 || outline.readInt16BE(0) >= 0) return found
  for (let at = 10, flags = MORE; flags & MORE; ) {
    flags = outline.readUInt16BE(at)
    found.push(outline.readUInt16BE(at + 2))
    at += 4 + (flags & ARGS_ARE_WORDS ? 4 : 2)
    at += flags & HAS_SCALE ? 2 : flags & HAS_TWO_SCALES ? 4 : flags & HAS_MATRIX ? 8 : 0
  }
  return found
}

function assembled(version, tables) {
  const names = KEPT.filter((name) => tables.has(name))
  const directory = Buffer.alloc(12 + 16 * names.length)
  version.copy(directory)
  directory.writeUInt16BE(names.length, 4)
  const parts = [directory]
  let at = directory.length
  names.forEach((name, n) => {
    const table = tables.get(name)
    const entry = 12 + 16 * n
    directory.write(name, entry, 'latin1')
    directory.writeUInt32BE(at, entry + 8)
    directory.writeUInt32BE(table.length, entry + 12)
    const padding = Buffer.alloc((4 - (table.length % 4)) % 4)
    parts.push(table, padding)
    at += table.length + padding.length
  })
  return Buffer.concat(parts)
}
