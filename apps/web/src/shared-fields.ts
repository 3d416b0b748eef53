import type { FieldSpec } from './field-spec.ts'
import type { Option } from './fields.tsx'

// what several things to sew are asked for in the same words

const JOINED: readonly Option[] = [
  { value: 'any', words: 'Any way that saves cloth' },
  { value: 'centre-and-sides', words: 'A centre and two equal sides' },
  { value: 'full-widths', words: 'Full widths and the rest' },
  { value: 'centre-seam', words: 'One seam down the middle' },
  { value: 'one-piece', words: 'Not joined' },
]

export const RUNS: readonly Option[] = [
  { value: 'either', words: 'Either way' },
  { value: 'along', words: 'Along the selvedge' },
  { value: 'across', words: 'Across the cloth' },
]

const TURNS: readonly Option[] = [
  { value: 1, words: 'Turned once' },
  { value: 2, words: 'Turned twice' },
]

export const joined = (key: string, words: string, usual = 'any'): FieldSpec => ({
  kind: 'choice',
  key: `${key}joined`,
  label: `How may the ${words} be joined?`,
  options: JOINED,
  usual,
})

const mayBeJoined = (key: string) => (get: (key: string) => unknown) => get(`${key}joined`) !== 'one-piece'

const band = (key: string, words: string): readonly FieldSpec[] => [
  { kind: 'length', key: `${key}band.depth`, label: `A band across the ${words}, depth (optional)` },
  {
    kind: 'choice',
    key: `${key}band.at`,
    label: 'The band lies',
    options: [
      { value: 'head', words: 'At the head' },
      { value: 'foot', words: 'At the foot' },
    ],
    usual: 'head',
    inRow: true,
    when: (get) => get(`${key}band.depth`) !== undefined,
  },
  {
    kind: 'cloths',
    key: `${key}band.cloth`,
    label: 'Cloth of the band, if another',
    when: (get) => get(`${key}band.depth`) !== undefined,
  },
]

/** What is asked less often of a face that may be joined from several widths. */
export function face(key: string, words: string): readonly FieldSpec[] {
  const when = mayBeJoined(key)
  const hasCentre = (get: (key: string) => unknown): boolean =>
    when(get) && !['full-widths', 'centre-seam'].includes(String(get(`${key}joined`)))
  return [
    {
      kind: 'length',
      key: `${key}smallest-panel`,
      label: `Narrowest panel of the ${words}`,
      usual: ['15 cm', '6 in'],
      when,
    },
    {
      kind: 'choice',
      key: `${key}centre`,
      label: `The centre of the ${words}`,
      options: [
        { value: 'full', words: 'As wide as the cloth' },
        { value: 'any', words: 'Any width that saves cloth' },
      ],
      usual: 'full',
      own: { words: 'A width of my own', key: `${key}centre`, start: ['100 cm', '40 in'] },
      when: hasCentre,
    },
    {
      kind: 'length',
      key: `${key}centre`,
      label: `Finished width of the centre of the ${words}`,
      emptied: [`${key}centre`, ''],
      when: (get) => hasCentre(get) && ![undefined, 'full', 'any'].includes(get(`${key}centre`) as undefined),
    },
    {
      kind: 'count',
      key: `${key}cross-joins`,
      label: `Most joins across one panel of the ${words} (optional)`,
      hint: 'With 1, a long panel may be sewn from two equal ones; none if left empty',
      when,
    },
    {
      kind: 'choice',
      key: `${key}selvedge-to-selvedge`,
      label: `Should the ${words} be joined selvedge to selvedge?`,
      options: [
        { value: false, words: 'No matter' },
        { value: true, words: 'Yes' },
      ],
      usual: false,
      inRow: true,
      when,
    },
    {
      kind: 'choice',
      key: `${key}length-runs`,
      label: `How may the length of the ${words} lie?`,
      options: RUNS,
      usual: 'either',
    },
    ...band(key, words),
  ]
}

export const seams: readonly FieldSpec[] = [
  {
    kind: 'choice',
    key: 'seam.kind',
    label: 'Seams of this one',
    options: [
      { value: undefined, words: 'As for the whole plan' },
      { value: 'plain', words: 'Plain' },
      { value: 'french', words: 'French' },
      { value: 'flat-felled', words: 'Flat-felled' },
    ],
    usual: undefined,
  },
  {
    kind: 'length',
    key: 'seam.allowance',
    label: 'Seam allowance of this one (optional)',
    when: (get) => get('seam.kind') !== undefined,
  },
]

export const ease: FieldSpec = {
  kind: 'length',
  key: 'ease',
  label: 'Larger than what goes inside by (optional)',
  when: (get) => get('size') !== undefined || get('insert') !== undefined,
}

export const whose: FieldSpec = {
  kind: 'words',
  key: 'for',
  label: 'Who or where it is for (optional)',
  hint: 'Printed on its slips',
}

export const hem = (key: string, label: string, when?: FieldSpec['when']): readonly FieldSpec[] => [
  { kind: 'length', key: `${key}.depth`, label: `${label} (optional)`, ...(when ? { when } : {}) },
  {
    kind: 'choice',
    key: `${key}.turns`,
    label: 'The hem is',
    options: TURNS,
    usual: 2,
    inRow: true,
    when: (get) => get(`${key}.depth`) !== undefined && (when === undefined || when(get)),
  },
]

/** How deep the kept hem must be that an edge needs. */
export const keptHemDepth = (key: string, words: string): FieldSpec => ({
  kind: 'length',
  key: `${key}.kept-hem`,
  label: `Depth that the kept hem at the ${words} needs (optional)`,
  emptied: [key, 'kept-hem'],
  when: (get) => get(key) === 'kept-hem' || get(`${key}.kept-hem`) !== undefined,
})

/** An edge of a sheet: hemmed, or finished already. */
export const edge = (side: string, words: string): readonly FieldSpec[] => [
  {
    kind: 'choice',
    key: `hems.${side}`,
    label: `The ${words}`,
    options: [
      { value: undefined, words: 'Is hemmed' },
      { value: 'selvedge', words: 'Is a selvedge' },
      { value: 'kept-hem', words: 'Is a kept hem' },
    ],
    usual: undefined,
    inRow: true,
  },
  ...hem(`hems.${side}`, `Depth of the hem at the ${words}`, (get) => typeof get(`hems.${side}`) !== 'string'),
]
