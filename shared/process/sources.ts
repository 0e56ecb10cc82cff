import type { Source } from './published-row'

const cited =
  (publication: string, edition: string) =>
  (section: string): Source => ({ publication, edition, section })

const GUIDE = 'USDA Complete Guide to Home Canning, Agriculture Information Bulletin No. 539'

/** USDA Complete Guide to Home Canning, text of 1994. */
export const aib1994 = cited(GUIDE, '1994')
/** USDA Complete Guide to Home Canning, text later than 1994. */
export const aibLater = cited(GUIDE, 'text later than 1994')
/** USDA Complete Guide to Home Canning as adapted by the National Center for Home Food Preservation. */
export const aibNchfp = cited(GUIDE, 'as adapted by the National Center for Home Food Preservation')
/** National Center for Home Food Preservation, adapted from the 2015 revision. */
export const nchfp = cited(
  'National Center for Home Food Preservation, University of Georgia',
  'adapted from USDA AIB No. 539, 2015 revision',
)
/** National Center for Home Food Preservation, read in two independent reproductions of its text; the page of the Center itself was not read. */
export const nchfpReproduced = cited(
  'National Center for Home Food Preservation, University of Georgia',
  'as reproduced twice from its text; USDA Complete Guide to Home Canning, Guide 3, carries the same recipe',
)
/** Michigan State University Extension reprint of AIB 539. */
export const michiganState = cited('Michigan State University Extension, Preserving Food Safely', '1997, reproducing USDA AIB No. 539')
/** University of Florida IFAS tables for acid foods in pressure canners. */
export const florida8276 = cited('University of Florida IFAS Extension FCS8276', 'by the USDA Extension Service')
/** University of Florida IFAS tables for fruit in boiling water. */
export const florida8277 = cited('University of Florida IFAS Extension FCS8277', 'by the USDA Extension Service')
/** University of Missouri Extension recipes that reprint AIB 539. */
export const missouriAib = cited('University of Missouri Extension recipe', 'reproducing USDA AIB No. 539')
/** University of Missouri Extension recipes that reprint the National Center's text. */
export const missouriNchfp = cited('University of Missouri Extension recipe', 'reproducing the National Center for Home Food Preservation')
/** So Easy to Preserve, fifth edition, as the University of Missouri Extension prints it. */
export const soEasy5 = cited('University of Missouri Extension recipe', 'So Easy to Preserve, 5th ed.')
/** So Easy to Preserve, sixth edition, as the University of Missouri Extension prints it. */
export const soEasy6 = cited('University of Missouri Extension recipe', 'So Easy to Preserve, 6th ed.')
/** University of Nebraska-Lincoln Extension on grapes. */
export const nebraska = cited('University of Nebraska-Lincoln Extension, grapes', 'citing the USDA Complete Guide to Home Canning')
/** State extension recipe for plum preserves. */
export const plumPreserves = cited('State extension recipe, plum preserves', 'crediting the National Center for Home Food Preservation')
/** Utah State University edition of AIB 539, Guide 7. */
export const utahGuide7 = cited('Utah State University edition of USDA AIB No. 539, Guide 7', 'quoted by a third party')
/** A reworded print of AIB 539. */
export const aibReworded = cited('USDA AIB No. 539', 'text later than 1994, reworded by a third party')
/** University of California sheet on ketchup. */
export const californiaKetchup = cited(
  'University of California Cooperative Extension, Central Sierra, ketchup sheet',
  'crediting the National Center for Home Food Preservation, 2017',
)
/** Oregon State University Extension, written answers. */
export const oregonAnswer = cited('Oregon State University Extension, answer to a public question', '2024')

/** The one timetable read that prints a fruit band above 8,000 ft. */
export const UTAH_TIMETABLE: Source = {
  publication: 'Utah State University Extension, Timetables for Canning at Altitudes of 3,000 to 10,000 Feet',
  edition: '2010',
  section: 'Fruit in boiling water, 8,001-10,000 ft',
}

/** Iowa State's answers on food preservation. */
export const iowaState = cited('Iowa State University Extension, AnswerLine', '2013')

/** Rutgers fact on canning in jars. */
export const rutgers = cited('Rutgers NJAES Extension', 'web edition')
/** Penn State answers on food preservation. */
export const pennState = cited('Penn State Extension FAQ', 'web edition')
/** Kansas State newsletter, answers to questions. */
export const kansasState = cited('Kansas State University Extension, You Asked It', '2016-2019')
/** Oregon State on salsas. */
export const oregonSalsas = cited('Oregon State University Extension, Sensational Salsas', 'web edition')
/** Pacific Northwest on pressure canners. */
export const pnw421 = cited('Pacific Northwest Extension PNW 421, Using and Caring for Your Pressure Canner', 'print edition')
