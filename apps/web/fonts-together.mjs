// The three weights of the typeface in one piece. Much in them is the same, but too far apart for a compressor to see: so each
// table stands beside the same table of the other weights, and each outline beside the same outline. `src/fonts-apart.ts`
// puts the files together again.

/** Font files with the same tables in the same order, as one run of bytes: directories, tables, outlines. */
export function together(files) {
  const directories = files.map((file) => file.subarray(0, 12 + 16 * tableCount(file)))
  const tables = Array.from({ length: tableCount(files[0]) }, (_, n) => files.map((file) => table(file, n)))
  const named = (name) => tables.find((weights) => weights[0].name === name).map(({ bytes }) => bytes)
  if (tables.some((weights) => weights.some(({ name }) => name !== weights[0].name)))
    throw new Error('build: the weights of the typeface have different tables')
  const places = named('loca')
  const long = named('head')[0].readInt16BE(50) === 1
  const glyphCount = named('maxp')[0].readUInt16BE(4)
  const place = (weight, n) => (long ? places[weight].readUInt32BE(4 * n) : 2 * places[weight].readUInt16BE(2 * n))
  const outlines = Array.from({ length: glyphCount }, (_, n) =>
    named('glyf').map((bytes, weight) => bytes.subarray(place(weight, n), place(weight, n + 1))),
  )
  const others = tables.filter(([{ name }]) => name !== 'glyf').map((weights) => weights.map(({ bytes }) => bytes))
  return Buffer.concat([...directories, ...others.flat(), ...outlines.flat()])
}

const tableCount = (file) => file.readUInt16BE(4)

function table(file, n) {
  const entry = 12 + 16 * n
  const start = file.readUInt32BE(entry + 8)
  return {
    name: file.toString('latin1', entry, entry + 4),
    bytes: file.subarray(start, start + file.readUInt32BE(entry + 12)),
  }
}
