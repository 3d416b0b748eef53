import { cm } from '@lengthwise/units'
import type { Remark } from './answers.ts'
import type { Item, Order } from './order.ts'

/**
 * Codes of everything said where someone can be hurt; the list is closed. No caution carries a number that could not
 * be verified, and each names who says so.
 */
export type CautionCode =
  | 'under-twelve-months'
  | 'cot-ties'
  | 'cot-ties-kept'
  | 'cot-small-parts'
  | 'cot-sheet-fit'
  | 'cot-local-rules'
  | 'hot-iron'
  | 'blades'
  | 'large-cloth'
  | 'filling-rules'

/** The cautions that concern this order, those for infants first; each code at most once, but one for each reason to keep ties. */
export function cautionsFor(order: Order): readonly Remark[] {
  const forCots = order.items.filter((item) => item.cot)
  return [
    ...when(forCots.some(isLooseOrSoft), 'under-twelve-months'),
    ...when(forCots.some(isFitted), 'cot-sheet-fit'),
    ...when(forCots.length > 0, 'cot-ties'),
    ...forCots.flatMap(tiesKept),
    ...when(forCots.some(hasSmallParts), 'cot-small-parts'),
    ...when(forCots.length > 0, 'cot-local-rules'),
    ...when(order.items.length > 0, 'blades'),
    ...when(order.items.some(isLarge), 'large-cloth'),
    ...when(order.items.length > 0, 'hot-iron'),
    ...when(order.items.some(holdsFilling), 'filling-rules'),
  ]
}

const TEXTS: Readonly<Record<Exclude<CautionCode, 'cot-ties-kept'>, string>> = {
  'under-twelve-months':
    'No duvet, quilt, pillow or cot bumper for a baby under twelve months: use a fitted sheet and a baby sleeping bag, ' +
    'or thin layers tucked in firmly (The Lullaby Trust; the American Academy of Pediatrics as quoted by its government).',
  'cot-ties':
    'Leave ties, ribbons, loops and drawstrings off everything made for a cot; snaps or a zip with a covered slider ' +
    'do instead (common practice).',
  'cot-small-parts':
    'A button or snap that comes off can be swallowed: fasten each one firmly and look at it after every wash ' +
    '(small parts are among the hazards of EN 16779-1, cot duvets).',
  'cot-sheet-fit':
    'Measure the mattress itself: a sheet that is loose in the cot is a hazard, one that is too small pulls off at the ' +
    'corners (lists quoting the US Consumer Product Safety Commission).',
  'cot-local-rules':
    'Your own health body’s advice on safe sleep and your country’s rules for children’s bedding come first, such as ' +
    'EN 16779 (Europe) and ASTM F1917 (United States); nothing here replaces them.',
  blades:
    'Shears and rotary cutters: cut away from yourself and from the hand that holds the cloth, on a mat, and close the ' +
    'guard each time you put the cutter down (common practice).',
  'large-cloth':
    'Large cloth on the floor slips underfoot and trips: keep it off stairs and out of doorways, and keep children and ' +
    'pets away while it lies there (common practice).',
  'hot-iron':
    'Hot iron: press a scrap of the cloth first, stand the iron up between seams and never leave it on the cloth; wash ' +
    'new cloth before pressing where the plan says so (Noelle O Designs on buttoned duvets; common practice).',
  'filling-rules':
    'Covers are one thing, fillings another: in the United Kingdom the furniture fire regulations of 1988 leave out ' +
    'bed-clothes such as pillowcases but take in filled pillows and seat pads. If you fill or sell it, look up your local ' +
    'rules (Trading Standards, Wirral).',
}

// a face that reaches past an outstretched arm is spread on the floor
const LARGE = cm(120)

function when(holds: boolean, code: keyof typeof TEXTS): Remark[] {
  return holds ? [{ code, text: TEXTS[code] }] : []
}

function isLooseOrSoft(item: Item): boolean {
  switch (item.item) {
    case 'duvet-cover':
    case 'pillowcase':
    case 'cushion':
    case 'sham':
    case 'bolster':
    case 'quilt-back':
    case 'throw':
      return true
    case 'flat-sheet':
    case 'fitted-sheet':
    case 'bed-skirt':
    case 'strips':
    case 'rectangle':
      return false
  }
}

const isFitted = (item: Item): boolean => item.item === 'fitted-sheet'

function tiesKept(item: Item): Remark[] {
  if (item.item !== 'duvet-cover' || item.tiesDespiteCaution === null) return []
  const text = `Ties on a cot item, kept because the plan says: ${item.tiesDespiteCaution}. Cut them off before a child sleeps under it.`
  return [{ code: 'cot-ties-kept', text }]
}

function hasSmallParts(item: Item): boolean {
  return item.item === 'duvet-cover' && (item.opening.kind === 'buttons' || item.opening.kind === 'snaps')
}

function holdsFilling(item: Item): boolean {
  return item.item === 'cushion' || item.item === 'sham' || item.item === 'bolster'
}

function isLarge(item: Item): boolean {
  switch (item.item) {
    case 'fitted-sheet':
    case 'bed-skirt':
      return true
    case 'quilt-back':
      return item.quilt.width > LARGE || item.quilt.length > LARGE
    case 'bolster':
      return item.length > LARGE
    case 'strips':
      return false
    case 'rectangle': {
      const size = 'cut' in item.size ? item.size.cut : item.size.finished
      return size.width > LARGE || size.length > LARGE
    }
    default:
      return item.finished.width > LARGE || item.finished.length > LARGE
  }
}
