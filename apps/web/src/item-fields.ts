import type { FieldSpec, ItemForm } from './field-spec.ts'
import type { Option } from './fields.tsx'
import { ease, edge, face, hem, joined, keptHemDepth, RUNS, seams, whose } from './shared-fields.ts'

const bed: readonly string[] = ['Finished width', 'Finished length']
const sides: readonly string[] = ['Short side', 'Long side']

const EDGE_OF_BED: readonly Option[] = [
  { value: 'foot', words: 'At the foot' },
  { value: 'head', words: 'At the head' },
  { value: 'left', words: 'At the left side' },
  { value: 'right', words: 'At the right side' },
]

const opening =
  (...kinds: string[]) =>
  (get: (key: string) => unknown) =>
    kinds.includes(String(get('opening.kind')))

type Get = (key: string) => unknown
const ofOtherCloth = (get: Get): boolean => String(get('back.cloth')) !== String(get('front.cloth'))

/** The opening between the two hems of a ready-made sheet. */
const zipEdge = (when: (get: Get) => boolean): readonly FieldSpec[] => [
  {
    kind: 'choice',
    key: 'back.zip-edge',
    label: 'The edge for the zip on the back',
    options: [
      { value: undefined, words: 'Turned in and sewn' },
      {
        value: 'kept-hems',
        words: 'From the hems of a flat sheet',
        hint: 'The deep hem is cut off as a strip and moved to the foot',
      },
    ],
    usual: undefined,
    when,
  },
  {
    kind: 'length',
    key: 'back.finger',
    label: 'Strip cut beyond the stitching of the deep hem by',
    usual: ['2 cm', '3/4 in'],
    when: (get) => when(get) && get('back.zip-edge') === 'kept-hems',
  },
  {
    kind: 'length',
    key: 'back.lap',
    label: 'Hems lie over each other at the zip by',
    usual: ['0.4 cm', '3/16 in'],
    when: (get) => when(get) && get('back.zip-edge') === 'kept-hems',
  },
]

