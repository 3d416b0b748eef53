import type { Item } from './print.ts'

/**
 * Cuts the whole order from the words on paper alone. It knows no layout: it reads the pieces to cut, the size of each
 * cloth, and the sentences of the order pages, and does what they say to a rectangle. Lengths in the map's unit.
 */
export interface Rehearsed {
  /** what came away, by label */
  readonly cut: ReadonlyMap<string, Size>
  /** what the list of pieces asks for */
  readonly listed: ReadonlyMap<string, Size>
  /** words that could not be followed */
  readonly faults: readonly string[]
}

export type Size = readonly [across: number, along: number]

interface Hand {
  readonly left: number
  readonly right: number
  readonly start: number
  readonly end: number
  /** the labels it was said to hold; null: nothing was said */
  readonly promised: readonly string[] | null
}

/** `lying`: how a cloth lies, where it is not as large as its head says: its name and the size there. */
export function rehearse(
  pages: readonly (readonly Item[])[],
  lying: (name: string, size: Size) => Size = (_, size) => size,
): Rehearsed {
  const cut = new Map<string, Size>()
  const listed = new Map<string, Size>()
  const faults: string[] = []
  const drawn: string[] = []
  const orders: Order[] = []
  for (const page of pages) {
    const title = page[0]?.text ?? ''
    const words = page
      .map((item) => item.text)
      .join(' ')
      .replace(/\s+/g, ' ')
    const list = page.findIndex((item) => item.text.startsWith('Pieces to cut'))
    if (list >= 0) readList(page.slice(list), listed)
    else if (title.startsWith('Cutting map')) {
      // a map that begins a cloth says how it lies; the pages after it begin 'from T5'
      const size = /On the table ([\d ./]+ × [\d ./]+ (?:cm|mm|in))\./.exec(words)
      if (size && !/, (from [TC]\d+|goes on)$/.test(title)) drawn.push(size[1]!)
    } else if (title.startsWith('Tear and cut')) {
      // each cloth begins with a head that says how it lies
      for (const item of page) {
        const head = /^(.+), (([\d ./]+) × ([\d ./]+) (?:cm|mm|in)) on the table$/.exec(item.text.replace(/\s+/g, ' '))
        if (head)
          orders.push({
            lies: head[2]!,
            size: lying(head[1]!, [numberOf(head[3]!), numberOf(head[4]!)]),
            words: '',
          })
        else if (orders.length > 0) orders.at(-1)!.words += ` ${item.text}`
      }
    }
  }
  if (orders.map((each) => each.lies).join() !== drawn.join())
    faults.push(`maps of ${drawn.join()} and orders of ${orders.map((each) => each.lies).join()}`)
  for (const each of orders) {
    const words = each.words.replace(/\s+/g, ' ').replace(AGAIN, oneByOne)
    follow(words, each.size, cut, faults)
    // cloths cut alike: what comes from them in place of what
    for (const [, pairs] of words.matchAll(/From the \w+ come (.+?)\./g))
      for (const pair of pairs!.split(/, | and /)) {
        const [label, instead] = pair.split(' for ')
        const size = cut.get(instead ?? '')
        if (size === undefined || cut.has(label!)) faults.push(`${pair}: not understood`)
        else cut.set(label!, size)
      }
  }
  return { cut, listed, faults }
}

interface Order {
  readonly lies: string
  readonly size: Size
  words: string
}

const STEP =
  /([TC]\d+) (Tear|Cut by the thread|Cut) (across|down) (the cloth|the [\w]+ length|part [A-Z]+|the rest), ([\d ./]+) (?:cm|mm|in) from (the [a-z ]+|[TC]\d+)(, through hems with shears|, only between ([\d ./]+) and ([\d ./]+) (?:cm|mm|in) from its (?:left|upper) edge)? ?\. (.+?)\.(?=\s|$)/g

// 'T8 T9 T10 Tear across the rest, 53 cm from T7, and again from each to the next. Gives 3 to 5, one each time; the rest is 6.'
const AGAIN =
  /((?:[TC]\d+ ){3,})((?:Tear|Cut by the thread|Cut) (?:across|down)) ([^,]+), ([\d ./]+ (?:cm|mm|in)) from (the [a-z ]+|[TC]\d+), and again from each to the next ?\. Gives ([^;]+), one each time; ([^.]+(?:\.\d[^.]*)*)\.(?=\s|$)/g

function oneByOne(
  _: string,
  flags: string,
  todo: string,
  hand: string,
  far: string,
  from: string,
  pieces: string,
  last: string,
): string {
  const names = flags.trim().split(' ')
  const labels = inOrder(pieces)
  if (labels.length !== names.length) return `${flags}${pieces}`
  // what the last of them leaves is in the rest until then
  const left = /^the rest (?:is|waits as part [A-Z]+,|is the \w+ length,) ?(?:for )?(.+?)(?:, to keep)?$/.exec(last)
  const after = left ? inOrder(left[1]!) : []
  return names
    .map((flag, i) => {
      const rest = [...labels.slice(i + 1), ...after].join(', ')
      const gives = i === names.length - 1 ? last : `the rest is for ${rest}`
      return `${flag} ${todo} ${i === 0 ? hand : 'the rest'}, ${far} from ${i === 0 ? from : names[i - 1]}. Gives ${labels[i]}; ${gives}.`
    })
    .join(' ')
}

