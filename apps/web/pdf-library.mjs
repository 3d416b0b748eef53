// What the map never asks of the PDF library and its font reader: everything but drawing lines, setting text in TrueType
// fonts of Latin, Greek and Cyrillic letters (all others are boxed before they come here) and tagging.
import { fileURLToPath } from 'node:url'
import { leavingOut } from './leaving-out.mjs'

const pdfkit = leavingOut({
  file: /\/pdfkit\/js\/pdfkit\.browser\.mjs$/,
  wanted: ['default'],
  refused: [
    'fs',
    'JPEG',
    'LineWrapper',
    'namedColors',
    'PDFA',
    'PDFGradient$1',
    'PDFLinearGradient$1',
    'PDFRadialGradient$1',
    'PDFTable',
    'PDFTilingPattern$1',
    'PDFUA',
    'PNGImage',
    'SIZES',
    'StandardFont',
    'SVGPath',
  ],
  only: {
    AcroFormMixin: ['endAcroForm'],
    AnnotationsMixin: [],
    AttachmentsMixin: [],
    ImagesMixin: ['initImages'],
    PDFSecurity: ['generateFileID', 'create', 'constructor'],
    TextMixin: ['initText', '_text', 'text', 'widthOfString', '_initOptions', '_line', '_fragment'],
    VectorMixin: [
      'initVector',
      'save',
      'restore',
      'closePath',
      'lineWidth',
      '_CAP_STYLES',
      'lineCap',
      'dash',
      'undash',
      'moveTo',
      'lineTo',
      'bezierCurveTo',
      'ellipse',
      'circle',
      '_windingRule',
      'fill',
      'stroke',
      'fillAndStroke',
      'transform',
      'rotate',
    ],
  },
  uncalled: ['createHasher', 'registerFile'],
})

// the bundle of the font reader has names like these: the first part stands for a file, the last for what it gives
const MODULE = '$export$2e2bcd8739ae039'
const fontkit = leavingOut({
  file: /\/fontkit\/dist\/browser-module\.mjs$/,
  wanted: ['create'],
  refused: [
    // other kinds of font files: WOFF, WOFF2, collections, resource forks
    `$760785214b9fc52c${MODULE}`,
    `$21ee218f84ac7f32${MODULE}`,
    `$cd5853a56c68fec7${MODULE}`,
    `$05f49f930186144e${MODULE}`,
    // other kinds of outlines: CFF and its subsets, pictures, colours; fonts that vary
    `$62cc5109c6101893${MODULE}`,
    `$001d739428a71d5a${MODULE}`,
    `$25d8f049c222084c${MODULE}`,
    `$0d411f0165859681${MODULE}`,
    `$0bb840cac04e911b${MODULE}`,
    // shaping by other tables, and placing accents and pairs without tables
    `$ba6dd74203be8728${MODULE}`,
    `$0a4bdfeb6dfd6f5e${MODULE}`,
    `$0bba3a9db57637f3${MODULE}`,
    // names of characters before Unicode, names of letters
    '$e449ad78d50845fe$export$1dceb3c14ed68bee',
    `$7713b9b7b438dff8${MODULE}`,
    // outlines as paths
    `$f43aec954cdfdf21${MODULE}`,
  ],
  instead: {
    // languages of names, by number
    $e449ad78d50845fe$export$2092376fd002e13: '[[], {}, [], {}]',
  },
  only: {
    // the font, its letters, their TrueType outlines
    [`$4c1709dee528ea76${MODULE}`]: [
      'probe',
      '_getTable',
      '_getTableStream',
      '_decodeDirectory',
      '_decodeTable',
      'getName',
      'postscriptName',
      'ascent',
      'descent',
      'lineGap',
      'italicAngle',
      'capHeight',
      'xHeight',
      'unitsPerEm',
      'bbox',
      '_cmapProcessor',
      'glyphForCodePoint',
      'glyphsForString',
      '_layoutEngine',
      'layout',
      '_getBaseGlyph',
      'getGlyph',
      'createSubset',
      '_variationProcessor',
      'constructor',
    ],
    [`$f92906be28e61769${MODULE}`]: ['_getTableMetrics', '_getMetrics', 'cbox', 'advanceWidth', 'constructor'],
    [`$69aac16029968692${MODULE}`]: [
      '_getCBox',
      '_parseGlyphCoord',
      '_decode',
      '_decodeSimple',
      '_decodeComposite',
      '_getMetrics',
      'constructor',
    ],
    [`$f08dd41ef10b694c${MODULE}`]: ['findSubtable', 'lookup', 'getVariationSelector', 'constructor'],
    // setting a line of text
    [`$4c0a7fa5df7a9ab1${MODULE}`]: [
      'layout',
      'substitute',
      'position',
      'hideDefaultIgnorables',
      'isDefaultIgnorable',
      'constructor',
    ],
    $130d1a642ebcd2b7$var$UNICODE_SCRIPTS: ['Latin', 'Greek', 'Cyrillic', 'Unknown'],
    $130d1a642ebcd2b7$var$RTL: [],
    // encodes the outlines of fonts that vary
    [`$807e58506be70005${MODULE}`]: [],
    // tables of TrueType fonts
    $c3395722bea751e2$var$tables: [
      'cmap',
      'head',
      'hhea',
      'hmtx',
      'maxp',
      'name',
      'OS/2',
      'post',
      'fpgm',
      'loca',
      'prep',
      'cvt ',
      'glyf',
      'GDEF',
      'GPOS',
      'GSUB',
    ],
    // the shaper of scripts whose letters stand one after the other
    $102b6fe50f1d50b4$var$SHAPERS: ['latn', 'DFLT'],
  },
  about: { $parcel$export: 0, $6uUbQ$_: 0, $6uUbQ$_1: 1 },
})

// small modules of our own in place of large ones
const STAND_INS = ['clone', 'unicode-properties']
const standIns = {
  name: 'stand-ins',
  enforce: 'pre',
  resolveId: (id) =>
    STAND_INS.includes(id) ? fileURLToPath(new URL(`stand-ins/${id}.mjs`, import.meta.url)) : undefined,
}

/** The plugins that thin what the PDF writer is built of. */
export const pdfLibrary = () => [standIns, pdfkit, fontkit]
