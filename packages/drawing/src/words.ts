/** The words used on screen and paper, with what they mean and where they come from. */
export interface Word {
  readonly term: string
  readonly meaning: string
  readonly from: 'trade' | 'trade, textile standards' | 'plain' | 'ours'
}

export const WORDS: readonly Word[] = [
  { term: 'bolt', meaning: 'Cloth sold by length from a roll.', from: 'trade' },
  { term: 'flat sheet', meaning: 'A ready-made bed sheet, used here as cloth.', from: 'trade' },
  {
    term: 'remnant',
    meaning: 'A rectangle left over that is worth keeping: at least as large as the plan says.',
    from: 'trade',
  },
  {
    term: 'selvedge',
    meaning: 'The finished long edge of woven cloth. Files may also say selvage.',
    from: 'trade, textile standards',
  },
  { term: 'along, across', meaning: 'Along the selvedge (the warp) and across it (the weft).', from: 'plain' },
  { term: 'grain', meaning: 'The direction of the threads; the lengthwise grain is the warp.', from: 'trade' },
  {
    term: 'way of the print',
    meaning: 'Plain; two-way, which looks the same upside down; or one-way, which has a top.',
    from: 'trade',
  },
  {
    term: 'repeat',
    meaning: 'How far a print runs before it begins again, along the cloth or across it.',
    from: 'trade',
  },
  { term: 'straight match', meaning: 'The print meets at a seam at the same height on both panels.', from: 'trade' },
  {
    term: 'half-drop',
    meaning: 'The print meets at a seam when the next panel is moved by half a repeat.',
    from: 'trade',
  },
  {
    term: 'match line',
    meaning: 'How far inside the selvedge the print meets; joined seams lie on it.',
    from: 'trade',
  },
  {
    term: 'seam allowance',
    meaning: 'What a seam takes from one edge, all its turns and trims included.',
    from: 'trade',
  },
  { term: 'hem', meaning: 'An edge turned in and sewn down, once or twice.', from: 'trade' },
  { term: 'turn', meaning: 'One fold of a hem; a double hem has two.', from: 'trade' },
  { term: 'placket', meaning: 'The overlapping hems that carry buttons or snaps.', from: 'trade' },
  { term: 'flap', meaning: 'An inner piece that keeps the pillow or the duvet in.', from: 'trade' },
  { term: 'flange', meaning: 'A flat border round a pillowcase or a sham.', from: 'trade' },
  { term: 'kept hem', meaning: 'A finished hem of a ready-made sheet that stays a finished edge.', from: 'ours' },
  { term: 'finished size', meaning: 'After sewing and washing.', from: 'trade' },
  { term: 'cut size', meaning: 'As marked on the cloth, before sewing.', from: 'trade' },
  { term: 'ease', meaning: 'The size of a cover less the size of what goes in it.', from: 'trade' },
  { term: 'panel', meaning: 'One of the widths a face is joined from.', from: 'trade' },
  {
    term: 'tear',
    meaning: 'Dividing woven cloth along one thread: snip the selvedge, then pull apart right across.',
    from: 'trade',
  },
  {
    term: 'draw a thread',
    meaning: 'Pulling one thread out and cutting along the line it leaves, for cloth that tears badly.',
    from: 'trade',
  },
  {
    term: 'square the end',
    meaning: 'Taking off what is crooked at a cut end, so that it runs along one thread.',
    from: 'trade',
  },
  { term: 'layout', meaning: 'The pieces as they are placed on the cloth.', from: 'trade' },
  { term: 'cutting map', meaning: 'The printed drawing that lies beside the cloth.', from: 'ours' },
  {
    term: 'waste',
    meaning: 'Always two figures: what is not used, and how much of that is worth keeping.',
    from: 'ours',
  },
  {
    term: 'no shorter layout exists',
    meaning: 'Said where it is proved. Otherwise: perhaps shorter, by at most so much.',
    from: 'plain',
  },
  { term: 'slips', meaning: 'Small papers pinned to the pieces.', from: 'plain' },
  { term: 'good to know', meaning: 'Remarks that are neither a problem nor a caution.', from: 'plain' },
  { term: 'plan', meaning: 'The file in which you write what to sew and from which cloth.', from: 'plain' },
]
