// Stands in for what the PDF library can do and the map never asks for: WOFF2 fonts, breaking lines, pictures, passwords.
const unused = (name) =>
  function refuse() {
    throw new Error(`${name} is left out of the page`)
  }
export const ecb = unused('ecb')
export const cbc = unused('cbc')
export default unused('this part of the PDF library')
