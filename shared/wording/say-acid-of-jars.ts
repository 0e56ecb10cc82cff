import { jarName } from '@/shared/kitchen/jar-sizes'
import type { AcidOfJars } from '@/shared/supplies/acid-needs'
import { sayKitchenAmount } from '@/shared/units/say-kitchen-amount'
import { sayAcid } from './say-process'

/** "Into each quart: 2 tbsp (30 mL) bottled lemon juice, or … For 84 quarts all of it may be 42 tsp (207 mL) citric acid instead. Source: …" */
export function sayAcidOfJars({ acid, jar, jars }: AcidOfJars): string {
  const instead = [
    `${sayKitchenAmount(acid.citricAcidTsp * jars, 'us-tsp')} citric acid`,
    ...(acid.vinegarTbsp === null ? [] : [`${sayKitchenAmount(acid.vinegarTbsp * jars, 'us-tbsp')} vinegar of 5 % acidity`]),
  ]
  return `${sayAcid(acid, jar)} For ${jars} ${jarName(jar, jars)} all of it may be ${instead.join(' or ')} instead. Source: ${acid.printedIn}.`
}
