import type { FieldSpec } from './field-spec.ts'

/** What holds for the whole plan and is asked less often. */
export const PLAN_FIELDS: readonly FieldSpec[] = [
  {
    kind: 'choice',
    key: 'seam.kind',
    label: 'Seams',
    options: [
      { value: 'plain', words: 'Plain' },
      { value: 'french', words: 'French' },
      { value: 'flat-felled', words: 'Flat-felled' },
    ],
    usual: 'plain',
    inRow: true,
  },
  { kind: 'length', key: 'seam.allowance', label: 'Seam allowance', usual: ['1.5 cm', '1/2 in'] },
  { kind: 'length', key: 'mark-to', label: 'Cut sizes are rounded up to', usual: ['0.5 cm', '1/8 in'] },
  {
    kind: 'size',
    key: 'worth-keeping',
    label: '',
    labels: ['A remnant is worth keeping from this width', 'and this length'],
  },
  { kind: 'words', key: 'currency', label: 'Currency (optional)', hint: 'Three letters, such as GBP' },
  { kind: 'words', key: 'date', label: 'Date on the map (optional)', hint: 'Such as 2026-05-02' },
]
