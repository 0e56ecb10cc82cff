import type { Pack } from '@/shared/kitchen/methods'

/** One thing that published guidance allows, with where it stands. */
export interface Allowed {
  readonly words: string
  readonly source: string
}

const ONE_LOAD: Allowed = {
  words: 'Do not fill more jars than one load takes: keep the rest in the pot.',
  source: 'USDA, Canning, Freezing, Storing Garden Produce (1977), Water bath: prepare only enough food for one canner load at a time',
}

const CHILL: Allowed = {
  words: 'Chill the jars now and use them within a week. They are never shelf-stable.',
  source: 'Kansas State University Extension, You Asked It (citing NCHFP), Reprocessing: refrigerated use within one week',
}

const HOT_AGAIN: Allowed = {
  words: 'Or empty the jars, heat the food to a boil, fill hot jars with new lids, and give them the whole tested hot-pack process.',
  source: 'Kansas State University Extension, You Asked It (citing NCHFP), Reprocessing',
}

const TWO_HOURS: Allowed = {
  words: 'Whichever it is, within 2 hours of filling; after that, throw it out.',
  source: 'University of Nebraska-Lincoln Extension, Saving Home-Canned Food: Jars Did Not Seal',
}

const SHARE_OUT: Allowed = {
  words: 'What cannot be loaded today goes into the refrigerator in shares, unprocessed.',
  source: 'Kansas State University Extension, You Asked It (citing NCHFP), Reprocessing: refrigerated use within one week',
}

/**
 * What may be done with food whose wait for a canner can no longer be met. The published figures are for jars without a whole process; of
 * several the strictest is named. How long jars may wait before a load is common practice: no publication gives a figure.
 *
 * Food packed raw is not heated and packed again: no raw-pack process fits cooked food.
 */
export function waitedTooLong(stage: 'cooking' | 'filled', pack: Pack): readonly Allowed[] {
  if (stage === 'cooking') return [ONE_LOAD, SHARE_OUT]
  return pack === 'hot' ? [ONE_LOAD, CHILL, HOT_AGAIN, TWO_HOURS] : [ONE_LOAD, CHILL, TWO_HOURS]
}
