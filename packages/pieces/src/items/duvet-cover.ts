import type { Length } from '@lengthwise/units'
import { beforeShrinking, cm, length, roundUpTo, sum, ZERO } from '@lengthwise/units'
import type { RefusedWay, Ways } from '../answers.ts'
import { MOST_WAYS, makePiece } from '../build.ts'
import type { Cloth, ClothOnTable } from '../cloth.ts'
import { coverSeam, MEETS, marksOnEdge } from '../covers.ts'
import type { FaceAsk, FaceWay } from '../faces/face.ts'
import { plainEdge } from '../faces/face.ts'
import { waysOfFace } from '../faces/face-ways.ts'
import { footAllowance, waysOfKeptHems } from '../faces/kept-hems.ts'
import type { FaceEdge, FaceEdges } from '../faces/lanes.ts'
import { lossesInCommon, lossesOf, mostShrinks, sameShrinks, shrinkAlike } from '../faces/shrinking.ts'
import type { DuvetCover, Edge, Opening, Order } from '../order.ts'
import { EDGES } from '../order.ts'
import { evenly } from '../rows.ts'
import { hemTake, threadLength } from '../thread.ts'
import type { Notion, Piece, SeamLine, Way } from '../way.ts'
import type { ZipChoice } from '../zips.ts'
import { chooseZips, zipNotions } from '../zips.ts'
import { sewDuvetCover } from './duvet-cover-sewing.ts'

/** Every front with every back whose seams shrink alike, the best by cloth area and seams when there are too many. */
export function waysForDuvetCover(order: Order, item: DuvetCover, tables: ReadonlyMap<string, ClothOnTable>): Ways {
  const asks = faceAsks(item)
  const refused: RefusedWay[] = []
  let capped = false
  const pairs: Pair[] = []
  // both faces are cut for the loss of the one that shrinks more
  for (const shrinks of lossesInCommon([...lossesOf(order, item.front), ...lossesOf(order, item.back)])) {
    const front = waysOfFace(order, { ...asks.front, shrinks }, tables)
    const back =
      item.back.zipEdge === null
        ? waysOfFace(order, { ...asks.back, shrinks }, tables)
        : waysOfKeptHems(order, { ...asks.back, shrinks }, item.back.zipEdge, tables)
    refused.push(...front.refused, ...back.refused)
    capped ||= front.capped || back.capped
    front.ways.forEach((f, i) => {
      back.ways.forEach((b, k) => {
        if (!sameShrinks(mostShrinks(f.shrinks, b.shrinks), shrinks) || !shrinkAlike(f.shrinks, b.shrinks)) return
        // faces asked for alike are interchangeable: each pair once
        if (asks.alike && i > k) return
        const area = f.width * f.length + b.width * b.length
        pairs.push({ front: f, back: b, same: asks.alike && i === k, area, nth: pairs.length })
      })
    })
  }
  const { opening } = item
  const zip = opening.kind === 'zip' ? chooseZips(order, edgeOfCover(item, opening.at), opening.zips) : null
  const joins = ({ front, back }: Pair): number => front.joins + back.joins
  const kept = [...pairs]
    .sort((p, q) => p.area - q.area || joins(p) - joins(q) || p.nth - q.nth)
    .slice(0, MOST_WAYS)
    .sort((p, q) => p.nth - q.nth)
  return {
    ways: kept.map((pair) => coverOf(order, item, asks, pair, zip)),
    refused: refused.filter((r, i) => refused.findIndex((o) => o.words === r.words && o.why === r.why) === i),
    capped: capped || kept.length < pairs.length,
  }
}

interface Pair {
  readonly front: FaceWay
  readonly back: FaceWay
  /** both faces made the same way */
  readonly same: boolean
  readonly area: number
  readonly nth: number
}

interface Asks {
  /** front and back are asked for alike */
  readonly alike: boolean
  readonly front: FaceAsk
  readonly back: FaceAsk
}

function faceAsks(item: DuvetCover): Asks {
  const { opening, seam, finished } = item
  const plain = plainEdge(seam.allowance)
  const edges = (at: Edge | null, edge: FaceEdge): FaceEdges => ({
    head: plain,
    foot: plain,
    left: plain,
    right: plain,
    ...(at === null ? {} : { [at]: edge }),
  })
  const [frontEdge, backEdge] = openingEdges(opening, seam.allowance)
  const at = opening.kind === 'none' ? null : opening.at
  const neverJoined = item.cot ? NEVER_JOINED : null
  const common = { seam, finished, neverJoined }
  let frontEdges = edges(at, frontEdge)
  let backEdges = edges(at === null ? null : MEETS[at], backEdge)
  if (item.back.zipEdge !== null) {
    const foot = plainEdge(footAllowance(item.back.zipEdge))
    frontEdges = { ...frontEdges, foot }
    backEdges = { ...backEdges, foot }
  }
  const alike =
    item.back.zipEdge === null && JSON.stringify([item.front, frontEdges]) === JSON.stringify([item.back, backEdges])
  return {
    alike,
    front: { ...common, name: '/front', words: 'Front', spec: item.front, edges: frontEdges },
    back: { ...common, name: '/back', words: 'Back', spec: item.back, edges: backEdges },
  }
}