function follow(words: string, [width, length]: Size, cut: Map<string, Size>, faults: string[]): void {
  const whole: Hand = { left: 0, right: width, start: 0, end: length, promised: null }
  const hands = new Map<string, Hand>([['the cloth', whole]])
  const edges = new Map<string, number>([
    ['the cut end', 0],
    ['the head end', 0],
    ['the fold of the head hem', 0],
    ['the bolt end', length],
    ['the foot end', length],
    ['the fold of the foot hem', length],
    ...['selvedge', 'edge'].flatMap((kind) => [
      [`the left ${kind}`, 0] as const,
      [`the right ${kind}`, width] as const,
    ]),
    ['the fold of the left hem', 0],
    ['the fold of the right hem', width],
  ])
  let steps = 0
  const cuts = new Map<string, Line[]>()
  for (const [, flag, , direction, name, distanceText, from, , low0, high0, gives] of words.matchAll(STEP)) {
    steps += 1
    const hand = hands.get(name!)
    const edge = edges.get(from!)
    if (hand === undefined || edge === undefined) {
      faults.push(`${flag}: ${hand ? from : name} is not there`)
      continue
    }
    const [low, high] = direction === 'across' ? [hand.start, hand.end] : [hand.left, hand.right]
    // one can only measure from an edge that what is in hand has
    const atLow = Math.abs(edge - low) < NEAR
    if (!atLow && Math.abs(edge - high) >= NEAR) {
      faults.push(`${flag}: ${from} is no edge of ${name}`)
      continue
    }
    const at = atLow ? low + numberOf(distanceText!) : high - numberOf(distanceText!)
    if (at <= low || at >= high) faults.push(`${flag}: runs outside ${name}`)
    edges.set(flag!, at)
    if (low0 !== undefined && high0 !== undefined) {
      // it ends inside: nothing comes away before the last cut of this hand
      const base = direction === 'across' ? hand.left : hand.start
      const line: Line = { runs: direction!, at, from: base + numberOf(low0), to: base + numberOf(high0) }
      const lines = [...(cuts.get(name!) ?? []), line]
      cuts.set(name!, lines)
      if (gives!.startsWith('Now these come apart: ')) {
        hands.delete(name!)
        comeApart(gives!.slice('Now these come apart: '.length), hand, lines, flag!, cut, faults)
      }
      continue
    }
    hands.delete(name!)
    const before = direction === 'across' ? { ...hand, end: at } : { ...hand, right: at }
    const after = direction === 'across' ? { ...hand, start: at } : { ...hand, left: at }
    const [near, far] = atLow ? [before, after] : [after, before]
    const [first, second] = gives!.split('; ')
    hands.delete('the rest')
    const held = [
      ...take(first ?? '', near, flag!, direction!, hands, cut, faults),
      ...take(second ?? '', far, flag!, direction!, hands, cut, faults),
    ]
    if (hand.promised !== null && hand.promised.join() !== [...held].sort(byLabel).join() && !held.includes('?'))
      faults.push(`${flag}: ${name} was to give ${hand.promised.join()} and gives ${held.join()}`)
  }
  const flags = new Set(words.match(/\b[TC]\d+ (?=Tear|Cut)/g) ?? [])
  if (flags.size !== steps) faults.push(`${flags.size} flags but ${steps} sentences understood`)
  const nothing = /Nothing to divide: the whole cloth is (\w+)\./.exec(words)
  if (nothing) {
    cut.set(nothing[1]!, [width, length])
    hands.delete('the cloth')
  }
  for (const name of hands.keys()) faults.push(`${name} is still in hand at the end`)
}

interface Line {
  readonly runs: string
  readonly at: number
  readonly from: number
  readonly to: number
}