/** Everything that can be sewn, in the order in which it is offered. */
export const ITEM_FORMS: Readonly<Record<string, ItemForm>> = {
  'duvet-cover': {
    words: 'Duvet cover',
    plural: 'duvet covers',
    size: bed,
    insert: 'The duvet as I measured it',
    first: [
      { kind: 'cloths', key: 'front.cloth', label: 'Cloth of the front' },
      joined('front.', 'front'),
      {
        kind: 'cloths',
        key: 'back.cloth',
        label: 'Cloth of the back',
        hint: 'The back of another cloth, such as an old sheet? Add that cloth',
      },
      ...zipEdge(ofOtherCloth),
      {
        kind: 'choice',
        key: 'opening.kind',
        label: 'How does it close?',
        options: [
          { value: 'zip', words: 'Zip' },
          { value: 'buttons', words: 'Buttons' },
          { value: 'snaps', words: 'Snaps' },
          { value: 'ties', words: 'Ties' },
          { value: 'flap', words: 'A flap to tuck in' },
          { value: 'none', words: 'Not at all' },
        ],
        usual: 'zip',
        keeps: ['at'],
      },
    ],
    moreWords: 'Change the back, the opening or the seams',
    more: [
      ease,
      ...face('front.', 'front'),
      joined('back.', 'back'),
      ...face('back.', 'back'),
      ...zipEdge((get) => !ofOtherCloth(get)),
      {
        kind: 'choice',
        key: 'opening.at',
        label: 'Where does it open?',
        options: EDGE_OF_BED,
        usual: 'foot',
        when: (get) => get('opening.kind') !== 'none',
      },
      {
        kind: 'lengths',
        key: 'opening.zips',
        label: 'Zips to hand, how long (optional)',
        hint: 'Such as 140; 180, or any zip that is sold if left empty',
        when: opening('zip'),
      },
      {
        kind: 'length',
        key: 'opening.depth',
        label: 'Depth of the hem that carries them',
        usual: ['4 cm', '1 1/2 in'],
        when: opening('buttons', 'snaps'),
      },
      {
        kind: 'length',
        key: 'opening.depth',
        label: 'Depth of the flap',
        usual: ['25 cm', '10 in'],
        when: opening('flap'),
      },
      {
        kind: 'length',
        key: 'opening.spacing',
        label: 'Widest gap between two',
        usual: ['20 cm', '8 in'],
        when: opening('buttons', 'snaps', 'ties'),
      },
      {
        kind: 'length',
        key: 'opening.from-corner',
        label: 'From each corner to the first',
        usual: ['15 cm', '6 in'],
        when: opening('buttons', 'snaps', 'ties'),
      },
      {
        kind: 'choice',
        key: 'corner-ties',
        label: 'Ties inside the corners',
        options: [
          { value: 0, words: 'None' },
          { value: 2, words: 'Two' },
          { value: 4, words: 'Four' },
        ],
        usual: 0,
        inRow: true,
      },
      ...seams,
      whose,
    ],
    fresh: { item: 'duvet-cover', count: 1, finished: '200 x 200 cm', opening: { kind: 'zip' } },
    clothKeys: ['front.cloth', 'back.cloth'],
  },
  pillowcase: {
    words: 'Pillowcase',
    plural: 'pillowcases',
    size: sides,
    first: [
      {
        kind: 'choice',
        key: 'style',
        label: 'Which kind?',
        options: [
          { value: 'inside-flap', words: 'With a flap inside' },
          { value: 'flanged', words: 'With a flat border all round' },
          { value: 'envelope', words: 'Back of two overlapping pieces' },
          { value: 'open-end', words: 'Open at one end, with a deep hem' },
        ],
        usual: 'inside-flap',
      },
      { kind: 'cloths', key: 'cloth', label: 'Cloth of the pillowcases' },
    ],
    moreWords: 'Change the flap, the hem or the seams',
    more: [
      {
        kind: 'choice',
        key: 'faces',
        label: 'Cut as',
        options: [
          { value: 'any', words: 'Whatever saves cloth' },
          { value: 'one-piece', words: 'One piece' },
          { value: 'separate', words: 'Front and back apart' },
        ],
        usual: 'any',
      },
      {
        kind: 'length',
        key: 'flap',
        label: 'Depth of the flap',
        usual: ['15 cm', '6 in'],
        when: (get) => get('style') !== 'open-end',
      },
      {
        kind: 'length',
        key: 'flange',
        label: 'Width of the border',
        usual: ['5 cm', '2 in'],
        when: (get) => get('style') === 'flanged',
      },
      ...hem('hem', 'Depth of the hem at the opening'),
      {
        kind: 'length',
        key: 'cuff.depth',
        label: 'A cuff of its own instead of the hem, depth (optional)',
        when: (get) => get('style') === 'open-end',
      },
      {
        kind: 'cloths',
        key: 'cuff.cloth',
        label: 'Cloth of the cuff, if another',
        when: (get) => get('cuff.depth') !== undefined,
      },
      {
        kind: 'length',
        key: 'cuff.trim.depth',
        label: 'A narrow trim between cuff and case, depth (optional)',
        when: (get) => get('cuff.depth') !== undefined,
      },
      {
        kind: 'cloths',
        key: 'cuff.trim.cloth',
        label: 'Cloth of the trim',
        when: (get) => get('cuff.trim.depth') !== undefined,
      },
      {
        kind: 'choice',
        key: 'opening-edge',
        label: 'The edge at the opening',
        options: [
          { value: 'none', words: 'Is hemmed' },
          { value: 'selvedge', words: 'Is a selvedge' },
          { value: 'kept-hem', words: 'Is a kept hem of a sheet' },
        ],
        usual: 'none',
      },
      keptHemDepth('opening-edge', 'opening'),
      { kind: 'cloths', key: 'back-cloth', label: 'Cloth of the back, if another' },
      { kind: 'choice', key: 'length-runs', label: 'How may its length lie?', options: RUNS, usual: 'either' },
      ...seams,
      whose,
    ],
    fresh: { item: 'pillowcase', style: 'inside-flap', count: 2, finished: '50 x 75 cm' },
    clothKeys: ['cloth'],
  },
  'flat-sheet': {
    words: 'Flat sheet',
    plural: 'flat sheets',
    size: bed,
    first: [{ kind: 'cloths', key: 'cloth', label: 'Cloth of the sheet' }, joined('', 'sheet')],
    moreWords: 'Change the hems or the seams',
    more: [
      ...edge('head', 'head end'),
      ...edge('foot', 'foot end'),
      ...edge('left', 'left side'),
      ...edge('right', 'right side'),
      ...face('', 'sheet'),
      ...seams,
      whose,
    ],
    fresh: { item: 'flat-sheet', count: 1, finished: '240 x 280 cm' },
    clothKeys: ['cloth'],
  },
  'fitted-sheet': {
    words: 'Fitted sheet',
    plural: 'fitted sheets',
    size: ['Mattress, width', 'Mattress, length', 'Mattress, depth'],
    first: [
      {
        kind: 'length',
        key: 'depth',
        label: 'Depth of the mattress',
        usual: ['25 cm', '10 in'],
        when: (get) => get('size') !== undefined,
      },
      { kind: 'cloths', key: 'cloth', label: 'Cloth of the sheet' },
      joined('', 'sheet'),
    ],
    moreWords: 'Change the corners, the elastic or the seams',
    more: [
      { kind: 'length', key: 'tuck', label: 'Reaches under the mattress by', usual: ['12 cm', '5 in'] },
      { kind: 'length', key: 'casing', label: 'Casing for the elastic', usual: ['3 cm', '1 1/4 in'] },
      {
        kind: 'choice',
        key: 'corners',
        label: 'The squares at the corners',
        options: [
          { value: 'cut', words: 'Cut off' },
          { value: 'kept', words: 'Folded and left in' },
        ],
        usual: 'cut',
        inRow: true,
      },
      {
        kind: 'choice',
        key: 'elastic.where',
        label: 'Elastic',
        options: [
          { value: 'all-round', words: 'All round' },
          { value: 'ends', words: 'At head and foot' },
          { value: 'corners', words: 'At the corners only' },
        ],
        usual: 'all-round',
      },
      {
        kind: 'words',
        key: 'elastic.ratio',
        label: 'Elastic to the edge it gathers (optional)',
        hint: '0.6 if left empty: six tenths as long',
      },
      ...face('', 'sheet'),
      ...seams,
      whose,
    ],
    fresh: { item: 'fitted-sheet', count: 1, mattress: '150 x 200 x 25 cm' },
    clothKeys: ['cloth'],
  },
  'bed-skirt': {
    words: 'Bed skirt',
    plural: 'bed skirts',
    size: ['Bed base, width', 'Bed base, length'],
    first: [
      { kind: 'length', key: 'drop', label: 'From the base to the lower edge', usual: ['35 cm', '14 in'] },
      {
        kind: 'choice',
        key: 'style',
        label: 'Which kind?',
        options: [
          { value: 'gathered', words: 'Gathered' },
          { value: 'corner-pleats', words: 'Straight, with a pleat at each foot corner' },
        ],
        usual: 'gathered',
      },
      { kind: 'cloths', key: 'cloth', label: 'Cloth of the skirt' },
      { kind: 'cloths', key: 'deck.cloth', label: 'Cloth under the mattress, if another' },
    ],
    moreWords: 'Change the gathers, the hem or the seams',
    more: [
      {
        kind: 'words',
        key: 'fullness',
        label: 'Times as long as the edge it gathers to (optional)',
        hint: '2 if left empty',
        when: (get) => get('style') !== 'corner-pleats',
      },
      {
        kind: 'length',
        key: 'pleat',
        label: 'Depth of each fold of the pleat',
        usual: ['15 cm', '6 in'],
        when: (get) => get('style') === 'corner-pleats',
      },
      ...hem('hem', 'Depth of the hem'),
      ...seams,
      whose,
    ],
    fresh: { item: 'bed-skirt', count: 1, base: '150 x 200 cm', style: 'gathered' },
    clothKeys: ['cloth'],
  },
  bolster: {
    words: 'Bolster',
    plural: 'bolsters',
    size: null,
    first: [
      { kind: 'length', key: 'diameter', label: 'Across the round end' },
      { kind: 'length', key: 'length', label: 'Length' },
      {
        kind: 'choice',
        key: 'ends',
        label: 'The ends',
        options: [
          { value: 'circles', words: 'Round pieces sewn in', hint: 'Laid out as their squares' },
          { value: 'tied', words: 'Gathered and tied' },
        ],
        usual: 'circles',
      },
      { kind: 'cloths', key: 'cloth', label: 'Cloth of the bolster' },
    ],
    moreWords: 'Change the ends or the seams',
    more: [
      {
        kind: 'length',
        key: 'tie-end',
        label: 'Cloth beyond each end',
        usual: ['20 cm', '8 in'],
        when: (get) => get('ends') === 'tied',
      },
      ...seams,
      whose,
    ],
    fresh: { item: 'bolster', count: 1, diameter: '20 cm', length: '90 cm' },
    clothKeys: ['cloth'],
  },
  cushion: cushion('Cushion', 'cushions', 'cushion'),
  sham: cushion('Sham', 'shams', 'sham'),
  throw: {
    words: 'Throw',
    plural: 'throws',
    size: bed,
    first: [{ kind: 'cloths', key: 'cloth', label: 'Cloth of the throw' }, joined('', 'throw')],
    moreWords: 'Change the hem or the seams',
    more: [...hem('hem', 'Depth of the hem all round'), ...face('', 'throw'), ...seams, whose],
    fresh: { item: 'throw', count: 1, finished: '140 x 200 cm' },
    clothKeys: ['cloth'],
  },
  'quilt-back': {
    words: 'Quilt back',
    plural: 'quilt backs',
    size: ['Quilt top, width', 'Quilt top, length'],
    first: [
      { kind: 'length', key: 'overhang', label: 'More on each side than the top', usual: ['10 cm', '4 in'] },
      { kind: 'cloths', key: 'cloth', label: 'Cloth of the back' },
      joined('', 'back'),
    ],
    moreWords: 'Change how it is joined',
    more: [{ kind: 'count', key: 'most-seams', label: 'Most seams (optional)' }, ...face('', 'back'), ...seams, whose],
    fresh: { item: 'quilt-back', count: 1, quilt: '150 x 200 cm', overhang: '5 cm' },
    clothKeys: ['cloth'],
  },
  strips: {
    words: 'Strips',
    plural: 'strips',
    size: null,
    first: [
      { kind: 'words', key: 'name', label: 'What they are', hint: 'Such as binding, or ruffle' },
      { kind: 'length', key: 'width', label: 'Width as cut' },
      { kind: 'length', key: 'run', label: 'Length of one, joined' },
      { kind: 'cloths', key: 'cloth', label: 'Cloth of the strips' },
    ],
    moreWords: 'Change how they lie, or the seams',
    more: [
      { kind: 'choice', key: 'runs', label: 'How may they lie?', options: RUNS, usual: 'either' },
      ...seams,
      whose,
    ],
    fresh: { item: 'strips', name: 'binding', count: 1, width: '6 cm', run: '720 cm' },
    clothKeys: ['cloth'],
  },
  rectangle: {
    words: 'Rectangle of your own',
    plural: 'rectangles of your own',
    size: null,
    first: [
      { kind: 'words', key: 'name', label: 'What it is' },
      { kind: 'cloths', key: 'cloth', label: 'Cloth of it' },
    ],
    moreWords: 'Change its hems, how it lies and which edges it needs',
    more: [
      ...(['head', 'foot', 'left', 'right'] as const).map(
        (edge): FieldSpec => ({
          kind: 'length',
          key: `hems.${edge}.depth`,
          label: `Hem at the ${edge}, depth (optional)`,
          hint: 'A seam allowance is added if left empty',
          when: (get) => get('finished') !== undefined,
        }),
      ),
      { kind: 'choice', key: 'length-runs', label: 'How may its length lie?', options: RUNS, usual: 'either' },
      ...(['left', 'right', 'head', 'foot'] as const).flatMap((edge): readonly FieldSpec[] => {
        const words = edge === 'head' || edge === 'foot' ? `${edge} end` : `${edge} side`
        return [
          {
            kind: 'choice',
            key: `edges.${edge}`,
            label: `Its ${words} must be`,
            options: [
              { value: undefined, words: 'Anything' },
              { value: 'selvedge', words: 'A selvedge' },
              { value: 'kept-hem', words: 'A kept hem' },
            ],
            usual: undefined,
            inRow: true,
          },
          keptHemDepth(`edges.${edge}`, words),
        ]
      }),
      {
        kind: 'choice',
        key: 'same-cloth',
        label: 'All of them from one cloth?',
        options: [
          { value: 'item', words: 'Each as it comes' },
          { value: 'all', words: 'Yes, all' },
        ],
        usual: 'item',
        inRow: true,
      },
      whose,
    ],
    fresh: { item: 'rectangle', name: 'tray cloth', count: 1, finished: '40 x 60 cm' },
    clothKeys: ['cloth'],
  },
}

