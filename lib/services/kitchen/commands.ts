import 'server-only'
import type { AnyCommand } from '@/lib/commands/command'
import { addBurner } from './add-burner'
import { addCanner } from './add-canner'
import { addKettle } from './add-kettle'
import { addKitchen } from './add-kitchen'
import { addSupply } from './add-supply'
import { changeSupply } from './change-supply'
import { editBurner } from './edit-burner'
import { editCanner } from './edit-canner'
import { editKettle } from './edit-kettle'
import { editKitchen } from './edit-kitchen'
import { noteJars } from './note-jars'
import { takeBackJars } from './take-back-jars'

/** The changes of this room. */
export const kitchenCommands: readonly AnyCommand[] = [
  addKitchen,
  editKitchen,
  addBurner,
  editBurner,
  addKettle,
  editKettle,
  addCanner,
  editCanner,
  addSupply,
  changeSupply,
  noteJars,
  takeBackJars,
]
