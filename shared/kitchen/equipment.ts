/** What gives heat. A portable electric ring heats brine and jar pots only (common practice). */
export const BURNER_KINDS = ['gas', 'electric-coil', 'portable-electric', 'induction'] as const
export type BurnerKind = (typeof BURNER_KINDS)[number]

const BURNER_NAMES: Readonly<Record<BurnerKind, string>> = {
  gas: 'Gas',
  'electric-coil': 'Electric, built in',
  'portable-electric': 'Portable electric ring',
  induction: 'Induction',
}

/** "Portable electric ring", as said on screens. */
export const burnerKindName = (kind: string): string => BURNER_NAMES[kind as BurnerKind] ?? kind

/** What a burner may be kept to; none of them means that anything may stand on it. */
export const BURNER_USES = ['canner', 'kettle', 'brine', 'jars'] as const
export type BurnerUse = (typeof BURNER_USES)[number]

const BURNER_USE_NAMES: Readonly<Record<BurnerUse, string>> = {
  canner: 'Canners',
  kettle: 'Jam and other kettles',
  brine: 'Brine',
  jars: 'Jar water',
}

/** "Jar water", as said on screens. */
export const burnerUseName = (use: string): string => BURNER_USE_NAMES[use as BurnerUse] ?? use

/** What a kettle is made of. */
export const KETTLE_MATERIALS = ['stainless', 'enamel', 'aluminium', 'copper', 'cast-iron', 'glass'] as const
export type KettleMaterial = (typeof KETTLE_MATERIALS)[number]

const MATERIAL_NAMES: Readonly<Record<KettleMaterial, string>> = {
  stainless: 'Stainless steel',
  enamel: 'Enamel, sound',
  aluminium: 'Aluminium',
  copper: 'Copper',
  'cast-iron': 'Cast iron',
  glass: 'Glass',
}

/** "Enamel, sound", as said on screens. */
export const materialName = (material: string): string => MATERIAL_NAMES[material as KettleMaterial] ?? material

/**
 * True for bare metals that acid food attacks: aluminium, copper, cast iron.
 *
 * Common practice; the caution for aluminium stands among the hazards of shared/process.
 */
export const isReactive = (material: string): boolean => ['aluminium', 'copper', 'cast-iron'].includes(material)

/** What the group keeps a kettle for; 'any' cooks everything, 'jars' only boils or warms empty jars. */
export const KETTLE_USES = ['any', 'jam', 'brine', 'cook', 'jars'] as const
export type KettleUse = (typeof KETTLE_USES)[number]

const KETTLE_USE_NAMES: Readonly<Record<KettleUse, string>> = {
  any: 'Anything',
  jam: 'Jam',
  brine: 'Brine',
  cook: 'Other cooking',
  jars: 'Jar water only',
}

/** "Jar water only", as said on screens. */
export const kettleUseName = (use: string): string => KETTLE_USE_NAMES[use as KettleUse] ?? use

/** What is counted in stock. */
export const SUPPLY_KINDS = ['jar', 'band', 'lid'] as const
export type SupplyKind = (typeof SUPPLY_KINDS)[number]

/** "lids", by the count. */
export const supplyName = (kind: string, count = 1): string => (count === 1 ? kind : `${kind}s`)

/** Widths of a jar's mouth. */
export const MOUTHS = ['regular', 'wide'] as const
