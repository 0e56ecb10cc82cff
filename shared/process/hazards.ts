import type { Source } from './published-row'
import { aib1994, aibLater, kansasState, nchfp, oregonSalsas, pennState, pnw421, rutgers } from './sources'

/** A danger that published guidance names, with its caution in one line. */
export type Hazard = { readonly caution: string; readonly source: Source }

const NOT_RECOMMENDED = aib1994('Equipment and methods not recommended')

/** Dangers that a look-up may name. */
export const HAZARDS = {
  'low-acid-in-boiling-water': {
    caution: 'Vegetables, meats, poultry, seafood and mixtures with them can hold botulinum toxin, which can kill: pressure canning only.',
    source: rutgers('Canning in jars'),
  },
  'half-gallon-jar': {
    caution: 'Half-gallon jars have published processes for apple juice and grape juice only; no formula extends another process to them.',
    source: pennState('Canning with half-gallon jars'),
  },
  'untested-thickener': {
    caution: 'Do not thicken, nor add noodles, pasta, rice, flour, cream or milk.',
    source: aibLater('Soups'),
  },
  'open-kettle': { caution: 'No open-kettle canning: filled jars must be heat-processed.', source: NOT_RECOMMENDED },
  oven: { caution: 'Do not process filled jars in an oven, microwave or dishwasher.', source: NOT_RECOMMENDED },
  'canning-powder': { caution: 'Canning powders do not replace heat processing.', source: NOT_RECOMMENDED },
  'jar-inversion': {
    caution: 'Turning jars upside down is not a process and does not replace one.',
    source: { publication: 'Extension cottage-food conference', edition: 'slides', section: 'Non-approved methods' },
  },
  'multi-cooker': {
    caution: 'Electric multi-cookers are not approved as pressure canners.',
    source: { publication: 'Extension cottage-food conference', edition: 'slides', section: 'Non-approved methods' },
  },
  'doubled-jelly-batch': {
    caution: 'Make one batch of jam or jelly at a time and never double it: larger quantities often give a soft set.',
    source: aib1994('Preparing butters, jams, jellies and marmalades'),
  },
  'aluminium-with-acid': {
    caution: 'Keep acid food out of bare aluminium: use stainless steel or sound enamel.',
    source: { publication: 'common practice', edition: 'no publication held', section: 'acid food and bare aluminium' },
  },
  'pureed-squash': {
    caution: 'Do not can pumpkin butter or any mashed or pureed pumpkin or winter squash, by any method; freeze it.',
    source: kansasState('Preserving pumpkin safely (2016)'),
  },
  dairy: {
    caution: 'There is no science-based home canning method for butter, milk or cheese.',
    source: {
      publication: 'Clemson Extension and the National Center for Home Food Preservation',
      edition: 'quoted by a third party',
      section: 'Canning butter',
    },
  },
  'tested-recipe-only': {
    caution: 'Use tested recipes and follow them exactly; never raise the low-acid share nor cut vinegar or lemon juice.',
    source: oregonSalsas('Ingredients'),
  },
  'local-elevation': {
    caution: 'Sea-level times at 1,000 ft or more can spoil food; always use the local band.',
    source: NOT_RECOMMENDED,
  },
  'acidify-tomatoes': {
    caution: 'Add bottled lemon juice or citric acid to all tomatoes and figs, even where they are pressure canned.',
    source: rutgers('Canning in jars'),
  },
  'air-in-canner': {
    caution: 'Vent the pressure canner in full: air left inside lowers its temperature and under-processes the food.',
    source: pnw421('Three serious errors'),
  },
  'steam-burn': { caution: 'Open canner lids away from your face; escaping steam burns.', source: pnw421('Three serious errors') },
  'hot-syrup': {
    caution: 'Hot jam and marmalade spatter; take care against burns.',
    source: nchfp('Orange marmalade, step 6'),
  },
} as const satisfies Record<string, Hazard>

/** The name of a danger in HAZARDS. */
export type HazardId = keyof typeof HAZARDS
