import { z } from 'zod'
import { JAR_SIZES } from '@/shared/kitchen/jar-sizes'
import { GAUGES, METHODS } from '@/shared/kitchen/methods'
import { Id, whole } from './fields'

/** How empty jars are made ready. */
export const JAR_TREATMENTS = ['washed-hot', 'boiled-in-pot', 'boiled-in-canners'] as const
export type JarTreatmentName = (typeof JAR_TREATMENTS)[number]

/** Ways to put a recipe up: in a canner, or without any process for the fridge or freezer. */
export const COLD = 'fridge-or-freezer'
export const PUT_UP = [...METHODS, COLD] as const

const JarTreatmentField = z.enum(JAR_TREATMENTS, 'Choose how the jars are made ready.')
const Offered = whole(0, 5000, 'How many jars are offered?')
const SpareJars = whole(0, 500, 'How many jars to spare?').default(0)

/** What the choose-a-recipe form sends. */
export const ChooseRecipe = z.strictObject({
  dayId: Id,
  recipeId: Id,
  jarSize: z.enum(JAR_SIZES, 'Choose a jar size.'),
  /** `fridge-or-freezer`: in no canner. */
  method: z.enum(PUT_UP, 'Choose a canner, or the fridge or freezer.'),
  gauge: z.enum(GAUGES, 'Choose a gauge.').optional(),
  jarTreatment: JarTreatmentField.default('washed-hot'),
  offered: Offered,
  spareJars: SpareJars,
})
export type ChooseRecipe = z.infer<typeof ChooseRecipe>

/** What the change-the-offer form sends. */
export const ChangeOffer = z.strictObject({ preparationId: Id, offered: Offered, spareJars: SpareJars })
export type ChangeOffer = z.infer<typeof ChangeOffer>

/** What the make-jars-ready form sends. */
export const ChangeJarTreatment = z.strictObject({ preparationId: Id, jarTreatment: JarTreatmentField })
export type ChangeJarTreatment = z.infer<typeof ChangeJarTreatment>

/** A change that needs to know only which preparation. */
export const OnePreparation = z.strictObject({ preparationId: Id })
export type OnePreparation = z.infer<typeof OnePreparation>
