import 'server-only'
import type { AnyCommand } from '@/lib/commands/command'
import { addOwnRecipe } from './add-own-recipe'
import { bindOwnRecipe } from './bind-own-recipe'
import { changeOwnRecipe } from './change-own-recipe'
import { confirmCondition } from './confirm-condition'
import { retireOwnRecipe } from './retire-own-recipe'
import { withdrawCondition } from './withdraw-condition'

/** The changes of this room. */
export const recipeCommands: readonly AnyCommand[] = [
  addOwnRecipe,
  changeOwnRecipe,
  bindOwnRecipe,
  confirmCondition,
  withdrawCondition,
  retireOwnRecipe,
]
