import type { FieldSpec } from './field-spec.ts'

type Get = (key: string) => unknown
const bolt = (get: Get): boolean => get('from') === 'bolt'
const remnant = (get: Get): boolean => get('from') === 'remnant'
const printed = (get: Get): boolean => ['one-way', 'two-way'].includes(String(get('print.way')))
const repeats = (get: Get): boolean => printed(get) && get('print.repeat') !== undefined
const torn = (get: Get): boolean => get('divide-by') === undefined || get('divide-by') === 'tearing'

/** What is asked of every cloth, after its widths or its size. */
export const CLOTH_FIELDS: readonly FieldSpec[] = [
  {
    kind: 'choice',
    key: 'print.top',
    label: 'Which way does the top of the print face?',
    options: [
      { value: 'cut-end', words: 'Toward the cut end' },
      { value: 'bolt', words: 'Toward the bolt' },
      { value: 'left', words: 'Toward the left selvedge' },
      { value: 'right', words: 'Toward the right selvedge' },
    ],
    usual: 'cut-end',
    when: (get) => get('print.way') === 'one-way',
  },
  { kind: 'length', key: 'print.repeat', label: 'Repeat of the print, along the selvedge (optional)', when: printed },
  {
    kind: 'choice',
    key: 'print.match',
    label: 'How does the print meet at a seam?',
    options: [
      { value: 'straight', words: 'Straight across' },
      { value: 'half-drop', words: 'Half a repeat lower' },
      { value: 'none', words: 'It need not meet' },
    ],
    usual: 'straight',
    when: repeats,
  },
  {
    kind: 'choice',
    key: 'divide-by',
    label: 'How will you divide it?',
    options: [
      { value: 'tearing', words: 'Tear it', hint: 'A tear always runs right across' },
      { value: 'thread', words: 'Draw a thread and cut along it', hint: 'Right across, as with a tear' },
      { value: 'shears', words: 'Cut it with shears' },
    ],
    usual: 'tearing',
  },
]

/** What is asked less often. */
export const MORE_CLOTH_FIELDS: readonly FieldSpec[] = [
  {
    kind: 'length',
    key: 'sold-by',
    label: 'Sold in steps of',
    usual: ['10 cm', '1/8 yd'],
    when: bolt,
  },
  { kind: 'length', key: 'smallest-sale', label: 'Smallest length sold (optional)', when: bolt },
  { kind: 'length', key: 'have', label: 'Length of it you have already (optional)', when: bolt },
  {
    kind: 'choice',
    key: 'selvedges',
    label: 'Where are its selvedges?',
    options: [
      { value: 'both', words: 'Both sides' },
      { value: 'left', words: 'Left' },
      { value: 'right', words: 'Right' },
      { value: 'none', words: 'None' },
    ],
    usual: 'none',
    inRow: true,
    when: remnant,
  },
  {
    kind: 'length',
    key: 'spare-each-end',
    label: 'Spare at each end, for squaring (optional)',
    hint: 'If left empty: 5 cm or 2 in on a bolt, nothing on a sheet or remnant',
  },
  { kind: 'length', key: 'unused-selvedge', label: 'Selvedge not used, each side (optional)' },
  { kind: 'length', key: 'lost-per-tear', label: 'Lost at each torn edge (optional)', when: torn },
  { kind: 'length', key: 'print.across-repeat', label: 'Repeat across the cloth (optional)', when: printed },
  {
    kind: 'length',
    key: 'print.match-line',
    label: 'The print meets so far inside the selvedge (optional)',
    when: repeats,
  },
  {
    kind: 'choice',
    key: 'print.repeat-measured',
    label: 'Where was the repeat measured?',
    options: [
      { value: 'on-the-table', words: 'On the washed cloth' },
      { value: 'in-shop', words: 'In the shop' },
    ],
    usual: 'on-the-table',
    when: repeats,
  },
  {
    kind: 'choice',
    key: 'print.motif',
    label: 'Should a motif lie in the middle of each face?',
    options: [
      { value: undefined, words: 'No matter' },
      { value: 'centred', words: 'Yes; where it lies shows in the shop', hint: 'One repeat more is bought' },
    ],
    usual: undefined,
    own: { words: 'Yes, and I have measured where it lies', key: 'print.motif.first', start: ['10 cm', '4 in'] },
    when: repeats,
  },
  {
    kind: 'length',
    key: 'print.motif.first',
    label: 'From the cut end to the middle of the first motif',
    emptied: ['print.motif.first', ''],
    when: (get) => repeats(get) && get('print.motif.first') !== undefined,
  },
]