function cushion(words: string, plural: string, item: 'cushion' | 'sham'): ItemForm {
  return {
    words,
    plural,
    size: sides,
    first: [
      {
        kind: 'choice',
        key: 'back',
        label: 'The back',
        options: [
          { value: 'envelope', words: 'Two overlapping pieces' },
          { value: 'zip', words: 'With a zip' },
          { value: 'one-piece-envelope', words: 'One long piece, folded over' },
        ],
        usual: 'envelope',
      },
      { kind: 'cloths', key: 'cloth', label: 'Cloth of the front' },
      { kind: 'cloths', key: 'back-cloth', label: 'Cloth of the back, if another' },
    ],
    moreWords: 'Change the overlap, the hem or the seams',
    more: [
      {
        kind: 'length',
        key: 'overlap',
        label: 'Overlap of the backs',
        usual: ['12 cm', '5 in'],
        when: (get) => get('back') !== 'zip',
      },
      ...(item === 'sham'
        ? [{ kind: 'length', key: 'flange', label: 'Width of the border', usual: ['5 cm', '2 in'] } satisfies FieldSpec]
        : []),
      ...hem('hem', 'Depth of the hem at the opening'),
      ...seams,
      whose,
    ],
    fresh: { item, count: 2, finished: item === 'sham' ? '50 x 75 cm' : '45 x 45 cm' },
    clothKeys: ['cloth'],
  }
}
