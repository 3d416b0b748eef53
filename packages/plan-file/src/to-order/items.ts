import type { Edge, Hem, Item, Opening, Order, Pillowcase, Rectangle, Seam } from '@lengthwise/pieces'
import { ZERO } from '@lengthwise/units'
import { usualJoining } from '../schema/face.ts'
import type { ItemShape } from '../schema/plan.ts'
import { bothFaces, faceOf, hemOf, needOf, turnedIn } from './face.ts'
import type { SizeKeys } from './size.ts'
import { finishedSize, sizeName } from './size.ts'
import type { UsualFigures } from './usual-figures.ts'

/** What an item takes from the plan around it. */
export interface Around {
  readonly path: string
  readonly seam: Seam
  /** the one cloth of the plan, where there is only one: what an item without a cloth is made from */
  readonly only: readonly string[]
  readonly figures: UsualFigures
  readonly measureIn: Order['measureIn']
}

type Shape<Kind extends ItemShape['item']> = Extract<ItemShape, { item: Kind }>

/** An item of the plan as the trade package knows it. */
export function itemOf(keys: ItemShape, around: Around): Item {
  switch (keys.item) {
    case 'duvet-cover':
      return duvetCover(keys, around)
    case 'pillowcase':
      return pillowcase(keys, around)
    case 'flat-sheet':
      return flatSheet(keys, around)
    case 'fitted-sheet':
      return fittedSheet(keys, around)
    case 'bed-skirt':
      return bedSkirt(keys, around)
    case 'bolster':
      return {
        ...common(keys, around),
        item: 'bolster',
        diameter: keys.diameter,
        length: keys.length,
        ends: keys.ends,
        tieEnd: keys['tie-end'],
        cloth: clothOf(keys, around),
      }
    case 'cushion':
    case 'sham':
      return cushion(keys, around)
    case 'throw':
      return {
        ...common(keys, around),
        item: 'throw',
        finished: finishedSize(keys),
        hem: hemOf(keys.hem, around.figures),
        face: faceOf(keys, clothOf(keys, around)),
      }
    case 'quilt-back':
      return {
        ...common(keys, around),
        item: 'quilt-back',
        quilt: keys.quilt ?? finishedSize(keys),
        overhang: keys.overhang,
        face: faceOf(keys, clothOf(keys, around)),
      }
    case 'strips':
      return {
        ...common(keys, around),
        item: 'strips',
        name: keys.name,
        width: keys.width,
        run: keys.run,
        runs: keys.runs,
        cloth: clothOf(keys, around),
      }
    case 'rectangle':
      return rectangle(keys, around)
  }
}

function common(keys: ItemShape, around: Around) {
  const sized: SizeKeys = 'size' in keys ? keys : {}
  return {
    count: keys.count,
    for: keys.for,
    sizeName: sizeName(sized),
    cot: keys.cot ?? sized.size?.cot ?? false,
    seam: { kind: keys.seam?.kind ?? around.seam.kind, allowance: keys.seam?.allowance ?? around.seam.allowance },
    path: around.path,
  }
}

const clothOf = (keys: { readonly cloth?: readonly string[] | undefined }, around: Around) => keys.cloth ?? around.only

function duvetCover(keys: Shape<'duvet-cover'>, around: Around): Item {
  const named = keys.cloth ?? (keys.front?.cloth || keys.back?.cloth ? undefined : around.only)
  return {
    ...common(keys, around),
    item: 'duvet-cover',
    finished: finishedSize(keys),
    ...bothFaces(named, keys.front, keys.back, usualJoining(around.measureIn)),
    opening: openingOf(keys.opening, around.figures),
    cornerTies: keys['corner-ties'],
    tiesDespiteCaution: keys['ties-despite-caution'] ?? null,
  }
}

function openingOf(keys: Shape<'duvet-cover'>['opening'], figures: UsualFigures): Opening {
  switch (keys.kind) {
    case 'none':
      return { kind: 'none' }
    case 'zip':
      return { kind: 'zip', at: keys.at, zips: keys.zips === 'any' ? null : keys.zips }
    case 'ties':
      return {
        kind: 'ties',
        at: keys.at,
        hem: hemOf(keys.hem, figures),
        spacing: keys.spacing,
        fromCorner: keys['from-corner'],
        tieLength: keys['tie-length'],
        tieWidth: keys['tie-width'],
      }
    case 'flap':
      return { kind: 'flap', at: keys.at, depth: keys.depth, hem: hemOf(keys.hem, figures) }
    default:
      return {
        kind: keys.kind === 'buttons' ? 'buttons' : 'snaps',
        at: keys.at,
        depth: keys.depth,
        turnedIn: turnedIn(keys, figures),
        spacing: keys.spacing,
        fromCorner: keys['from-corner'],
      }
  }
}