// what no cut separates, found on the grid of all lines; each named piece is one of these, by its size
function comeApart(
  words: string,
  hand: Hand,
  lines: readonly Line[],
  flag: string,
  cut: Map<string, Size>,
  faults: string[],
): void {
  const places = (low: number, high: number, across: string): readonly number[] =>
    [...new Set([low, high, ...lines.filter((l) => (l.runs === 'across') === (across === 'y')).map((l) => l.at)])].sort(
      (a, b) => a - b,
    )
  const xs = places(hand.left, hand.right, 'x')
  const ys = places(hand.start, hand.end, 'y')
  const parted = (runs: string, at: number, middle: number): boolean =>
    lines.some((l) => l.runs === runs && Math.abs(l.at - at) < NEAR && l.from < middle && middle < l.to)
  const seen = new Set<string>()
  const regions: Size[] = []
  for (let i = 0; i + 1 < xs.length; i++)
    for (let j = 0; j + 1 < ys.length; j++) {
      if (seen.has(`${i} ${j}`)) continue
      const cells = [[i, j] as const]
      seen.add(`${i} ${j}`)
      for (let n = 0; n < cells.length; n++) {
        const [x, y] = cells[n]!
        const [midX, midY] = [(xs[x]! + xs[x + 1]!) / 2, (ys[y]! + ys[y + 1]!) / 2]
        for (const [dx, dy, blocked] of [
          [1, 0, parted('down', xs[x + 1]!, midY)],
          [-1, 0, parted('down', xs[x]!, midY)],
          [0, 1, parted('across', ys[y + 1]!, midX)],
          [0, -1, parted('across', ys[y]!, midX)],
        ] as const) {
          const key = `${x + dx} ${y + dy}`
          if (blocked || seen.has(key) || x + dx < 0 || y + dy < 0 || x + dx > xs.length - 2 || y + dy > ys.length - 2)
            continue
          seen.add(key)
          cells.push([x + dx, y + dy])
        }
      }
      const across = Math.max(...cells.map(([x]) => xs[x + 1]!)) - Math.min(...cells.map(([x]) => xs[x]!))
      const along = Math.max(...cells.map(([, y]) => ys[y + 1]!)) - Math.min(...cells.map(([, y]) => ys[y]!))
      const area = cells.reduce((sum, [x, y]) => sum + (xs[x + 1]! - xs[x]!) * (ys[y + 1]! - ys[y]!), 0)
      // what is no rectangle can be no piece
      if (Math.abs(area - across * along) < 1) regions.push([across, along])
    }
  for (const [, label, acrossText, alongText] of words.matchAll(/(R?\d+) \(([\d ./]+)\s×\s([\d ./]+)\)/g)) {
    const found = regions.findIndex(
      ([a, b]) => Math.abs(a - numberOf(acrossText!)) < NEAR && Math.abs(b - numberOf(alongText!)) < NEAR,
    )
    if (found < 0) faults.push(`${flag}: no part measures ${acrossText} × ${alongText}`)
    else cut.set(label!, regions.splice(found, 1)[0]!)
  }
}

/** Follows what a sentence says of one side; answers the labels it accounts for, '?' where it does not say. */
function take(
  words: string,
  part: Hand,
  flag: string,
  direction: string,
  hands: Map<string, Hand>,
  cut: Map<string, Size>,
  faults: string[],
): readonly string[] {
  const size: Size = [part.right - part.left, part.end - part.start]
  const single = /^(?:Gives|the rest is) (R?\d+)(?:, to keep)?$/.exec(words)
  if (single) {
    if (cut.has(single[1]!)) faults.push(`${flag}: ${single[1]} comes away twice`)
    cut.set(single[1]!, size)
    return [single[1]!]
  }
  const lost =
    /^(?:Takes off|the) ([\d ./]+) (?:cm|mm|in) (?:of|left over is) (?:waste|trim)(?:, too narrow to tear: cut it off)?$/.exec(
      words,
    )
  if (lost) {
    const broad = direction === 'across' ? size[1] : size[0]
    if (Math.abs(broad - numberOf(lost[1]!)) > NEAR) faults.push(`${flag}: what is left over measures ${broad}`)
    return []
  }
  if (/^the cloth goes on$/i.test(words)) {
    hands.set('the cloth', { ...part, promised: null })
    return ['?']
  }
  const named = /^(?:Gives|the rest waits as|the rest is) (the [\w]+ length|part [A-Z]+), for (.+)$/.exec(words)
  const rest = /^the rest is for (.+)$/.exec(words)
  const name = named?.[1] ?? (rest ? 'the rest' : null)
  if (name === null) {
    faults.push(`${flag}: not understood: ${words}`)
    return ['?']
  }
  if (hands.has(name)) faults.push(`${flag}: there are two of ${name}`)
  const promised = labelsIn(named?.[2] ?? rest![1]!)
  hands.set(name, { ...part, promised })
  return promised
}

// '1 to 3, 7 and R1'
const labelsIn = (words: string): readonly string[] => [...inOrder(words)].sort(byLabel)

export function inOrder(words: string): readonly string[] {
  return words.split(/, | and /).flatMap((each) => {
    const run = /^(R?)(\d+) to R?(\d+)$/.exec(each)
    if (!run) return [each]
    return Array.from({ length: Number(run[3]) - Number(run[2]) + 1 }, (_, i) => `${run[1]}${Number(run[2]) + i}`)
  })
}

const byLabel = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0)

// a row of the list: the only cell that is a size, and the numbers of all pieces of this size, some below it
function readList(page: readonly Item[], listed: Map<string, Size>): void {
  let size: Size | null = null
  for (const item of page) {
    const words = item.text.trim()
    const sized = /^([\d ./]+)\s×\s([\d ./]+)$/.exec(words)
    if (sized) size = [numberOf(sized[1]!), numberOf(sized[2]!)]
    else if (/^R?\d+$/.test(words) && size !== null) listed.set(words, size)
  }
}

/** '203.5', '54 1/8', '5/8' */
export function numberOf(text: string): number {
  return text
    .trim()
    .split(/\s+/)
    .reduce((sum, word) => {
      const [over, under] = word.split('/')
      return sum + Number(over) / Number(under ?? 1)
    }, 0)
}

// twice what rounding to a printed figure may lose
const NEAR = 0.13
