import { jarName } from '@/shared/kitchen/jar-sizes'
import type { AcidOfJars } from '@/shared/supplies/acid-needs'
import { sayKitchenAmount } from '@/shared/units/say-kitchen-amount'
import { sayAcid } from './say-process'

/** "Into each quart: 2 tbsp (30 mL) bottled lemon juice, or … For 84 quarts all of it may be 42 tsp (207 mL) citric acid instead. Source: …" */
export function sayAcidOfJars({ acid, jar, jars: all, byCitricAcid }: AcidOfJars): string {
  const jars = all - byCitricAcid
  const instead = [
    `${sayKitchenAmount(acid.citricAcidTsp * jars, 'us-tsp')} citric acid`,
    ...(acid.vinegarTbsp === null ? [] : [`${sayKitchenAmount(acid.vinegarTbsp * jars, 'us-tbsp')} vinegar of 5 % acidity`]),
  ]
  const there =
    byCitricAcid === 0
      ? ''
      : ` The citric acid that is there is enough for ${byCitricAcid} ${jarName(jar, byCitricAcid)} (${sayKitchenAmount(acid.citricAcidTsp * byCitricAcid, 'us-tsp')}), which need no lemon juice; one or the other goes into a jar, never a part of each.`
  const others =
    jars === 0
      ? ''
      : ` For ${byCitricAcid === 0 ? '' : 'the other '}${jars} ${jarName(jar, jars)} all of it may be ${instead.join(' or ')} instead.`
  return `${sayAcid(acid, jar)}${there}${others} Source: ${acid.printedIn}.`
}