function pillowcase(keys: Shape<'pillowcase'>, around: Around): Pillowcase {
  const { figures } = around
  const cloth = clothOf(keys, around)
  const usual = keys.style === 'open-end' ? figures.openEndHem : figures.pillowHem
  const cuffCloth = keys.cuff?.cloth ?? cloth
  return {
    ...common(keys, around),
    item: 'pillowcase',
    style: keys.style,
    faces: keys.faces,
    finished: finishedSize(keys),
    flap: keys.flap,
    flange: keys.style === 'flanged' ? keys.flange : ZERO,
    hem: keys.hem ? hemOf(keys.hem, figures) : { depth: usual, turns: 1, turnedIn: figures.singleTurn },
    cuff: keys.cuff
      ? {
          depth: keys.cuff.depth,
          cloth: cuffCloth,
          trim: keys.cuff.trim ? { depth: keys.cuff.trim.depth, cloth: keys.cuff.trim.cloth ?? cuffCloth } : null,
        }
      : null,
    openingEdge: needOf(keys['opening-edge']),
    cloth,
    backCloth: keys['back-cloth'] ?? cloth,
    lengthRuns: keys['length-runs'],
  }
}

function flatSheet(keys: Shape<'flat-sheet'>, around: Around): Item {
  return {
    ...common(keys, around),
    item: 'flat-sheet',
    finished: finishedSize(keys),
    hems: byEdge((edge) => {
      const said = keys.hems[edge]
      return typeof said === 'string' ? said : hemOf(said, around.figures)
    }),
    face: faceOf(keys, clothOf(keys, around)),
  }
}

function fittedSheet(keys: Shape<'fitted-sheet'>, around: Around): Item {
  const mattress = keys.mattress ?? { ...finishedSize(keys), depth: keys.depth ?? around.figures.mattressDepth }
  return {
    ...common(keys, around),
    item: 'fitted-sheet',
    mattress,
    tuck: keys.tuck,
    casing: keys.casing,
    corners: keys.corners,
    elastic: { where: keys.elastic.where, ratioPercent: keys.elastic.ratio },
    face: faceOf(keys, clothOf(keys, around)),
  }
}

function bedSkirt(keys: Shape<'bed-skirt'>, around: Around): Item {
  const skirtCloth = keys['skirt-cloth'] ?? keys.cloth ?? keys.deck?.cloth ?? around.only
  return {
    ...common(keys, around),
    item: 'bed-skirt',
    base: keys.base ?? finishedSize(keys),
    drop: keys.drop,
    fullnessPercent: keys.fullness,
    style: keys.style,
    pleat: keys.pleat,
    hem: hemOf(keys.hem, around.figures),
    deck: faceOf(keys.deck ?? usualJoining(around.measureIn), keys.deck?.cloth ?? keys.cloth ?? skirtCloth),
    skirtCloth,
  }
}

function cushion(keys: Shape<'cushion' | 'sham'>, around: Around): Item {
  const cloth = clothOf(keys, around)
  return {
    ...common(keys, around),
    item: keys.item,
    finished: finishedSize(keys),
    back: keys.back,
    overlap: keys.overlap,
    flange: keys.flange,
    hem: hemOf(keys.hem, around.figures),
    cloth,
    backCloth: keys['back-cloth'] ?? cloth,
  }
}

function rectangle(keys: Shape<'rectangle'>, around: Around): Rectangle {
  const { hems } = keys
  const edges = byEdge((edge): Hem | 'seam' | 'raw' => {
    const said = 'depth' in hems ? hems : hems[edge]
    if (typeof said === 'object') return hemOf(said, around.figures)
    return said === 'seam' ? 'seam' : 'raw'
  })
  return {
    ...common(keys, around),
    item: 'rectangle',
    name: keys.name,
    size: keys.cut ? { cut: keys.cut } : { finished: finishedSize(keys), edges },
    cloth: clothOf(keys, around),
    sameCloth: keys['same-cloth'],
    lengthRuns: keys['length-runs'],
    needs: byEdge((edge) => needOf(keys.edges[edge])),
  }
}

function byEdge<T>(of: (edge: Edge) => T): Record<Edge, T> {
  return { head: of('head'), foot: of('foot'), left: of('left'), right: of('right') }
}
