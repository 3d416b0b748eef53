import type { Copy, Order } from '@lengthwise/pieces'
import type { Length } from '@lengthwise/units'
import { cm, inches, length } from '@lengthwise/units'

const SHORT: Readonly<Record<string, string>> = {
  'duvet-cover': 'cover',
  pillowcase: 'pillowcase',
  'flat-sheet': 'sheet',
  'fitted-sheet': 'fitted sheet',
  'bed-skirt': 'bed skirt',
  bolster: 'bolster',
  cushion: 'cushion',
  sham: 'sham',
  throw: 'throw',
  'quilt-back': 'quilt back',
}

/** 'cover 1', 'tray cloth 3': whose piece it is, short enough for the map. */
export function whoseWords(copy: Copy): string {
  const number = copy.id.slice(copy.id.lastIndexOf('-') + 1)
  const { item } = copy
  const kind = item.item === 'rectangle' || item.item === 'strips' ? item.name : (SHORT[item.item] ?? item.item)
  return `${kind} ${number}`
}

/** A finger's width beyond a hem's stitching: what the plan says for its kept hems, or 2 cm, 3/4 in. */
export function fingerWidth(order: Order): Length {
  let finger = order.measureIn === 'in' ? inches(0.75) : cm(2)
  for (const item of order.items) {
    const faces = item.item === 'duvet-cover' ? [item.front, item.back] : 'face' in item ? [item.face] : []
    for (const face of faces) if (face.zipEdge && face.zipEdge.finger > finger) finger = length(face.zipEdge.finger)
  }
  return finger
}
