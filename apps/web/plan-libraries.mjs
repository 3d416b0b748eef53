// What the page never asks of the libraries that read and lay out a plan: schemas of files, and linear programmes of several
// objectives, changed while they are solved, or cut and branched in other ways than the first.
import { leavingOut, refusing } from './leaving-out.mjs'

const schemas = refusing(/\/zod\/v4\/core\/(?:to-json-schema|json-schema-processors)\.js$/)

const programmes = leavingOut({
  file: /\/javascript-lp-solver\/dist\/index\.browser\.mjs$/,
  wanted: ['default'],
  refused: [
    'addConstraint',
    'addLowerBoundMIRCut',
    'addUpperBoundMIRCut',
    'addVariable',
    'computeFractionalVolume',
    'countIntegerValues',
    'createEnhancedBranchAndCutService',
    'createIncrementalBranchAndCutService',
    'dualSimplex',
    'getFractionalVarWithLowestCost',
    'log',
    'Polyopt',
    'ReformatLP',
    'removeConstraint',
    'removeVariable',
    'updateCost',
    'updateRightHandSide',
  ],
  instead: { validation: '{}' },
})

/** The plugins that thin what the reading and the laying out of plans are built of. */
export const planLibraries = () => [schemas, programmes]
