import type { Plan } from './plan.ts'

/** A plan to start from: a scenario of our own, the guest house on the hill. */
export interface Example {
  readonly words: string
  readonly plan: Plan
}

const STARTER: Plan = {
  plan: 1,
  title: 'A first duvet cover',
  'measure-in': 'cm',
  wash: 'before-cutting',
  make: [
    {
      item: 'duvet-cover',
      count: 1,
      finished: '200 x 200 cm',
      front: { cloth: 'cloth' },
      back: { cloth: 'cloth' },
      opening: { kind: 'zip', at: 'foot' },
    },
    { item: 'pillowcase', style: 'inside-flap', count: 2, finished: '50 x 75 cm', cloth: 'cloth' },
  ],
  cloth: [
    {
      name: 'cloth',
      from: 'bolt',
      widths: ['140 cm', '240 cm'],
      'sold-by': '10 cm',
      shrinks: { along: '5 %', across: '3 %' },
      'spare-each-end': '5 cm',
      print: { way: 'plain' },
    },
  ],
}

const GUEST_HOUSE: Plan = {
  plan: 1,
  title: 'Hillside guest house, twin room',
  'measure-in': 'cm',
  currency: 'GBP',
  wash: 'before-cutting',
  'worth-keeping': '20 x 50 cm',
  make: [
    {
      item: 'duvet-cover',
      count: 2,
      finished: '150 x 200 cm',
      front: { cloth: 'ticking stripe', joined: 'any', 'smallest-panel': '18 cm' },
      back: { cloth: 'old sheets', 'zip-edge': 'kept-hems' },
      opening: { kind: 'zip', at: 'foot' },
    },
    { item: 'pillowcase', style: 'inside-flap', count: 2, finished: '50 x 75 cm', cloth: 'ticking stripe' },
  ],
  cloth: [
    {
      name: 'ticking stripe',
      from: 'bolt',
      widths: [
        { width: '112 cm', price: '11.50 per m' },
        { width: '54 1/8 in', price: '13.00 per m' },
        { width: '150 cm', price: '14.50 per m' },
        { width: '240 cm', price: '24.50 per m' },
      ],
      'sold-by': '10 cm',
      shrinks: { along: '5 %', across: '3 %' },
      'spare-each-end': '5 cm',
      print: { way: 'two-way' },
      'divide-by': 'tearing',
    },
    {
      name: 'old sheets',
      from: 'sheet',
      size: '180 x 260 cm',
      count: 2,
      hems: { head: '10 cm', foot: '2.5 cm', left: 'selvedge', right: 'selvedge' },
      keep: 'may',
    },
  ],
}

const KEPT_HEMS: Plan = {
  plan: 1,
  title: 'A back from an old sheet, its hems kept',
  'measure-in': 'cm',
  wash: 'none',
  make: [
    {
      item: 'duvet-cover',
      count: 1,
      finished: '200 x 200 cm',
      front: { cloth: 'blue check' },
      back: { cloth: 'old sheet', 'zip-edge': 'kept-hems', finger: '2 cm', lap: '0.4 cm' },
      opening: { kind: 'zip', at: 'foot' },
    },
  ],
  cloth: [
    {
      name: 'blue check',
      from: 'bolt',
      widths: ['150 cm', '220 cm'],
      'sold-by': '10 cm',
      'spare-each-end': '5 cm',
      print: { way: 'two-way' },
    },
    {
      name: 'old sheet',
      from: 'sheet',
      size: '230 x 260 cm',
      count: 1,
      hems: { head: '10 cm', foot: '2.5 cm', left: 'selvedge', right: 'selvedge' },
      keep: 'may',
    },
  ],
}

const ONE_WAY: Plan = {
  plan: 1,
  title: 'Climbing roses for the attic room',
  'measure-in': 'cm',
  wash: 'none',
  make: [
    {
      item: 'duvet-cover',
      count: 1,
      finished: '225 x 220 cm',
      front: { cloth: 'climbing roses', joined: 'centre-and-sides' },
      back: { cloth: 'climbing roses', joined: 'centre-and-sides' },
      opening: { kind: 'buttons', at: 'foot', depth: '4 cm' },
    },
  ],
  cloth: [
    {
      name: 'climbing roses',
      from: 'bolt',
      widths: ['140 cm'],
      'sold-by': '10 cm',
      'spare-each-end': '5 cm',
      print: { way: 'one-way', top: 'cut-end', repeat: '64 cm', match: 'half-drop' },
    },
  ],
}

const INCHES: Plan = {
  plan: 1,
  title: 'A quilt back in inches',
  'measure-in': 'in',
  wash: 'none',
  make: [{ item: 'quilt-back', count: 1, quilt: '88 x 96 in', overhang: '2 in', cloth: 'backing' }],
  cloth: [
    {
      name: 'backing',
      from: 'bolt',
      widths: ['44 in', '60 in', '108 in'],
      'sold-by': '1/8 yd',
      'spare-each-end': '2 in',
      print: { way: 'plain' },
    },
  ],
}

/** The first one is what the page begins with. */
export const EXAMPLES: readonly [Example, ...Example[]] = [
  { words: 'A first duvet cover and two pillowcases', plan: STARTER },
  { words: 'Two beds in the guest house, backs from old sheets', plan: GUEST_HOUSE },
  { words: 'A back from an old sheet, its hems kept', plan: KEPT_HEMS },
  { words: 'A print with a top and a half-drop repeat', plan: ONE_WAY },
  { words: 'A quilt back, in inches', plan: INCHES },
]
