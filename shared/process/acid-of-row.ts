import { JAR_SIZES } from '@/shared/kitchen/jar-sizes'
import { PUBLISHED_ROWS } from './published-rows'
import { jarAcid } from './ready-process'
import type { EachJarAcid } from './scheduled-process'

/**
 * The acid that a published row asks for in every jar, for the jar of its row key.
 *
 * @param rowKey - as a preparation stores it, "tomatoes-whole-water--boiling-water/boiling-water/hot/quart/0-1000-ft"
 * @returns null where the food needs none, or has it in its tested recipe
 */
export function acidOfRow(rowKey: string): EachJarAcid | null {
  const [id, , , jarPart] = rowKey.split('/')
  const row = PUBLISHED_ROWS.find((each) => each.id === id)
  const jarRow = JAR_SIZES.find((size) => size === jarPart)
  const acid = row && jarRow ? jarAcid(row, jarRow) : null
  return acid?.kind === 'add-to-each-jar' ? acid : null
}
