// What the map never asks of the PDF library and its font reader: everything but drawing lines, setting text in TrueType
// fonts of Latin, Greek and Cyrillic letters (all others are boxed before they come here) and tagging.
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

export const pdfLibrary = () => [pdfkit]
