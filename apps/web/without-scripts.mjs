// The font reader brings tables for writing systems in which the map's typeface has no letters (Indic and other syllable
// scripts, a sixth of it); the page leaves them out. Text in those scripts is boxed before it comes here.
const SHAPERS = 2

/** Takes the syllable tables out of fontkit; says so when they are no longer where they were. */
export function withoutSyllableScripts() {
  return {
    name: 'without-syllable-scripts',
    transform(code, id) {
      if (!/\/fontkit\/dist\//.test(id)) return null
      let found = 0
      const thinner = code
        .replace(/^const (\$\w+)\$var\$stateMachine = .*$/gm, (_, shaper) => {
          found++
          return `const ${shaper}$var$stateMachine = null`
        })
        .replace(/^const (\$\w+)\$var\$trie = .*$/gm, (line, shaper) =>
          code.includes(`const ${shaper}$var$stateMachine = `) ? `const ${shaper}$var$trie = null` : line,
        )
        .replace(/^(\$\w+\$exports) = JSON\.parse\("\{\\"(?:stateTable|categories)\\".*$/gm, (_, name) => {
          found++
          return `${name} = { categories: [], decompositions: {} };`
        })
      if (found !== 2 * SHAPERS) throw new Error(`build: fontkit keeps its syllable tables elsewhere now (${found})`)
      return { code: thinner, map: null }
    },
  }
}