/** The standard speaks of sheets for children; kept here for everything in a cot. */
export const NEVER_JOINED =
  'a child’s sheet is made of one piece (GOST 31307-2005, 3.2.1), and so is everything for a cot here'

/** What front and back have beyond the finished edge at the opening. */
function openingEdges(opening: Opening, allowance: Length): readonly [FaceEdge, FaceEdge] {
  const hemmed = (take: Length): FaceEdge => ({ ...plainEdge(take), folds: [ZERO] })
  switch (opening.kind) {
    case 'none':
    case 'zip':
      return [plainEdge(allowance), plainEdge(allowance)]
    case 'buttons':
    case 'snaps': {
      const placket = hemmed(length(opening.depth + opening.turnedIn))
      return [placket, placket]
    }
    case 'ties': {
      const hem = hemmed(hemTake(opening.hem))
      return [hem, hem]
    }
    case 'flap': {
      const hem = hemTake(opening.hem)
      return [hemmed(hem), { ...plainEdge(length(opening.depth + hem)), folds: [ZERO, opening.depth] }]
    }
  }
}

function coverOf(order: Order, item: DuvetCover, asks: Asks, pair: Pair, zip: ZipChoice | null): Way {
  const { front, back, same } = pair
  const { opening, seam } = item
  const at: Edge | null = opening.kind === 'none' ? null : opening.at
  const keptHems = item.back.zipEdge

  // faces with their marks
  const marked = markOpening(item, asks, front, back, zip)
  // between the faces: every edge but a folded opening
  const seams: SeamLine[] = [...marked.front.seams, ...marked.back.seams]
  for (const edge of EDGES) {
    const open = edge === at && keptHems === null
    if (open && opening.kind !== 'zip') continue
    const foot = edge === 'foot' && keptHems !== null ? footAllowance(keptHems) : seam.allowance
    seams.push(
      ...coverSeam(seam, marked.front, marked.back, edge, open ? 'opening' : 'side', {
        allowanceA: foot,
        allowanceB: foot,
        ...(open ? { kind: 'zip' as const } : {}),
      }),
    )
  }
  const ties = tiePieces(order, item, front.cloths[0] as Cloth)
  const pieces = [...marked.front.pieces, ...marked.back.pieces, ...ties]
  const hems = at === null || opening.kind === 'zip' ? ZERO : sum(rawEdge(front, at), rawEdge(back, at))
  const notions: Notion[] = [
    ...openingNotions(item, zip),
    ...(item.cornerTies.bought && item.cornerTies.count > 0
      ? [
          {
            what: 'cord' as const,
            length: length(item.cornerTies.count * item.cornerTies.length),
            words: 'cord or tape for the corner ties',
          },
        ]
      : []),
    { what: 'thread', length: threadLength(pieces, seams, hems), words: 'sewing thread' },
  ]
  return {
    id: same ? `both/${front.id}` : `front/${front.id}+back/${back.id}`,
    words: same ? `front and back: ${front.words}` : `front: ${front.words}; back: ${back.words}`,
    pieces,
    seams,
    joins: front.joins + back.joins,
    notions,
    sewing: sewDuvetCover(order, item, pieces, seams, { zip, hems }),
  }
}

/** An edge of a face before its neighbours are sewn: openings are worked first. */
const rawEdge = (face: FaceWay, edge: Edge): Length => (edge === 'head' || edge === 'foot' ? face.width : face.length)

/** Finished length of an edge of the cover. */
export const edgeOfCover = (item: DuvetCover, edge: Edge): Length =>
  edge === 'head' || edge === 'foot' ? item.finished.width : item.finished.length

