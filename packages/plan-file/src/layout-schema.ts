import * as z from 'zod'

/** JSON Schema of the layout file. */
export function layoutSchema(): object {
  return z.toJSONSchema(layoutShape(), { target: 'draft-2020-12' })
}

/** The layout file as zod knows it, built only when asked for; a test holds what is written against it. */
export function layoutShape() {
  const mm = (words: string) => z.number().meta({ description: `${words}, in mm` })
  const words = z.string()
  const box = {
    x: mm('From the left selvedge'),
    y: mm('From the cut end or head hem'),
    width: mm('Across'),
    length: mm('Along'),
  }
  const status = z.enum(['proved', 'best-found', 'stopped'])
  const edge = z.union([
    z.strictObject({ kind: z.enum(['cut', 'selvedge']) }),
    z.strictObject({ kind: z.literal('kept-hem'), depth: mm('Depth of the hem') }),
  ])
  const runs = z.enum(['across', 'along'])
  const money = z.number().meta({ description: 'In the currency of the plan, to 0.01' })
  const remark = z.strictObject({ code: words, text: words })

  const cloth = z.strictObject({
    name: words,
    from: z.enum(['bolt', 'sheet', 'remnant']),
    piece: z.int().min(1).meta({ description: '1, 2 … when several of one name are used' }),
    width: mm('Width of the whole cloth as it lies on the table'),
    length: mm('Length of the whole cloth as it lies on the table'),
    usable: z.strictObject(box).meta({ description: 'Without unused selvedges and the spare at each end' }),
    buy: z
      .strictObject({ width: mm('Width as sold'), length: mm('Length as sold'), cost: money.nullable() })
      .optional()
      .meta({ description: 'Absent for cloth that is owned' }),
    proof: z.strictObject({
      status,
      length: mm('Laid length between the squared ends'),
      bound: mm('No layout is shorter'),
      by: z.enum(['area', 'longest', 'wide', 'sides', 'bars', 'scales', 'exhausted']),
      certificate: z
        .union([
          z
            .strictObject({ prices: z.array(z.int()), capacity: z.int() })
            .meta({ description: 'Integer duals of a bound by bars' }),
          z
            .strictObject({ across: z.array(z.int()), along: z.array(z.int()) })
            .meta({ description: 'Sizes of the pieces of a bound by scales, in whole numbers of their own' }),
        ])
        .optional(),
    }),
    notUsed: z.strictObject({
      percent: z.number(),
      area: z.number().meta({ description: 'In square mm' }),
      keepPercent: z.number().meta({ description: 'Worth keeping, per cent of the whole cloth' }),
    }),
    placed: z
      .array(
        z.strictObject({
          piece: words,
          label: words,
          ...box,
          turned: z.boolean().meta({ description: 'Its length lies across the cloth' }),
          top: z.enum(['start', 'end', 'left', 'right']).meta({ description: 'Where its head lies' }),
          phase: mm('Position of its start edge in the repeat').nullable(),
          edges: z.strictObject({ left: edge, right: edge, start: edge, end: edge }),
        }),
      )
      .meta({
        description:
          'As torn: larger than the cut size by what is lost at each torn edge; a selvedge or hem loses nothing',
      }),
    divisions: z
      .array(
        z.strictObject({
          n: z.int().min(1),
          how: z.enum(['tear', 'shears', 'thread', 'shears-through-hem-then-tear']),
          runs,
          at: mm('Across: y; along: x'),
          from: mm('Across: x; along: y'),
          to: mm('Across: x; along: y'),
        }),
      )
      .meta({ description: 'In the order done' }),
    trims: z.array(z.strictObject(box)),
    remnants: z.array(z.strictObject({ ...box, wouldMake: z.array(words) })),
  })

  const width = z.strictObject({
    cloth: words,
    width: mm('Width as sold'),
    possible: z.boolean(),
    buyLength: mm('To buy').nullable(),
    area: z.number().nullable().meta({ description: 'In square mm, at the width as sold' }),
    cost: money.nullable(),
    notUsedPercent: z.number().nullable(),
    keepPercent: z.number().nullable(),
    seams: z.int().nullable(),
    status: status.nullable(),
    chosen: z.boolean(),
    why: words.nullable().meta({ description: 'Why it cannot serve, and what would' }),
    enoughFrom: mm('The same buy at every marking step from here').nullable(),
  })

  const mark = z.strictObject({
    kind: z.enum(['fold', 'corner-square', 'button', 'zip-end', 'tie', 'seam']),
    x: mm('From the left edge of the piece'),
    y: mm('From its head edge'),
    runs: runs.optional(),
    size: mm('Side of the square').optional(),
  })

  return z
    .strictObject({
      format: z.literal('lengthwise-layout/1'),
      title: words,
      unit: z.literal('mm'),
      timed: z.boolean().meta({ description: 'True when a clock or a hand ended the run' }),
      proof: z.strictObject({
        status,
        objective: z.enum(['cost', 'area']),
        value: z.number().meta({ description: 'Cost to 0.01, or square mm' }),
        bound: z.number(),
        by: z.enum(['area', 'bars', 'exhausted']),
      }),
      cloths: z.array(cloth),
      widths: z.array(width),
      missing: z
        .array(
          z.strictObject({
            cloth: words,
            width: mm('Of the cloth').nullable(),
            short: mm('What is missing').nullable(),
            direction: runs,
            words,
          }),
        )
        .optional()
        .meta({ description: 'Only when the plan cannot be cut' }),
      buy: z.array(
        z.strictObject({
          what: z.enum(['cloth', 'zip', 'buttons', 'snaps', 'cord', 'tape', 'elastic', 'thread']),
          name: words,
          quantity: z.number(),
          unit: z.enum(['mm', 'piece']),
          cost: money.nullable(),
        }),
      ),
      pieces: z.array(
        z.strictObject({
          piece: words,
          item: words,
          cutWidth: mm('Across the bed'),
          cutLength: mm('Head to foot'),
          marks: z.array(mark),
        }),
      ),
      seams: z.array(
        z.strictObject({
          a: words.meta({ description: 'duvet-cover-1/front/centre#left' }),
          b: words,
          length: mm('At the machine'),
          allowanceA: mm('Of the edge a'),
          allowanceB: mm('Of the edge b'),
          lap: mm('Finished edges over each other'),
          match: z.enum(['none', 'straight', 'half-drop']),
        }),
      ),
      finished: z.array(
        z.strictObject({
          item: words,
          width: mm('Finished width'),
          length: mm('Finished length'),
          asked: z.strictObject({ width: mm('Asked for'), length: mm('Asked for') }),
        }),
      ),
      sewing: z.array(z.strictObject({ step: z.int(), item: words, text: words, seamLength: mm('Sewn in this step') })),
      cautions: z.array(remark),
      goodToKnow: z.array(remark),
    })
    .meta({
      title: 'Layout',
      description:
        'Numbers are millimetres, exact decimals. x from the left, right side of the cloth up; y along from the cut end.',
    })
}
