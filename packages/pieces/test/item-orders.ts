import type { Length, Share } from '@lengthwise/units'
import { cm, NO_SHARE, ZERO } from '@lengthwise/units'
import type {
  BedSkirt,
  Bolster,
  Cloth,
  ClothOnTable,
  Cushion,
  DuvetCover,
  FaceSpec,
  FittedSheet,
  Hem,
  Item,
  Order,
  Pillowcase,
  Print,
  Seam,
  Strips,
} from '../src/index.ts'

/** Orders of one item in centimetres, for tests of the single items; every part can be replaced. */
export const SEAM: Seam = { kind: 'plain', allowance: cm(1.5) }
export const PLAIN: Print = {
  way: 'plain',
  top: 'cut-end',
  repeat: ZERO,
  acrossRepeat: ZERO,
  match: 'none',
  repeatMeasured: 'on-the-table',
  matchLine: ZERO,
  motif: null,
}

export function bolt(name: string, width: Length, parts: Partial<Cloth> = {}): Cloth {
  return {
    name,
    from: 'bolt',
    widths: [{ width, price: null }],
    price: null,
    soldBy: cm(10),
    smallestSale: ZERO,
    have: ZERO,
    sold: true,
    size: null,
    count: 1,
    edges: {
      head: { kind: 'raw' },
      foot: { kind: 'raw' },
      left: { kind: 'selvedge' },
      right: { kind: 'selvedge' },
    },
    mustKeep: [],
    shrinks: { along: NO_SHARE, across: NO_SHARE },
    unusedSelvedge: ZERO,
    spareEachEnd: ZERO,
    flaws: [],
    print: PLAIN,
    divideBy: 'tearing',
    lostPerTear: ZERO,
    ...parts,
  }
}

/** A ready-made sheet with a deep head hem and a narrow foot hem. */
export function sheet(name: string, width: Length, length: Length, head: Length, foot: Length): Cloth {
  const cloth = bolt(name, width, { from: 'sheet', widths: [], size: { width, length }, soldBy: ZERO, sold: false })
  const edges = { ...cloth.edges, head: { kind: 'hem', depth: head }, foot: { kind: 'hem', depth: foot } } as const
  return { ...cloth, edges }
}

/** The cloth as it lies when nothing is washed before cutting. */
export function asItLies(cloth: Cloth): ClothOnTable {
  const width = cloth.size?.width ?? cloth.widths[0]!.width
  return {
    cloth,
    widthIndex: cloth.from === 'bolt' ? 0 : -1,
    width,
    length: cloth.size?.length ?? null,
    usableWidth: width,
    selvedges: { left: true, right: true },
    edges: cloth.edges,
    repeat: cloth.print.repeat,
    acrossRepeat: cloth.print.acrossRepeat,
    matchLine: cloth.print.matchLine,
  }
}

export function orderOf(items: readonly Item[], cloths: readonly Cloth[], parts: Partial<Order> = {}): Order {
  return {
    title: 'test',
    date: null,
    measureIn: 'cm',
    currency: null,
    wash: 'none',
    seam: SEAM,
    markTo: cm(0.5),
    worthKeeping: { width: cm(20), length: cm(50) },
    items,
    cloths,
    ...parts,
  }
}

export const hem = (depth: number, turns: 1 | 2 = 2): Hem => ({
  depth: cm(depth),
  turns,
  turnedIn: turns === 2 ? cm(depth) : cm(1),
})

export const shrinking = (along: Share, across: Share) => ({ along, across })

const common = { count: 1, for: '', sizeName: null, cot: false, seam: SEAM, path: 'make[0]' } as const

export const face = (cloth: string, parts: Partial<FaceSpec> = {}): FaceSpec => ({
  cloth: [cloth],
  joined: 'any',
  smallestPanel: cm(15),
  centre: 'full',
  crossJoins: 0,
  selvedgeToSelvedge: false,
  lengthRuns: 'either',
  mostSeams: null,
  band: null,
  zipEdge: null,
  ...parts,
})

export const duvetCover = (parts: Partial<DuvetCover> = {}): DuvetCover => ({
  item: 'duvet-cover',
  ...common,
  finished: { width: cm(200), length: cm(200) },
  front: face('cotton'),
  back: face('cotton'),
  opening: { kind: 'zip', at: 'foot', zips: null },
  cornerTies: { count: 0, length: cm(25), width: cm(2), bought: false },
  tiesDespiteCaution: null,
  ...parts,
})

export const pillowcase = (parts: Partial<Pillowcase> = {}): Pillowcase => ({
  item: 'pillowcase',
  ...common,
  style: 'inside-flap',
  faces: 'any',
  finished: { width: cm(50), length: cm(75) },
  flap: cm(15),
  flange: cm(5),
  hem: hem(3.5, 1),
  cuff: null,
  openingEdge: { kind: 'none' },
  cloth: ['cotton'],
  backCloth: ['cotton'],
  lengthRuns: 'either',
  ...parts,
})

export const fittedSheet = (parts: Partial<FittedSheet> = {}): FittedSheet => ({
  item: 'fitted-sheet',
  ...common,
  mattress: { width: cm(150), length: cm(200), depth: cm(32) },
  tuck: cm(12),
  casing: cm(3),
  corners: 'cut',
  elastic: { where: 'all-round', ratioPercent: 60 },
  face: face('cotton'),
  ...parts,
})

export const bedSkirt = (parts: Partial<BedSkirt> = {}): BedSkirt => ({
  item: 'bed-skirt',
  ...common,
  base: { width: cm(150), length: cm(200) },
  drop: cm(35),
  fullnessPercent: 250,
  style: 'gathered',
  pleat: cm(15),
  hem: hem(3),
  deck: face('cotton'),
  skirtCloth: ['cotton'],
  ...parts,
})

export const bolster = (parts: Partial<Bolster> = {}): Bolster => ({
  item: 'bolster',
  ...common,
  diameter: cm(20),
  length: cm(90),
  ends: 'circles',
  tieEnd: cm(15),
  cloth: ['cotton'],
  ...parts,
})

export const cushion = (parts: Partial<Cushion> = {}): Cushion => ({
  item: 'cushion',
  ...common,
  finished: { width: cm(45), length: cm(45) },
  back: 'envelope',
  overlap: cm(12),
  flange: cm(0),
  hem: hem(2),
  cloth: ['cotton'],
  backCloth: ['cotton'],
  ...parts,
})

export const strips = (parts: Partial<Strips> = {}): Strips => ({
  item: 'strips',
  ...common,
  name: 'binding',
  width: cm(6),
  run: cm(700),
  runs: 'either',
  cloth: ['cotton'],
  ...parts,
})
