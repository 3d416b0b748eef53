import type { CutCloth, Division } from '@lengthwise/planner'
import type { Length } from '@lengthwise/units'
import type { Box } from '../box.ts'
import type { Style } from '../cloth/style.ts'
import { PITCH } from '../cloth/style.ts'
import type { Stretch } from '../cloth/view.ts'
import { text } from '../ink.ts'
import type { Measure } from '../measure.ts'
import type { Mark } from '../scene.ts'
import { unbroken, wrap } from '../text.ts'
import { capital } from '../words/hands.ts'
import { listed } from '../words/list.ts'

interface Note {
  /** along the cloth */
  readonly at: number
  readonly words: string
}

/** Where remarks stand: their left edge and width, where the cloth begins, and millimetres of paper for a unit of it. */
interface Column {
  readonly left: number
  readonly width: number
  readonly top: number
  readonly perUnit: number
  readonly measure: Measure
}

/** Remarks beside the cloth at the height of what they speak of, clear of `texts`; `bottom` is the end of all that stands there. */
export function notesBeside(
  cloth: CutCloth,
  stretch: Stretch,
  { left, width, top, perUnit, measure }: Column,
  style: Style,
  texts: readonly Box[],
): { readonly marks: readonly Mark[]; readonly bottom: number } {
  const pitch = style.small * PITCH
  const marks: Mark[] = []
  const beside = texts.filter((each) => each.x + each.width > left - 2)
  let y = top
  for (const note of remarks(cloth, stretch, measure)) {
    const lines = wrap(capital(note.words), width, style.small, 500)
    y = Math.max(y, top + (note.at - stretch.from) * perUnit)
    const blocked = (): boolean =>
      beside.some((each) => each.y < y + lines.length * pitch + 2 && each.y + each.height + 2 > y)
    while (blocked()) y += 2
    if (y + lines.length * pitch > LOWEST) break
    lines.forEach((words, i) => {
      marks.push(text(words, left, y + style.small * 1.14 + i * pitch, style.small, 500))
    })
    y += (lines.length + 0.7) * pitch
  }
  const labels = beside.filter((each) => each.x + each.width > left + 2)
  return { marks, bottom: Math.max(y, ...labels.map((each) => each.y + each.height)) }
}

const LOWEST = 228

// what remnants would make, and where a hem is in the way of a tear
function remarks(cloth: CutCloth, stretch: Stretch, measure: Measure): readonly Note[] {
  const notes: Note[] = []
  for (const r of cloth.remnants)
    if (r.y < stretch.to && r.y + r.length > stretch.from && r.wouldMake.length > 0)
      notes.push({
        at: Math.max(r.y, stretch.from),
        words: unbroken(`${r.name} would make: ${r.wouldMake.slice(0, 2).join('; ')}`),
      })
  const throughHems = new Map<number, { readonly flags: string[]; readonly depths: Set<string> }>()
  for (const d of cloth.divisions) {
    const at = d.runs === 'across' ? d.at : d.to
    if (d.how !== 'shears-through-hem-then-tear' || at < stretch.from || at > stretch.to) continue
    const through = throughHems.get(at) ?? { flags: [], depths: new Set() }
    throughHems.set(at, through)
    through.flags.push(d.flag)
    for (const depth of crossed(cloth, d)) through.depths.add(measure.full(depth))
  }
  for (const [at, { flags, depths }] of throughHems)
    notes.push({
      at: at - 20 * 3200,
      words: `At ${listed(flags)} go through the hem, ${listed([...depths])} deep, with shears, then tear. Along a hem never tear.`,
    })
  return notes.sort((a, b) => a.at - b.at)
}

/** How deep the hems are that a division goes through, where it leaves what is in hand. */
function crossed({ edges, width, length: long }: CutCloth, { runs, from, to }: Division): readonly Length[] {
  const [first, last, whole] = runs === 'across' ? [edges.left, edges.right, width] : [edges.start, edges.end, long]
  const at = [...(from === 0 ? [first] : []), ...(to === whole ? [last] : [])]
  return at.flatMap((edge) => (edge.kind === 'hem' ? [edge.depth] : []))
}
