/** The plan that `new` writes: a small order with a comment at every key that a first plan needs. */
export const SAMPLE_PLAN = `# What is sewn, and the cloth it is sewn from.
# Lengths carry their unit: 200 cm, 1.12 m, 45 in, 1 5/8 in, 2 1/4 yd. A bare number takes measure-in.
# Sizes are W x L, across the bed first; pillowcases and cushions short side first.
# Every key and its default:  lengthwise schema plan
plan: 1
title: Guest house on the hill, room 2
measure-in: cm                # cm, mm or in
currency: EUR
wash: before-cutting          # before-cutting, after-sewing or none
seam: { kind: plain, allowance: 1.5 cm }   # plain, french or flat-felled

make:
  - item: duvet-cover
    for: room 2
    finished: 200 x 200 cm    # or  size: uk-double  or  insert: 195 x 205 cm  with  ease: 2 cm
    front: { cloth: sprig }   # wider than the cloth? it is joined: a centre and two equal sides, or full widths
    back: { cloth: old-sheets, zip-edge: kept-hems }   # the hems of the sheet become the edges of the zip
    opening: { kind: zip, at: foot }           # or buttons, snaps, ties, flap, none
    corner-ties: 4

  - item: pillowcase
    style: inside-flap        # or flanged, envelope, open-end
    count: 2
    finished: 50 x 75 cm
    flap: 15 cm
    cloth: sprig

  - item: rectangle
    name: tray cloth
    finished: 40 x 60 cm
    hems: 1 cm                # on all four edges, turned twice
    cloth: [sprig, old-sheets]   # either will do

cloth:
  - name: sprig
    from: bolt
    widths: [140 cm, 150 cm, { width: 240 cm, price: 19.80 per m }]   # all of them are compared
    price: 14.50 per m
    sold-by: 10 cm
    smallest-sale: 50 cm
    shrinks: { along: 5 %, across: 3 % }
    spare-each-end: 5 cm      # for squaring
    print: plain              # two-way: looks the same upside down; one-way: has a top
    divide-by: tearing        # tearing, thread or shears

  - name: old-sheets
    from: sheet
    size: 230 x 260 cm        # as measured, hem to hem
    count: 1
    hems: { head: 10 cm, foot: 2.5 cm, left: selvedge, right: selvedge }
`