/** Buttons, zip ends and ties marked on both faces. */
function markOpening(
  item: DuvetCover,
  asks: Asks,
  front: FaceWay,
  back: FaceWay,
  zip: ZipChoice | null,
): { front: FaceWay; back: FaceWay } {
  const { opening, cornerTies, seam } = item
  let [f, b] = [front, back]
  if (cornerTies.count > 0) {
    const ends: readonly Edge[] = cornerTies.count === 4 ? ['head', 'foot'] : ['head']
    for (const edge of ends) {
      const width = item.finished.width
      const corners = [ZERO, width].map((place) => ({ at: place, of: width }))
      f = marksOnEdge(f, edge, 'tie', corners, beyondAt(asks.front, edge), asks.front.edges[edge].beyond)
    }
  }
  if (opening.kind === 'none' || opening.kind === 'flap') return { front: f, back: b }
  const of = edgeOfCover(item, opening.at)
  const kind = opening.kind === 'zip' ? 'zip-end' : opening.kind === 'ties' ? 'tie' : 'button'
  const places =
    opening.kind === 'zip'
      ? zip === null
        ? []
        : [length(Math.floor((of - zip.opening) / 2)), length(Math.ceil((of + zip.opening) / 2))]
      : evenly(of, opening.fromCorner, opening.spacing)
  const spots = places.map((at) => ({ at, of }))
  // rows of buttons run down the middle of the placket, zip and ties lie at the finished edge
  const inward = (ask: FaceAsk, edge: Edge): Length =>
    kind === 'button' && 'depth' in opening
      ? length(ask.edges[edge].beyond + Math.floor(opening.depth / 2))
      : ask.edges[edge].beyond
  if (item.back.zipEdge === null) {
    f = marksOnEdge(f, opening.at, kind, spots, beyondAt(asks.front, opening.at), inward(asks.front, opening.at))
    const behind = MEETS[opening.at]
    b = marksOnEdge(b, behind, kind, spots, beyondAt(asks.back, behind), inward(asks.back, behind))
  } else {
    // between two kept hems the zip ends are marked on the fold of the strip, as far from its foot as it is long
    b = marksOnEdge(b, 'foot', kind, spots, beyondAt(asks.back, 'foot'), b.pieces.at(-1)?.cutLength ?? seam.allowance)
    b = { ...b, pieces: b.pieces.map((piece) => withZipEndsOf(b.pieces, piece)) }
  }
  return { front: f, back: b }
}

/** The body has the zip ends of its strip on its own hem: both are equally wide. */
function withZipEndsOf(pieces: readonly Piece[], piece: Piece): Piece {
  if (!piece.name.endsWith('body')) return piece
  const strip = pieces.find((other) => other.name === piece.name.replace(/body$/, 'zip-strip'))
  const ends = (strip?.marks ?? []).filter((mark) => mark.kind === 'zip-end')
  return { ...piece, marks: [...piece.marks, ...ends.map((mark) => ({ ...mark, y: piece.cutLength }))] }
}

function beyondAt(ask: FaceAsk, edge: Edge): { start: Length; end: Length } {
  const [start, end]: readonly [Edge, Edge] = edge === 'head' || edge === 'foot' ? ['left', 'right'] : ['head', 'foot']
  return { start: ask.edges[start].beyond, end: ask.edges[end].beyond }
}

/** Turned in at the free end of a tie (common practice, no source). */
const TIE_END = cm(1)

/** Ties cut from the cloth of the front: folded in four along their length, so four times as wide as finished. */
function tiePieces(order: Order, item: DuvetCover, cloth: Cloth): readonly Piece[] {
  const { opening, cornerTies, seam } = item
  const tie = (name: string, words: string, count: number, tieLength: Length, width: Length): Piece => {
    const shrinks = order.wash === 'after-sewing' ? Math.max(cloth.shrinks.along, cloth.shrinks.across) : 0
    const cut = (finished: number, allowance: number): Length =>
      roundUpTo(
        length(beforeShrinking(length(finished), shrinks as Cloth['shrinks']['along']) + allowance),
        order.markTo,
      )
    const piece = makePiece(cloth, {
      name,
      words,
      size: { width: cut(4 * width, 0), length: cut(tieLength, seam.allowance + TIE_END) },
      run: 'either',
      count,
    })
    // nobody sees which way up a tie is
    return { ...piece, mayTurnEndForEnd: true, headToward: null, uppermost: null }
  }
  const pieces: Piece[] = []
  if (cornerTies.count > 0 && !cornerTies.bought)
    pieces.push(tie('/corner-tie', 'Corner tie', cornerTies.count, cornerTies.length, cornerTies.width))
  if (opening.kind === 'ties') {
    const places = evenly(edgeOfCover(item, opening.at), opening.fromCorner, opening.spacing).length
    pieces.push(tie('/tie', 'Tie', 2 * places, opening.tieLength, opening.tieWidth))
  }
  return pieces
}

function openingNotions(item: DuvetCover, zip: ZipChoice | null): readonly Notion[] {
  const { opening } = item
  if (opening.kind === 'zip' && zip !== null) return zipNotions(zip, `zip for the ${opening.at} of the cover`)
  if (opening.kind !== 'buttons' && opening.kind !== 'snaps') return []
  const count = evenly(edgeOfCover(item, opening.at), opening.fromCorner, opening.spacing).length
  return [{ what: opening.kind, count, words: `${opening.kind} for the ${opening.at} of the cover` }]
}
