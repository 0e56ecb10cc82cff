import 'server-only'
import type { AnyCommand } from '@/lib/commands/command'
import { dayCommands } from './day/commands'
import { floorCommands } from './floor/commands'
import { groupCommands } from './group/commands'
import { importCommands } from './import/commands'
import { kitchenCommands } from './kitchen/commands'
import { moneyCommands } from './money/commands'
import { recipeCommands } from './recipe/commands'
import { replanCommands } from './replan/commands'
import { shareCommands } from './share/commands'
import { shoppingCommands } from './shopping/commands'

/** Every change that anybody can make to a group, room by room. */
export const ALL_COMMANDS: readonly AnyCommand[] = [
  ...groupCommands,
  ...kitchenCommands,
  ...recipeCommands,
  ...dayCommands,
  ...floorCommands,
  ...replanCommands,
  ...shareCommands,
  ...shoppingCommands,
  ...moneyCommands,
  ...importCommands,
]

const BY_NAME = new Map(ALL_COMMANDS.map((command) => [command.name, command]))

/** The command of that name, or undefined. */
export const commandNamed = (name: string): AnyCommand | undefined => BY_NAME.get(name)
