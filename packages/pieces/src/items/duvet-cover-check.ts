import type { Problem } from '@lengthwise/units'
import { checkFaceSpec, checkSeam, clothsNamed, problem } from '../check-parts.ts'
import type { Cloth } from '../cloth.ts'
import { footAllowance, SHALLOWEST_HEM_FOR_ZIP } from '../faces/kept-hems.ts'
import { lossesInCommon, lossesOf } from '../faces/shrinking.ts'
import type { DuvetCover, Order } from '../order.ts'
import { say } from '../sewing.ts'
import { hemTake } from '../thread.ts'
import { chooseZips } from '../zips.ts'
import { edgeOfCover } from './duvet-cover.ts'

/** What is wrong with the cover as the plan has it. */
export function checkDuvetCover(order: Order, item: DuvetCover): readonly Problem[] {
  return [
    ...checkSeam(item),
    ...checkFaceSpec(order, item, item.front, `${item.path}.front`),
    ...checkFaceSpec(order, item, item.back, `${item.path}.back`),
    ...checkBands(item),
    ...checkOpening(order, item),
    ...checkZipEdge(order, item),
    ...checkCot(item),
    ...checkShrinking(order, item),
  ]
}

function checkBands(item: DuvetCover): readonly Problem[] {
  return (['front', 'back'] as const).flatMap((name) => {
    const { band } = item[name]
    return band !== null && band.depth >= item.finished.length
      ? [
          problem(
            'band',
            `${item.path}.${name}.band`,
            'the band is as deep as the cover is long',
            'give a shallower band',
          ),
        ]
      : []
  })
}

function checkOpening(order: Order, item: DuvetCover): readonly Problem[] {
  const { opening } = item
  if (opening.kind === 'none') return []
  const path = `${item.path}.opening`
  const edge = edgeOfCover(item, opening.at)
  const across = opening.at === 'head' || opening.at === 'foot' ? item.finished.length : item.finished.width
  const problems: Problem[] = []
  const take =
    opening.kind === 'zip'
      ? 0
      : opening.kind === 'ties'
        ? hemTake(opening.hem)
        : opening.kind === 'flap'
          ? opening.depth + hemTake(opening.hem)
          : opening.depth + opening.turnedIn
  if (take >= across)
    problems.push(
      problem(
        'opening-too-deep',
        path,
        'the opening is deeper than the cover',
        `make it shallower than ${say(order, across)}`,
      ),
    )
  if (opening.kind === 'zip' && chooseZips(order, edge, opening.zips) === null)
    problems.push(
      problem(
        'zip-too-long',
        `${path}.zips`,
        `no zip to hand is short enough for an edge of ${say(order, edge)}`,
        'add a shorter zip to the list, or take zips: any',
      ),
    )
  if ('fromCorner' in opening && 2 * opening.fromCorner >= edge)
    problems.push(
      problem(
        'from-corner',
        `${path}.from-corner`,
        'the first and last places would pass each other',
        `give less than half the edge of ${say(order, edge)}`,
      ),
    )
  if ('spacing' in opening && opening.spacing <= 0)
    problems.push(
      problem('spacing', `${path}.spacing`, 'there is no space between the places', 'give a spacing such as 20 cm'),
    )
  return problems
}

function checkZipEdge(order: Order, item: DuvetCover): readonly Problem[] {
  const { zipEdge } = item.back
  const path = `${item.path}.back.zip-edge`
  if (item.front.zipEdge !== null)
    return [
      problem('zip-edge', `${item.path}.front.zip-edge`, 'hems are kept on the back only', 'move zip-edge to back'),
    ]
  if (zipEdge === null) return []
  const problems: Problem[] = []
  if (item.opening.kind !== 'zip' || item.opening.at !== 'foot')
    problems.push(
      problem(
        'zip-edge',
        path,
        'kept hems carry a zip at the foot',
        'take opening: { kind: zip, at: foot }, or leave zip-edge out',
      ),
    )
  if (item.back.band !== null)
    problems.push(problem('zip-edge', path, 'a back from kept hems has no band', 'leave the band or zip-edge out'))
  if (footAllowance(zipEdge) <= 0)
    problems.push(
      problem(
        'finger',
        `${item.path}.back.finger`,
        "nothing is left of the finger's width for the outer foot seam",
        `give more than the ${say(order, zipEdge.stitching)} between stitching and seam, such as 2 cm`,
      ),
    )
  const cloths = clothsNamed(order, item.back.cloth)
  if (cloths.length > 0 && !cloths.some(hasTwoHems))
    problems.push(
      problem(
        'zip-edge-hem',
        `${item.path}.back.cloth`,
        `no cloth named here is a flat sheet with hems of at least ${say(order, SHALLOWEST_HEM_FOR_ZIP)} at head and foot`,
        'name such a sheet, or leave zip-edge out',
      ),
    )
  return problems
}

function hasTwoHems(cloth: Cloth): boolean {
  const { head, foot } = cloth.edges
  return [head, foot].every((edge) => edge.kind === 'hem' && edge.depth >= SHALLOWEST_HEM_FOR_ZIP)
}

function checkCot(item: DuvetCover): readonly Problem[] {
  if (!item.cot || item.tiesDespiteCaution !== null) return []
  const hint = 'take snaps or a zip, or give the reason in the plan (ties-despite-caution); the caution is then printed'
  const problems: Problem[] = []
  if (item.cornerTies.count > 0)
    problems.push(problem('cot-ties', `${item.path}.corner-ties`, 'there are to be no ties in a cot', hint))
  if (item.opening.kind === 'ties')
    problems.push(problem('cot-ties', `${item.path}.opening`, 'there are to be no ties in a cot', hint))
  return problems
}

/** Faces that shrink apart however they lie: refused ways say the rest. */
function checkShrinking(order: Order, item: DuvetCover): readonly Problem[] {
  if (order.wash !== 'after-sewing') return []
  const groups = [...lossesOf(order, item.front), ...lossesOf(order, item.back)]
  if (groups.some((group) => group.length === 0) || lossesInCommon(groups).length > 0) return []
  return [
    problem(
      'shrinks-apart',
      item.path,
      'front and back shrink apart by more than one point, so their seams would pucker',
      'wash before cutting (wash: before-cutting), or take cloths that shrink alike',
    ),
  ]
}
